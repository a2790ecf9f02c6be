"""Text with everything taken off that does not change a word's meaning."""

from __future__ import annotations

import re
import unicodedata

from checkers.domain.quantities.typed_numbers import compatible, with_leading_nought

AS_WRITTEN = str.maketrans(
    {
        "º": "°",  # the ordinal sign, typed for degrees
        "˚": "°",
        "∆": "Δ",
        "△": "Δ",
        "×": "x",
        "✕": "x",
        "✖": "x",
        "*": "x",
        "·": "x",
        "−": "-",
        "–": "-",
        "—": "-",
        "ø": "o",
        "Ø": "o",
        "æ": "ae",
        "Æ": "ae",
        "ß": "ss",
    }
)
JOINED = re.compile(r"(?<=[^\W\d])[-_.'’]+|[-_.'’]+(?=[^\W\d])|_")
RATED = re.compile(r"(?:(?<=x)|(?<![^\W\d]))i ?(?:δ|delta|\?|d|�) ?n(?!\w)")
HALF = re.compile(r"(?<!\d)½")
SPACES = re.compile(r"\s+")


def plain(text: str) -> str:
    """Return a text in small letters, without accents, hyphens and odd spaces.

    The sign of the rated residual current, however it came through (IΔn, I∆n, Idn,
    I delta n, I?n), is written iδn. A raised mark stays one, and a leading point gets its nought.
    """
    kept = compatible(HALF.sub("1/2", text.translate(AS_WRITTEN)), "NFKD").replace("⁄", "/")
    bare = "".join(one for one in kept if not unicodedata.combining(one)).casefold()
    spaced = SPACES.sub(" ", JOINED.sub(" ", with_leading_nought(bare))).strip()
    return RATED.sub("iδn", spaced)
