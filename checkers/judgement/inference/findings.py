"""What explain says of the readings as a whole: never a pass, never a fail."""

from __future__ import annotations

from collections.abc import Sequence

from checkers.domain.causes import CAUSES
from checkers.domain.measured import Said
from checkers.domain.verdicts import Finding, Judges, Outcome
from checkers.judgement.inference.expected import percent
from checkers.judgement.inference.explaining import Explained
from checkers.judgement.inference.likelihood import MISREAD, freak_range
from checkers.judgement.inference.noted import LeftOut, Noted
from checkers.judgement.inference.posterior import Weighed
from checkers.judgement.inference.reasons import unlike_every_cause

CAUSE = "which cause it is"
DANGER = "whether people are protected"
NOT_A_VERDICT = (
    "These are causes, no verdict: whether the readings meet their limits is judged apart."
)


def findings_of(explained: Explained, small_chance: float) -> list[Finding]:
    """Return the findings, the caution about danger first where there is one.

    Inputs: what was explained; from which chance on a dangerous cause is named.
    """
    return [
        *danger(explained.causes, small_chance),
        _leading(explained),
        *_unexplained(explained),
        *(_not_used(one) for one in explained.left_out),
    ]


def danger(causes: Sequence[Weighed], small_chance: float) -> list[Finding]:
    """Return the caution where causes that leave people without protection are not unlikely."""
    dangerous = [
        one for one in causes if CAUSES[one.code].danger and one.probability >= small_chance
    ]
    if not dangerous:
        return []
    listed = "; ".join(f"{CAUSES[one.code].name} ({percent(one.probability)})" for one in dangerous)
    says = (
        "People may be without protection: treat the circuit as unprotected until this is "
        f"settled. {listed}."
    )
    return [_finding(DANGER, says, CAUSES[dangerous[0].code].do_next)]


def _leading(explained: Explained) -> Finding:
    if not explained.evidence.noted:
        says = f"No reading could be used, so nothing is told from them. {NOT_A_VERDICT}"
        return _finding(CAUSE, says)
    first = explained.causes[0]
    cause = CAUSES[first.code]
    says = f"Most likely: {cause.name} ({percent(first.probability)}). {cause.means}"
    return _finding(CAUSE, f"{says} {NOT_A_VERDICT}", cause.do_next)


def _unexplained(explained: Explained) -> list[Finding]:
    return [
        _finding(
            one.name,
            f"{one.measured} is unlike every cause considered here: it may be a misreading, or "
            "something this model does not know.",
            "Repeat it, and write down what was set.",
        )
        for at, one in enumerate(explained.evidence.noted)
        if unlike_every_cause(explained.causes, at, _freak(one))
    ]


def _freak(noted: Noted) -> float:
    """Return the likelihood of a freak to show a reading: a density for a figure."""
    if noted.measured.said is Said.FIGURE:
        return MISREAD / freak_range(noted.attempt)
    return 0.5 * MISREAD


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
