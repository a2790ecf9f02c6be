"""Marks for one try: what is right is confirmed, what is wrong gets a reason and no answer."""

from __future__ import annotations

from checkers.domain.causes import ACTIONS, CAUSES
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
    why_none,
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
    says = f"Not right: {said}. Look again at {spoken(why.about)}: it decides."
    return on_table(mark("limits", Outcome.FAIL, says), why)


def _cause(said: str, drawn: Drawn, explained: Explained) -> Finding:
    if said in (drawn.cause, DO_NOT_KNOW):
        return cause_mark(said, drawn, explained)
    name = CAUSES[said].name
    if defensible(said, drawn, explained):
        says = f"Not “{name}”, though what was done points there. Do more before you decide."
        return mark("cause", Outcome.BORDERLINE, says, cited(said))
    return mark("cause", Outcome.FAIL, f"Not “{name}”. {_against(said, explained)}", cited(said))


def _against(said: str, explained: Explained) -> str:
    named = next((one for one in explained.causes if one.code == said), None)
    if named is None:
        return "What was measured rules it out."
    reasons = reasons_for(named, explained.causes, explained.evidence)[1][:REASONS]
    if not reasons:
        return "Nothing that was done speaks clearly against it, and yet it is another: do more."
    return f"Against it speaks: {'; '.join(reasons)}."


def _action(said: str, drawn: Drawn) -> Finding:
    cause = CAUSES[drawn.cause]
    if said in (cause.action, DO_NOT_KNOW, *cause.also):
        return action_mark(said, drawn)
    fits = [one.name for one in CAUSES.values() if said in (one.action, *one.also)]
    why = f"It is what to do about: {'; '.join(fits)}." if fits else why_none(said)
    says = f"Not right here: “{ACTIONS[said]}” {why}"
    return mark("action", Outcome.FAIL, says, cited(drawn.cause))
