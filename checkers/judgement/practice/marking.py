"""Marks for a learner's decision, each with its reason and the table it rests on."""

from __future__ import annotations

from dataclasses import dataclass, replace

from checkers.domain.causes import ACTIONS, CAUSES, NO_REMEDY, REMAINDER
from checkers.domain.sources.documents import Citation
from checkers.domain.verdicts import Finding, Judges, Outcome, Result
from checkers.judgement.inference.expected import percent
from checkers.judgement.inference.explanation import Explained
from checkers.judgement.inference.next_step.most_telling import next_test
from checkers.judgement.inference.weighing.hypotheses import READING_WRONG
from checkers.judgement.practice.exercise import Drawn
from checkers.judgement.practice.progress import Practised, deciding, told

OPEN = "Not decided."
DO_NOT_KNOW = "do-not-know"
DEFENSIBLE = 0.3
ENOUGH = 0.5


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


def marks(decision: Decision, practised: Practised) -> list[Finding]:
    """Return a mark for each thing that the level asks, with what is right.

    Result: pass is right, fail is wrong, borderline defensible, cannot-say not decided.
    """
    asks, drawn = practised.level.asks, practised.drawn
    found = [limits_mark(decision.limits, practised.judged)] if "limits" in asks else []
    if "cause" in asks and decision.cause:
        explained = practised.explained()
        found.append(cause_mark(decision.cause, drawn, explained))
        found.append(_tests(practised, explained))
    elif "cause" in asks:
        found.append(mark("cause", Outcome.CANNOT_SAY, OPEN))
    if "action" in asks:
        found.append(action_mark(decision.action, drawn))
    return found


def limits_mark(said: str, judged: Result) -> Finding:
    """Mark what was said of the limits, with the finding that decides and its table."""
    why = deciding(judged)
    if not said:
        return mark("limits", Outcome.CANNOT_SAY, OPEN)
    right = said == judged.outcome
    says = f"{_verdict(said, right=right)} {judged.outcome}. {told(why)}"
    outcome = _outcome(said, right=right)
    return on_table(mark("limits", outcome, says), why)


def on_table(marked: Finding, why: Finding) -> Finding:
    """Return a mark with the reading, the limit and the table of the finding it rests on."""
    return replace(
        marked,
        measured=why.measured,
        measured_as=why.measured_as,
        limit=why.limit,
        numbers=why.numbers,
        sources=why.sources,
    )


def cause_mark(said: str, drawn: Drawn, explained: Explained) -> Finding:
    """Mark the cause that was named, with how likely it was from what was done."""
    true = CAUSES[drawn.cause]
    why = f" {told(drawn.fit)}" if drawn.fit.outcome is Outcome.FAIL else ""
    from_tests = f"From what was done, it was {percent(chance_of(true.code, explained))} likely"
    if said in (drawn.cause, DO_NOT_KNOW):
        right = said == drawn.cause
        says = f"{_verdict(said, right=right)} {true.name}. {from_tests}. {true.means}{why}"
        return mark("cause", _outcome(said, right=right), says, cited(true.code))
    named = CAUSES[said]
    yours = percent(chance_of(said, explained))
    ends = f"It was “{true.name}”. {from_tests}, and “{named.name}” {yours}. {true.means}{why}"
    if defensible(said, drawn, explained):
        says = f"Not right, but the readings pointed there. {ends}"
        return mark("cause", Outcome.BORDERLINE, says, cited(true.code))
    return mark("cause", Outcome.FAIL, f"Not right. {ends}", cited(true.code))


def chance_of(code: str, explained: Explained) -> float:
    """Return how likely a cause is from what was done; good order, with a wrong reading too."""
    halves = (REMAINDER, READING_WRONG)
    return explained.chance_of(*(halves if code == REMAINDER else (code,)))


def defensible(said: str, drawn: Drawn, explained: Explained) -> bool:
    """Tell whether a wrong cause was the better guess from what was done."""
    return chance_of(said, explained) >= max(DEFENSIBLE, chance_of(drawn.cause, explained))


def cited(code: str) -> tuple[Citation, ...]:
    """Return the document behind a cause."""
    citation = CAUSES[code].citation
    return () if citation is None else (citation,)


def _tests(practised: Practised, explained: Explained) -> Finding:
    """Say whether enough was done to tell the cause, and what would have told more."""
    drawn, done = practised.drawn, len(practised.taken)
    known = chance_of(drawn.cause, explained)
    counted = f"{done} things were done" if done > 1 else "one thing was done"
    if known >= ENOUGH:
        says = f"Enough: {counted}, and the cause was {percent(known)} likely from them."
        return mark("tests", Outcome.PASS, says)
    more = next_test(drawn.case, explained.evidence, explained.causes)
    what = f" Most would have been told by: {more.test}." if more else ""
    says = f"Not enough: {counted}, and the cause was only {percent(known)} likely.{what}"
    return mark("tests", Outcome.BORDERLINE, says)


def action_mark(said: str, drawn: Drawn) -> Finding:
    """Mark what the learner would do about the cause."""
    if not said:
        return mark("action", Outcome.CANNOT_SAY, OPEN)
    cause = CAUSES[drawn.cause]
    if said in cause.also:
        says = f"Right: {cause.in_words(said)} Or: {ACTIONS[cause.action]}"
        return mark("action", Outcome.PASS, says, cited(cause.code))
    right = said == cause.action
    says = f"{_verdict(said, right=right)} {cause.do_next}"
    if said in ACTIONS and not right:
        says = " ".join(
            part for part in (says, f"Yours was: {ACTIONS[said]}", why_none(said)) if part
        )
    return mark("action", _outcome(said, right=right), says, cited(cause.code))


def why_none(action: str) -> str:
    """Return why an action mends nothing, or nothing where it is a remedy of some cause."""
    return NO_REMEDY.get(action, "")


def _verdict(said: str, *, right: bool) -> str:
    if said == DO_NOT_KNOW:
        return "It is:"
    return "Right:" if right else "Not right:"


def _outcome(said: str, *, right: bool) -> Outcome:
    if said == DO_NOT_KNOW:
        return Outcome.CANNOT_SAY
    return Outcome.PASS if right else Outcome.FAIL


def mark(about: str, outcome: Outcome, says: str, sources: tuple[Citation, ...] = ()) -> Finding:
    """Return a mark: what it is about, how it ends, its words, and what it rests on."""
    return Finding(about=about, outcome=outcome, says=says, judges=Judges.FUNCTION, sources=sources)
