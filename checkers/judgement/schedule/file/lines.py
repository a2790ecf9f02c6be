"""Physical lines from text that comes in pieces, numbered, and cut where they are absurdly long."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

NEWLINE = re.compile(r"\r\n|\r|\n")
LONGEST = 65_536


@dataclass(frozen=True, slots=True)
class Line:
    """A line without its end; `cut` counts the characters that were left out."""

    number: int
    text: str
    cut: int = 0


class Lines:
    """Splits text into lines at CR LF, LF or CR, holding back the last unfinished one."""

    def __init__(self) -> None:
        """Begin at line 1."""
        self._number = 1
        self._rest = ""
        self._cut = 0

    def feed(self, text: str) -> Iterator[Line]:
        """Yield the lines that a further piece of text finishes."""
        text = self._rest + text
        held = "\r" if text.endswith("\r") else ""
        *whole, rest = NEWLINE.split(text.removesuffix(held))
        for one in whole:
            yield self._line(one)
        self._hold(rest, held)

    def finish(self) -> Iterator[Line]:
        """Yield the last line, if anything stands on it."""
        rest, self._rest = self._rest, ""
        if rest:
            yield self._line(rest.removesuffix("\r"))

    @property
    def rest(self) -> str:
        """The line that is not finished yet."""
        return self._rest

    def _line(self, text: str) -> Line:
        cut = self._cut + max(0, len(text) - LONGEST)
        made = Line(self._number, text[:LONGEST], cut)
        self._number += 1
        self._cut = 0
        return made

    def _hold(self, rest: str, held: str) -> None:
        """Keep the unfinished line, but no more of it than a line may have."""
        self._cut += max(0, len(rest) - LONGEST)
        self._rest = rest[:LONGEST] + held
