"""What a listed cause is called: those of the data, and one reading that is wrong."""

from __future__ import annotations

from dataclasses import dataclass

from checkers.domain.causes import CAUSES, REMAINDER
from checkers.wording.book import part

READING_WRONG = "reading-wrong"
NOW_AND_THEN = "erratic-mechanism"  # sound in the operations in which it does not stick
REST = "rest"
MODELLED_AS = {READING_WRONG: REMAINDER}


@dataclass(frozen=True, slots=True)
class Hypothesis:
    """A cause as it is listed: its words, whether it endangers people, what to do."""

    code: str
    name: str
    means: str
    danger: bool
    do_next: str


def hypothesis(code: str) -> Hypothesis:
    """Return the words of a cause by its permanent code."""
    if code == READING_WRONG:
        return _one_is_wrong()
    cause = CAUSES[code]
    return Hypothesis(code, cause.name, cause.means, cause.danger, cause.do_next)


def _one_is_wrong() -> Hypothesis:
    return Hypothesis(
        READING_WRONG,
        part("inference.reading-wrong"),
        part("inference.reading-wrong-means"),
        danger=False,
        do_next=part("inference.reading-wrong-do-next"),
    )


def modelled_as(code: str) -> str:
    """Return the cause whose cloud stands for a hypothesis."""
    return MODELLED_AS.get(code, code)
