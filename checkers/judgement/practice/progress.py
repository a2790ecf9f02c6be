"""How far a learner has come with a device: what was done, what it shows, what it comes to."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from checkers.domain.verdicts import Finding, Outcome, Result
from checkers.judgement.inference.explanation import Explained, explain
from checkers.judgement.inference.weighing.inspection import Inspected
from checkers.judgement.practice.drills import PracticeLevel
from checkers.judgement.practice.exercise import Drawn
from checkers.judgement.practice.test_results import Taken
from checkers.wording.book import part
from checkers.wording.reading_names import spoken


@dataclass(frozen=True, slots=True)
class Practised:
    """A level's device, what was done with it, and what the readings checker says of that.

    `leaks_too_much` is what leakage-budget says of the leakage clamp.
    """

    level: PracticeLevel
    drawn: Drawn
    taken: Sequence[Taken]
    judged: Result
    leaks_too_much: bool = False

    def explained(self) -> Explained:
        """Return what explain makes of all that was done, clamps and looks included.

        What was seen is certain here, and so is what inspection says of type and leakage.
        """
        drawn, taken = self.drawn, self.taken
        readings = [one.reading for one in taken if one.reading is not None]
        currents = {one.thing.look: one.current for one in taken if one.current is not None}
        opened = [one.opened for one in taken if one.reading is not None]
        circuit = replace(
            drawn.case.circuit,
            dc_residual=currents.get("dc"),
            standing_leakage=currents.get("leakage"),
        )
        looked = {one.thing.look: one.strange for one in taken if one.strange is not None}
        case = replace(drawn.case, circuit=circuit)
        seen = tuple(looked.items())
        return explain(
            readings,
            case,
            drawn.scene.supply,
            seen,
            opened,
            findings=self.judged.findings,
            inspected=self.inspected,
        )

    @property
    def inspected(self) -> Inspected:
        """What inspection has settled of the device."""
        fits = self.drawn.fit.outcome is Outcome.PASS
        causes = frozenset(self.level.causes)
        return Inspected(causes, fits, self.leaks_too_much, self.drawn.lots)


def deciding(judged: Result) -> Finding:
    """Return the finding that decides a result: the first of the worst."""
    return next(one for one in judged.findings if one.outcome is judged.outcome)


def told(finding: Finding) -> str:
    """Return a finding as a sentence that begins with what it is about."""
    about = spoken(finding.about)
    return part("practice.told", about=f"{about[0].upper()}{about[1:]}", says=finding.says)
