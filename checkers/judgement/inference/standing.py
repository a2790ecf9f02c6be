"""How a device stands by its limits: what that rules out, whatever causes come to mind.

The findings are those of `readings`. No weighing of causes outvotes one of them.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from checkers.domain.causes import REMAINDER
from checkers.domain.verdicts import Finding, Outcome, StillToDo
from checkers.judgement.dc.fitness import speaks_of_measured_dc
from checkers.judgement.inference.weighing.hypotheses import READING_WRONG
from checkers.physics.scatter import SCATTER
from checkers.wording.reading_names import spoken

GOOD_TIMES = "type-too-low"  # by its name the times are in order
MOST_OFTEN_WRONG = 0.1  # of sound devices, however many readings were taken
NOT_YET = frozenset({Outcome.BORDERLINE, Outcome.CANNOT_SAY})


@dataclass(frozen=True, slots=True)
class Standing:
    """What is judged of a device, as far as it bears on the causes.

    `failing` names the readings and rules that fail; `dc_fails` holds where more smooth DC
    was measured than the type bears; `open` names what is not settled, `missing` the tests that
    the local code requires and no reading answers.
    """

    failing: tuple[str, ...] = ()
    dc_fails: bool = False
    open: tuple[str, ...] = ()
    missing: tuple[str, ...] = ()

    @property
    def fails(self) -> bool:
        """Whether anything fails, a reading or the fitness for DC."""
        return bool(self.failing) or self.dc_fails


def standing_of(findings: Sequence[Finding], missing: Sequence[StillToDo] = ()) -> Standing:
    """Return how a device stands by its findings, and by the tests that are still to do."""
    failed = [one for one in findings if one.outcome is Outcome.FAIL]
    return Standing(
        failing=_names([one for one in failed if not speaks_of_measured_dc(one)]),
        dc_fails=any(map(speaks_of_measured_dc, failed)),
        open=_names([one for one in findings if one.outcome in NOT_YET]),
        missing=tuple(one.words for one in missing),
    )


def _names(findings: Sequence[Finding]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(spoken(one.about) for one in findings))


def allowed(shares: Mapping[str, float], standing: Standing, readings: int) -> dict[str, float]:
    """Return the prior share of each cause that the findings leave possible, summing to 1.

    Inputs: the shares before; how the device stands; how many readings there are.
    A sound device with one wrong reading is a cause of its own, apart from good order.
    """
    found = dict(shares)
    sound = found.pop(REMAINDER, 0.0)
    wrong = sound * min(MOST_OFTEN_WRONG, readings * SCATTER.misread.typical)
    if not standing.fails:
        found = {REMAINDER: sound - wrong, **found}
    if standing.failing:
        found.pop(GOOD_TIMES, None)
    if not standing.dc_fails:
        found[READING_WRONG] = wrong
    whole = sum(found.values())
    return {code: share / whole for code, share in found.items() if share > 0.0}
