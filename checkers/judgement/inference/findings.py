"""What explain says of the readings as a whole: never a pass, never a fail.

What `readings` fails stands before any cause: it is named first, and nothing outvotes it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from checkers.domain.causes import REMAINDER
from checkers.domain.verdicts import Finding, Judges, Outcome
from checkers.judgement.inference.expected import percent
from checkers.judgement.inference.explanation import Explained
from checkers.judgement.inference.reasons import unlike_every_cause
from checkers.judgement.inference.standing import Standing
from checkers.judgement.inference.standing_words import listed, what_is_open
from checkers.judgement.inference.weighing.attempts import LeftOut, Noted
from checkers.judgement.inference.weighing.hypotheses import hypothesis
from checkers.judgement.inference.weighing.posterior import Weighed
from checkers.wording.book import part
from checkers.wording.finding import NO_FACTS, finding, with_parts

FAILS = {  # by whether a reading or a rule fails, and whether there is too much smooth DC
    (True, False): "inference.fails",
    (False, True): "inference.too-much-smooth-dc",
    (True, True): "inference.fails-with-too-much-smooth-dc",
    (False, False): "inference.dangerous-cause",
}
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
    facts = {"failing": listed(standing.failing)}
    do_next = {"do_next": hypothesis(named[0].code).do_next} if named else {}
    found = _finding(FAILS[bool(standing.failing), standing.dc_fails], facts, **do_next)
    return [with_parts(found, _chances(named))]


def _chances(named: Sequence[Weighed]) -> str:
    """Return the dangerous causes with their chances, as one sentence; nothing without any."""
    each = [
        part(
            "inference.cause-with-chance",
            cause=hypothesis(one.code).name,
            chance=percent(one.probability),
        )
        for one in named
    ]
    return part("inference.dangerous-causes", causes="; ".join(each)) if each else ""


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
        return _finding("inference.no-reading-used")
    unexplained = not_explained(explained)
    if unexplained:
        names = listed(dict.fromkeys(f"{one.name}, {one.measured}" for one in unexplained))
        return _finding("inference.not-explained", {"readings": names})
    first = explained.causes[0]
    cause = hypothesis(first.code)
    facts = {"cause": cause.name, "chance": percent(first.probability), "means": cause.means}
    do_next = do_about(first.code, explained.standing)
    return _finding("inference.most-likely", facts, do_next=do_next)


def do_about(code: str, standing: Standing) -> str:
    """Return what to do about a cause; where all is in order, what is not done goes first."""
    if code == REMAINDER and (standing.open or standing.missing):
        return what_is_open(standing)
    return hypothesis(code).do_next


def _unexplained(explained: Explained) -> list[Finding]:
    return [
        _finding(
            "inference.fails-unlike-every-cause" if one.fails else "inference.unlike-every-cause",
            {"name": one.name, "measured": one.measured},
        )
        for at, one in enumerate(explained.evidence.noted)
        if unlike_every_cause(explained.causes, at, one)
    ]


def _not_used(left_out: LeftOut) -> Finding:
    return _finding(left_out.code, {"name": left_out.name, **left_out.facts})


def not_weighed(code: str) -> Finding:
    """Return the finding that causes cannot be weighed, by the code of what stands against it."""
    return _finding(code)


def _finding(code: str, facts: Mapping[str, object] = NO_FACTS, **rest: str) -> Finding:
    return finding(code, Outcome.CANNOT_SAY, Judges.FUNCTION, facts, **rest)
