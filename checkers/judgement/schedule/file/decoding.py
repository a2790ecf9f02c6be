"""Bytes into text, piece by piece: UTF-8 and UTF-16 with or without their mark, Windows and others.

Old spreadsheets do not say which code page they wrote. Bytes that are not UTF-8 are read as
Windows-1252, unless the headings make more sense in another of the code pages known here.
"""

from __future__ import annotations

import codecs
import encodings.cp850
import encodings.cp1252
import encodings.mac_roman
import encodings.utf_8
import encodings.utf_16_be
import encodings.utf_16_le
from collections.abc import Callable, Sequence

DECODERS: dict[str, type[codecs.IncrementalDecoder]] = {
    "utf-8": encodings.utf_8.IncrementalDecoder,
    "utf-16-le": encodings.utf_16_le.IncrementalDecoder,
    "utf-16-be": encodings.utf_16_be.IncrementalDecoder,
    "windows-1252": encodings.cp1252.IncrementalDecoder,
    "cp850": encodings.cp850.IncrementalDecoder,
    "mac-roman": encodings.mac_roman.IncrementalDecoder,
}
MARKS = (
    (codecs.BOM_UTF8, "utf-8"),
    (codecs.BOM_UTF16_LE, "utf-16-le"),
    (codecs.BOM_UTF16_BE, "utf-16-be"),
)
CODE_PAGES = ("windows-1252", "cp850", "mac-roman")
MARK = "\ufeff"
AS_WINDOWS = "schedule-as-windows-1252"


def _as_windows(error: UnicodeError) -> tuple[str, int]:
    """Read the bytes that do not fit as Windows-1252, or as their own numbers."""
    assert isinstance(error, UnicodeDecodeError)  # noqa: S101  # only a decoder calls this
    wrong = error.object[error.start : error.end]
    text = "".join(codecs.charmap_decode(bytes([one]), "replace", TABLE)[0] for one in wrong)
    return text, error.end


TABLE = "".join(
    encodings.cp1252.decoding_table[number].replace("\ufffe", chr(number)) for number in range(256)
)
codecs.register_error(AS_WINDOWS, _as_windows)


class Decoder:
    """Text from bytes that come in pieces, in one encoding."""

    def __init__(self, encoding: str) -> None:
        """Make a decoder; `encoding` is a key of DECODERS."""
        self.encoding = encoding
        self._decoder = DECODERS[encoding](errors=AS_WINDOWS)
        self._first = True

    def feed(self, piece: bytes, *, last: bool = False) -> str:
        """Return the text of a piece, without the mark at the very beginning."""
        text = self._decoder.decode(piece, last)
        if self._first and text:
            self._first = False
            text = text.removeprefix(MARK)
        return text


def encoding_of(sample: bytes, sense_of: Callable[[str], int]) -> str:
    """Return the encoding of a file from its first bytes.

    Inputs: the sample; a function that tells how much sense a text makes as headings.
    Result: a key of DECODERS.
    """
    for mark, encoding in MARKS:
        if sample.startswith(mark):
            return encoding
    wide = _wide(sample)
    if wide:
        return wide
    return "utf-8" if _mostly_utf_8(sample) else _code_page(sample, sense_of)


def _wide(sample: bytes) -> str:
    """Return the kind of UTF-16 that the zero bytes of Latin text show, or nothing."""
    zeros_even, zeros_odd = sample[0::2].count(0), sample[1::2].count(0)
    half = max(1, len(sample) // 2)
    if zeros_odd > 0.3 * half and zeros_even < 0.05 * half:
        return "utf-16-le"
    return "utf-16-be" if zeros_even > 0.3 * half and zeros_odd < 0.05 * half else ""


def _mostly_utf_8(sample: bytes) -> bool:
    """Tell whether more characters beyond ASCII are whole in UTF-8 than are broken."""
    text = codecs.getincrementaldecoder("utf-8")(errors="replace").decode(sample)
    broken = text.count("\ufffd")
    whole = sum(one > "\x7f" for one in text) - broken
    return broken == 0 or whole > broken


def _code_page(sample: bytes, sense_of: Callable[[str], int]) -> str:
    texts: Sequence[tuple[str, str]] = [
        (encoding, Decoder(encoding).feed(sample)) for encoding in CODE_PAGES
    ]
    return max(texts, key=lambda one: sense_of(one[1]))[0]
