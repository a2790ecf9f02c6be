"""What explain says of the readings as a whole: never a pass, never a fail.

What `readings` fails stands before any cause: it is named first, and nothing outvotes it.
"""

from __future__ import annotations

from collections.abc import Sequence

from checkers.domain.causes import REMAINDER
from checkers.domain.verdicts import Finding, Judges, Outcome
from checkers.judgement.inference.expected import percent
from checkers.judgement.inference.explanation import Explained
from checkers.judgement.inference.reasons import unlike_every_cause
from checkers.judgement.inference.standing import Standing
from checkers.judgement.inference.standing_words import (
    LEAVES_OPEN,
    NOT_EXPLAINED,
    OUT_OF_SERVICE,
    REPEAT_THEN_REPLACE,
    failing_words,
    listed,
    what_is_open,
)
from checkers.judgement.inference.weighing.attempts import LeftOut, Noted
from checkers.judgement.inference.weighing.hypotheses import hypothesis
from checkers.judgement.inference.weighing.posterior import Weighed

CAUSE = "which cause it is"
DANGER = "whether people are protected"
NOT_A_VERDICT = (
    "These are causes, no verdict: whether the readings meet their limits is judged apart."
)
SPEAKS = 2.0  # a cause is raised by what was measured from this ratio to good order on


def findings_of(explained: Explained, small_chance: float) -> list[Finding]:
    """Return the findings, the caution about danger first where there is one.

    Inputs: what was explained; from which chance on a dangerous cause is named.
    """
    return [
        *danger(explained.causes, small_chance, explained.standing),
        _leading(explained),
        *_unexplained(explained),
        *(_not_used(one) for one in explained.left_out),
    ]


def danger(causes: Sequence[Weighed], small_chance: float, standing: Standing) -> list[Finding]:
    """Return the caution where something fails, or a dangerous cause is raised by what was read.

    Inputs: the causes; from which chance on a dangerous one is named; how the device stands.
    A cause that is only common, and no likelier for the readings, raises no alarm.
    """
    likely = [one for one in causes if hypothesis(one.code).danger]
    named = [one for one in likely if one.probability >= small_chance and _raised(one, causes)]
    if not named and not standing.fails:
        return []
    dangerous = [hypothesis(one.code) for one in named]
    chances = "; ".join(
        f"{hypothesis(one.code).name} ({percent(one.probability)})" for one in named
    )
    says = (
        f"{failing_words(standing)}People may be without protection: treat the circuit as "
        f"unprotected until this is settled.{f' {chances}.' if chances else ''}"
    )
    return [_finding(DANGER, says, dangerous[0].do_next if dangerous else OUT_OF_SERVICE)]


def _raised(cause: Weighed, causes: Sequence[Weighed]) -> bool:
    """Tell whether the readings speak for a cause against good order, or exclude that."""
    sound = next((one for one in causes if one.code == REMAINDER), None)
    if sound is None or sound.probability == 0.0:
        return True
    return cause.probability * sound.prior >= SPEAKS * sound.probability * cause.prior


def not_explained(explained: Explained) -> list[Noted]:
    """Return the readings that fail a limit and that no cause accounts for."""
    return [
        one
        for at, one in enumerate(explained.evidence.noted)
        if one.fails and unlike_every_cause(explained.causes, at, one)
    ]


def _leading(explained: Explained) -> Finding:
    if not explained.evidence.noted:
        says = f"No reading could be used, so nothing is told from them. {NOT_A_VERDICT}"
        return _finding(CAUSE, says)
    unexplained = not_explained(explained)
    if unexplained:
        names = listed(dict.fromkeys(f"{one.name}, {one.measured}" for one in unexplained))
        return _finding(CAUSE, f"{NOT_EXPLAINED}: {names}. {LEAVES_OPEN}", REPEAT_THEN_REPLACE)
    first = explained.causes[0]
    cause = hypothesis(first.code)
    says = f"Most likely: {cause.name} ({percent(first.probability)}). {cause.means}"
    return _finding(CAUSE, f"{says} {NOT_A_VERDICT}", do_about(first.code, explained.standing))


def do_about(code: str, standing: Standing) -> str:
    """Return what to do about a cause; where all is in order, what is not done goes first."""
    if code == REMAINDER and (standing.open or standing.missing):
        return what_is_open(standing)
    return hypothesis(code).do_next


def _unexplained(explained: Explained) -> list[Finding]:
    return [
        _finding(
            one.name,
            f"{one.measured} is unlike every cause considered here: it may be a misreading, or "
            "something this model does not know.",
            REPEAT_THEN_REPLACE if one.fails else "Repeat it, and write down what was set.",
        )
        for at, one in enumerate(explained.evidence.noted)
        if unlike_every_cause(explained.causes, at, one)
    ]


def _not_used(left_out: LeftOut) -> Finding:
    return _finding(left_out.name, f"Left out: {left_out.why}.")


def _finding(about: str, says: str, do_next: str = "") -> Finding:
    return Finding(
        about=about,
        outcome=Outcome.CANNOT_SAY,
        says=says,
        judges=Judges.FUNCTION,
        do_next=do_next,
    )
