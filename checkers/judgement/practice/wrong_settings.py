"""Readings of an instrument that was found set otherwise than noted: none of them counts."""

from __future__ import annotations

from dataclasses import replace

from checkers.domain.device.readings import Test
from checkers.domain.verdicts import Finding, Outcome, Result

SAYS = (
    "The instrument was not set as noted, so this reading is one of another test: it neither "
    "passes nor fails."
)
DO_NEXT = "Set waveform, rating and multiple right, and repeat."
BY_INSTRUMENT = frozenset({Test.TRIP_TIME, Test.NO_TRIP, Test.RAMP, Test.UNKNOWN})


def without_settings(judged: Result) -> Result:
    """Return what readings come to where the settings of the instrument were wrong.

    The button takes no instrument, and what was measured by clamp stands.
    """
    return replace(judged, findings=[_unsettled(one) for one in judged.findings])


def _unsettled(finding: Finding) -> Finding:
    if finding.subject is None or finding.subject.test not in BY_INSTRUMENT:
        return finding
    return replace(finding, outcome=Outcome.CANNOT_SAY, says=SAYS, do_next=DO_NEXT)
