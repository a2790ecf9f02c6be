"""The bytes of a file become the text that was typed, whatever wrote them."""

from __future__ import annotations

import codecs

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checkers.judgement.schedule.file.decoding import Decoder, encoding_of
from checkers.judgement.schedule.file.delimiters import sense_of

HEADINGS = "Stromkreis;Auslösezeit 1x (ms);Prüftaste\nKüche;28,5;ja\n"
WAYS = [
    ("utf-8", "utf-8"),
    ("utf-8-sig", "utf-8"),
    ("utf-16", "utf-16-le"),
    ("utf-16-le", "utf-16-le"),
    ("utf-16-be", "utf-16-be"),
    ("cp1252", "windows-1252"),
    ("cp850", "cp850"),
    ("mac_roman", "mac-roman"),
]


def decoded(raw: bytes, size: int = 7) -> str:
    """Return the text of some bytes, fed in small pieces."""
    decoder = Decoder(encoding_of(raw, sense_of))
    pieces = [decoder.feed(raw[start : start + size]) for start in range(0, len(raw), size)]
    return "".join(pieces) + decoder.feed(b"", last=True)


@pytest.mark.parametrize(("written", "found"), WAYS)
def test_the_encoding_is_found_out(written: str, found: str) -> None:
    """By its mark, by its zero bytes, by being UTF-8, or by the sense the headings make."""
    raw = HEADINGS.encode(written)

    assert found == encoding_of(raw, sense_of)
    assert decoded(raw) == HEADINGS


def test_a_mark_of_utf_16_in_the_other_order_is_known() -> None:
    """Big-endian files with a mark are read too."""
    assert decoded(codecs.BOM_UTF16_BE + HEADINGS.encode("utf-16-be")) == HEADINGS


def test_a_late_windows_character_in_an_ascii_file_is_read_as_windows() -> None:
    """What was seen so far may have been all ASCII."""
    decoder = Decoder(encoding_of(b"Circuit,x1\n" * 50, sense_of))

    assert decoder.feed("Küche €5".encode("cp1252"), last=True) == "Küche €5"


def test_the_few_bytes_that_windows_leaves_open_are_no_error() -> None:
    """81, 8D, 8F, 90 and 9D come through as their own numbers."""
    assert Decoder("windows-1252").feed(b"a\x81\x8d\x8f\x90\x9db") == "a\x81\x8d\x8f\x90\x9db"


@given(st.binary(max_size=200))
@settings(deadline=None)
def test_no_bytes_are_an_error(raw: bytes) -> None:
    """Any bytes at all give some text."""
    assert isinstance(decoded(raw), str)


@pytest.mark.parametrize("damage", ["\0", "\0" * 40])
def test_damage_does_not_make_a_file_wide(damage: str) -> None:
    """Zero bytes at every other place mean UTF-16; one, or a run of them, does not."""
    for before in ("", " "):  # at odd and at even places
        raw = (before + HEADINGS[:20] + damage + HEADINGS[20:]).encode()

        assert encoding_of(raw, sense_of) == "utf-8"


@pytest.mark.parametrize("written", ["utf-16-le", "utf-16-be"])
def test_a_letter_whose_lower_byte_is_zero_leaves_a_file_wide(written: str) -> None:
    """U+0100, U+0200 and so on are letters too: one among fifty others."""
    raw = ("Ā" + HEADINGS).encode(written)

    assert encoding_of(raw, sense_of) == written
