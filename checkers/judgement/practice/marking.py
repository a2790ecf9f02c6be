"""Marks for a learner's decision, each with its reason and the table it rests on."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from checkers.domain.causes import ACTIONS, CAUSES
from checkers.domain.verdicts import Finding, Judges, Outcome, Result
from checkers.judgement.inference.expected import percent
from checkers.judgement.inference.explaining import Explained, explain
from checkers.judgement.inference.next_test import next_test
from checkers.judgement.practice.drawn import Drawn
from checkers.judgement.practice.taken import Taken

OPEN = "Not decided."
DEFENSIBLE = 0.3


@dataclass(frozen=True, slots=True)
class Decision:
    """What a learner decided; empty where not yet."""

    limits: str = ""
    cause: str = ""
    action: str = ""

    @property
    def is_made(self) -> bool:
        """Whether anything was decided."""
        return bool(self.limits or self.cause or self.action)


def marks(
    decision: Decision, asks: frozenset[str], drawn: Drawn, taken: Sequence[Taken], judged: Result
) -> list[Finding]:
    """Return a mark for each thing asked: pass is right, fail is wrong, borderline defensible.

    Inputs: the decision; what the level asks; the device drawn; what was done; what the
    readings checker says of the readings.
    """
    found = [_limits(decision, judged)] if "limits" in asks else []
    if "cause" in asks and decision.cause:
        explained = explained_by(drawn, taken)
        found += [_cause(decision.cause, drawn, explained), _tests(drawn, taken, explained)]
    elif "cause" in asks:
        found.append(_mark("cause", Outcome.CANNOT_SAY, OPEN))
    if "action" in asks:
        found.append(_action(decision, drawn))
    return found


def explained_by(drawn: Drawn, taken: Sequence[Taken]) -> Explained:
    """Return what explain makes of all that was done, clamps and looks included."""
    readings = [one.reading for one in taken if one.reading is not None]
    currents = {one.thing.look: one.current for one in taken if one.current is not None}
    opened = [one.opened for one in taken if one.opened is not None]
    circuit = replace(
        drawn.case.circuit,
        dc_residual=currents.get("dc"),
        standing_leakage=currents.get("leakage"),
        seen_to_open=opened[-1] if opened else None,
    )
    looked = {one.thing.look: one.strange for one in taken if one.strange is not None}
    case = replace(drawn.case, circuit=circuit)
    return explain(readings, case, drawn.scene.supply, tuple(looked.items()))


def deciding(judged: Result) -> Finding:
    """Return the finding that decides a result: the first of the worst."""
    return next(one for one in judged.findings if one.outcome is judged.outcome)


def _limits(decision: Decision, judged: Result) -> Finding:
    why = deciding(judged)
    reason = f"{why.about}: {why.says}"
    if not decision.limits:
        return _mark("limits", Outcome.CANNOT_SAY, OPEN)
    right = decision.limits == judged.outcome
    says = f"{_right(right)}: {judged.outcome}. {reason}"
    return replace(
        _mark("limits", Outcome.PASS if right else Outcome.FAIL, says),
        measured=why.measured,
        limit=why.limit,
        numbers=why.numbers,
        sources=why.sources,
    )


def _cause(code: str, drawn: Drawn, explained: Explained) -> Finding:
    chances = {one.code: one.probability for one in explained.causes}
    true, named = CAUSES[drawn.cause], CAUSES[code]
    from_tests = f"From what was done, it was {percent(chances.get(true.code, 0.0))} likely"
    if code == drawn.cause:
        return _mark("cause", Outcome.PASS, f"Right: {true.name}. {from_tests}. {true.means}")
    yours = chances.get(named.code, 0.0)
    said = f"It was “{true.name}”. {from_tests}, and “{named.name}” {percent(yours)}. {true.means}"
    if yours >= max(DEFENSIBLE, chances.get(true.code, 0.0)):
        says = f"Not right, but the readings pointed there. {said}"
        return _mark("cause", Outcome.BORDERLINE, says)
    return _mark("cause", Outcome.FAIL, f"Not right. {said}")


def _tests(drawn: Drawn, taken: Sequence[Taken], explained: Explained) -> Finding:
    """Say whether enough was done to tell the cause, and what would have told more."""
    chances = {one.code: one.probability for one in explained.causes}
    known = chances.get(drawn.cause, 0.0)
    counted = f"{len(taken)} things were done"
    if known >= 0.5:
        says = f"Enough: {counted}, and the cause was {percent(known)} likely from them."
        return _mark("tests", Outcome.PASS, says)
    more = next_test(drawn.case, explained.evidence, explained.causes)
    what = f" Most would have been told by: {more.test}." if more else ""
    says = f"Not enough: {counted}, and the cause was only {percent(known)} likely.{what}"
    return _mark("tests", Outcome.BORDERLINE, says)


def _action(decision: Decision, drawn: Drawn) -> Finding:
    if not decision.action:
        return _mark("action", Outcome.CANNOT_SAY, OPEN)
    cause = CAUSES[drawn.cause]
    if decision.action in cause.also:
        says = f"Right: {ACTIONS[decision.action]} First of all, though: {cause.do_next}"
        return _mark("action", Outcome.PASS, says)
    right = decision.action == cause.action
    says = f"{_right(right)}: {cause.do_next}"
    if not right:
        says += f" Yours was: {ACTIONS[decision.action]}"
    return _mark("action", Outcome.PASS if right else Outcome.FAIL, says)


def _right(right: bool) -> str:
    return "Right" if right else "Not right"


def _mark(about: str, outcome: Outcome, says: str) -> Finding:
    return Finding(about=about, outcome=outcome, says=says, judges=Judges.FUNCTION)
