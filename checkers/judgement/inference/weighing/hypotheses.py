"""What a listed cause is called: those of the data, and one reading that is wrong."""

from __future__ import annotations

from dataclasses import dataclass

from checkers.domain.causes import CAUSES, REMAINDER

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


WRONG = Hypothesis(
    READING_WRONG,
    "One reading is wrong",
    "The device and its circuit are sound, and one reading was misread, miswritten or disturbed.",
    danger=False,
    do_next="Repeat the reading that stands out, and write down what was set. Until then it "
    "stands as it was noted.",
)


def hypothesis(code: str) -> Hypothesis:
    """Return the words of a cause by its permanent code."""
    if code == READING_WRONG:
        return WRONG
    cause = CAUSES[code]
    return Hypothesis(code, cause.name, cause.means, cause.danger, cause.do_next)


def modelled_as(code: str) -> str:
    """Return the cause whose cloud stands for a hypothesis."""
    return MODELLED_AS.get(code, code)
