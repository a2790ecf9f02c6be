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
from checkers.wording.book import part
from checkers.wording.reading_names import spoken

OPEN_FROM = 0.05  # a cause at least so likely is still open


def hint(about: str, decision: Decision, practised: Practised) -> Finding:
    """Return a hint as a finding that judges nothing.

    Inputs: what it is asked about: limits, test, cause or action; the decision so far; how far
    the learner is.
    """
    if about == "limits":
        return _limits(practised.judged)
    if about == "test":
        return _test(practised)
    if about == "cause":
        return _cause(practised)
    return _action(decision, practised.drawn)


def _hint(code: str, **facts: str) -> Finding:
    return mark(code, Outcome.CANNOT_SAY, facts)


def _limits(judged: Result) -> Finding:
    """Name the limit of each reading that has one, and where it stands."""
    limited = [one for one in judged.findings if one.limit]
    said = dict.fromkeys(
        part("practice.limit-of", about=spoken(one.about), limit=one.limit) for one in limited
    )
    sources = tuple(dict.fromkeys(source for one in limited for source in one.sources))
    if not said:
        return _hint("hint-no-limit")
    listed = "; ".join(said)
    facts = {"limits": f"{listed[0].upper()}{listed[1:]}"}
    return mark("hint-limits", Outcome.CANNOT_SAY, facts, sources)


def _test(practised: Practised) -> Finding:
    """Name what a learner can do that is expected to tell most of the cause."""
    explained, drawn = practised.explained(), practised.drawn
    asked = candidate_steps(drawn.case, explained.evidence)
    could = {one: key for one in asked if (key := key_of(one, drawn))}
    best = most_telling(tuple(could), explained.evidence, explained.causes)
    if best is None:
        return _hint("hint-nothing-tells-more")
    return _hint("hint-most-telling", thing=DRILLS.things[could[best.step]].words)


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


def _cause(practised: Practised) -> Finding:
    explained, hidden = practised.explained(), practised.drawn.cause
    still_open = [
        CAUSES[code].name
        for code in sorted(practised.level.causes)
        if code == hidden or chance_of(code, explained) >= OPEN_FROM
    ]
    return _hint("hint-still-open", causes="; ".join(still_open))


def _action(decision: Decision, drawn: Drawn) -> Finding:
    if decision.cause != drawn.cause:
        return _hint("hint-name-the-cause")
    return _hint("hint-what-it-means", means=CAUSES[drawn.cause].means)
