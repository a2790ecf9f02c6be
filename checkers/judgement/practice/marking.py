"""Marks for a learner's decision, each with its reason and the table it rests on."""

from __future__ import annotations

from collections.abc import Mapping
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
from checkers.wording.book import part
from checkers.wording.finding import NO_FACTS, finding

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
        found.append(mark("cause-not-decided", Outcome.CANNOT_SAY))
    if "action" in asks:
        found.append(action_mark(decision.action, drawn))
    return found


def limits_mark(said: str, judged: Result) -> Finding:
    """Mark what was said of the limits, with the finding that decides and its table."""
    why = deciding(judged)
    if not said:
        return mark("limits-not-decided", Outcome.CANNOT_SAY)
    facts = {"outcome": judged.outcome, "why": told(why)}
    if said == DO_NOT_KNOW:
        return on_table(mark("limits-told", Outcome.CANNOT_SAY, facts), why)
    if said == judged.outcome:
        return on_table(mark("limits-right", Outcome.PASS, facts), why)
    return on_table(mark("limits-wrong", Outcome.FAIL, facts), why)


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
    code, outcome = _cause_code(said, drawn, explained)
    true = CAUSES[drawn.cause]
    fails = drawn.fit.outcome is Outcome.FAIL
    facts = {
        "cause": true.name,
        "chance": percent(chance_of(true.code, explained)),
        "means": true.means,
        "fit": part("practice.fit-told", fit=told(drawn.fit)) if fails else "",
    }
    if said in CAUSES:
        facts |= {"named": CAUSES[said].name, "named_chance": percent(chance_of(said, explained))}
    return mark(code, outcome, facts, cited(true.code))


def _cause_code(said: str, drawn: Drawn, explained: Explained) -> tuple[str, Outcome]:
    if said == DO_NOT_KNOW:
        return "cause-told", Outcome.CANNOT_SAY
    if said == drawn.cause:
        return "cause-right", Outcome.PASS
    if defensible(said, drawn, explained):
        return "cause-defensible", Outcome.BORDERLINE
    return "cause-wrong", Outcome.FAIL


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
    several = part("practice.things-done", count=done)
    counted = several if done > 1 else part("practice.one-thing-done")
    facts = {"counted": counted, "chance": percent(known)}
    if known >= ENOUGH:
        return mark("enough-done", Outcome.PASS, facts)
    more = next_test(drawn.case, explained.evidence, explained.causes)
    if more is None:
        return mark("too-little-done", Outcome.BORDERLINE, facts)
    return mark("another-test-tells-more", Outcome.BORDERLINE, facts | {"test": more.test})


def action_mark(said: str, drawn: Drawn) -> Finding:
    """Mark what the learner would do about the cause."""
    if not said:
        return mark("action-not-decided", Outcome.CANNOT_SAY)
    code, outcome = _action_code(said, drawn)
    cause = CAUSES[drawn.cause]
    facts = {
        "do_next": cause.do_next,
        "usual": ACTIONS[cause.action],
        "said": cause.in_words(said) if said in cause.also else ACTIONS.get(said, ""),
        "why": NO_REMEDY.get(said, ""),
    }
    return mark(code, outcome, facts, cited(cause.code))


def _action_code(said: str, drawn: Drawn) -> tuple[str, Outcome]:
    cause = CAUSES[drawn.cause]
    if said == DO_NOT_KNOW:
        return "action-told", Outcome.CANNOT_SAY
    if said == cause.action:
        return "action-right", Outcome.PASS
    if said in cause.also:
        return "action-also-right", Outcome.PASS
    return "action-mends-nothing" if said in NO_REMEDY else "action-wrong", Outcome.FAIL


def mark(
    code: str,
    outcome: Outcome,
    facts: Mapping[str, object] = NO_FACTS,
    sources: tuple[Citation, ...] = (),
) -> Finding:
    """Return a mark: what was found, how it ends, the facts of its words, and what it rests on."""
    return finding(f"practice.{code}", outcome, Judges.FUNCTION, facts, sources=sources)
