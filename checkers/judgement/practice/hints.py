"""Hints: which limits apply, what to do next, what is still open, what a cause means."""

from __future__ import annotations

from checkers.domain.causes import CAUSES
from checkers.domain.verdicts import Finding, Outcome, Result
from checkers.judgement.inference.next_step.candidate_steps import candidate_steps
from checkers.judgement.inference.next_step.most_telling import most_telling
from checkers.judgement.inference.next_step.step import NextStep
from checkers.judgement.inference.weighing.attempts import attempt_of
from checkers.judgement.practice.drills import DRILLS
from checkers.judgement.practice.exercise import Drawn
from checkers.judgement.practice.marking import Decision, chance_of, mark
from checkers.judgement.practice.progress import Practised
from checkers.judgement.practice.test_results import reading_of
from checkers.physics.response.attempt import Attempt
from checkers.wording.reading_names import spoken

KINDS = (
    ("limits", "which limits apply"),
    ("test", "what to do next"),
    ("cause", "which causes are still open"),
    ("action", "what the cause means"),
)
OPEN_FROM = 0.05  # a cause at least so likely is still open


def hint(about: str, decision: Decision, practised: Practised) -> Finding:
    """Return a hint as a finding that judges nothing.

    Inputs: what it is asked about, one of KINDS; the decision so far; how far the learner is.
    """
    if about == "limits":
        return _limits(practised.judged)
    if about == "test":
        return _hint(_test(practised))
    if about == "cause":
        return _hint(_cause(practised))
    return _hint(_action(decision, practised.drawn))


def _hint(says: str) -> Finding:
    return mark("hint", Outcome.CANNOT_SAY, says)


def _limits(judged: Result) -> Finding:
    """Name the limit of each reading that has one, and where it stands."""
    limited = [one for one in judged.findings if one.limit]
    said = dict.fromkeys(f"{spoken(one.about)}: {one.limit}" for one in limited)
    sources = tuple(dict.fromkeys(source for one in limited for source in one.sources))
    if not said:
        return _hint("No figure limits what was done: say what it shows all the same.")
    listed = "; ".join(said)
    return mark("hint", Outcome.CANNOT_SAY, f"{listed[0].upper()}{listed[1:]}.", sources)


def _test(practised: Practised) -> str:
    """Name what a learner can do that is expected to tell most of the cause."""
    explained, drawn = practised.explained(), practised.drawn
    asked = candidate_steps(drawn.case, explained.evidence)
    could = {one: key for one in asked if (key := key_of(one, drawn))}
    best = most_telling(tuple(could), explained.evidence, explained.causes)
    if best is None:
        return "Nothing that is left would tell much more: decide."
    return f"Most would be told by: {DRILLS.things[could[best.step]].words}."


def key_of(step: NextStep, drawn: Drawn) -> str:
    """Return the key of the thing by which a learner finds a step's answer, or nothing."""
    for key, thing in DRILLS.things.items():
        if step.look or thing.look:
            same = step.look == thing.look
        else:
            own = attempt_of(reading_of(thing), drawn.case, first=False)
            same = step.attempt is not None and _alike(own, step.attempt)
        if same:
            return key
    return ""


def _alike(own: Attempt, asked: Attempt) -> bool:
    """Tell whether two tests are the same, a start phase that is not given apart."""
    return (
        own.test == asked.test
        and own.current == asked.current
        and own.waveform == asked.waveform
        and asked.start in ("", own.start)
        and own.loads == asked.loads
        and (own.place == "device") == (asked.place == "device")
    )


def _cause(practised: Practised) -> str:
    explained, hidden = practised.explained(), practised.drawn.cause
    still_open = [
        CAUSES[code].name
        for code in sorted(practised.level.causes)
        if code == hidden or chance_of(code, explained) >= OPEN_FROM
    ]
    return f"What was done leaves open: {'; '.join(still_open)}."


def _action(decision: Decision, drawn: Drawn) -> str:
    if decision.cause != drawn.cause:
        return "Name the cause first."
    return CAUSES[drawn.cause].means
