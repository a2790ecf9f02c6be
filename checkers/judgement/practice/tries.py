"""Marks for one try: what is right is confirmed, what is wrong gets a reason and no answer."""

from __future__ import annotations

from collections.abc import Sequence

from checkers.domain.causes import ACTIONS, CAUSES, NO_REMEDY
from checkers.domain.verdicts import Finding, Outcome, Result
from checkers.judgement.inference.explanation import Explained
from checkers.judgement.inference.reasons import reasons_for
from checkers.judgement.practice.exercise import Drawn
from checkers.judgement.practice.marking import (
    DO_NOT_KNOW,
    Decision,
    action_mark,
    cause_mark,
    cited,
    defensible,
    limits_mark,
    mark,
    on_table,
)
from checkers.judgement.practice.progress import Practised, deciding
from checkers.wording.reading_names import spoken

REASONS = 2  # that speak against a cause, the strongest


def tried(decision: Decision, practised: Practised) -> list[Finding]:
    """Return a mark for each thing decided; a wrong one gives nothing away.

    Result: as of marks; whoever does not know is told.
    """
    found = []
    if decision.limits:
        found.append(_limits(decision.limits, practised.judged))
    if decision.cause:
        found.append(_cause(decision.cause, practised.drawn, practised.explained()))
    if decision.action:
        found.append(_action(decision.action, practised.drawn))
    return found


def _limits(said: str, judged: Result) -> Finding:
    if said in (judged.outcome, DO_NOT_KNOW):
        return limits_mark(said, judged)
    why = deciding(judged)
    facts = {"said": said, "reading": spoken(why.about)}
    return on_table(mark("limits-look-again", Outcome.FAIL, facts), why)


def _cause(said: str, drawn: Drawn, explained: Explained) -> Finding:
    if said in (drawn.cause, DO_NOT_KNOW):
        return cause_mark(said, drawn, explained)
    facts = {"named": CAUSES[said].name}
    if defensible(said, drawn, explained):
        return mark("cause-pointed-to", Outcome.BORDERLINE, facts, cited(said))
    code, reasons = _against(said, explained)
    return mark(code, Outcome.FAIL, facts | {"reasons": "; ".join(reasons)}, cited(said))


def _against(said: str, explained: Explained) -> tuple[str, Sequence[str]]:
    """Return which mark a wrong cause gets, and what speaks against it."""
    named = next((one for one in explained.causes if one.code == said), None)
    if named is None:
        return "cause-ruled-out", ()
    reasons = reasons_for(named, explained.causes, explained.evidence)[1][:REASONS]
    return "cause-spoken-against" if reasons else "cause-not-spoken-against", reasons


def _action(said: str, drawn: Drawn) -> Finding:
    cause = CAUSES[drawn.cause]
    if said in (cause.action, DO_NOT_KNOW, *cause.also):
        return action_mark(said, drawn)
    fits = [one.name for one in CAUSES.values() if said in (one.action, *one.also)]
    facts = {"said": ACTIONS[said], "causes": "; ".join(fits), "why": NO_REMEDY.get(said, "")}
    code = "action-fits-other-causes" if fits else "action-fits-no-cause"
    return mark(code, Outcome.FAIL, facts, cited(drawn.cause))
