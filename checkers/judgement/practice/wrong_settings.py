"""Readings of an instrument that was found set otherwise than noted: none of them counts."""

from __future__ import annotations

from dataclasses import replace

from checkers.domain.device.readings import Test
from checkers.domain.verdicts import Finding, Outcome, Result
from checkers.wording.book import part

BY_INSTRUMENT = frozenset({Test.TRIP_TIME, Test.NO_TRIP, Test.RAMP, Test.UNKNOWN})


def without_settings(judged: Result) -> Result:
    """Return what readings come to where the settings of the instrument were wrong.

    The button takes no instrument, and what was measured by clamp stands. These findings are
    only told in a mark, which has a code of its own.
    """
    return replace(judged, findings=[_unsettled(one) for one in judged.findings])


def _unsettled(finding: Finding) -> Finding:
    if finding.subject is None or finding.subject.test not in BY_INSTRUMENT:
        return finding
    says = part("practice.set-otherwise")
    return replace(finding, code="", outcome=Outcome.CANNOT_SAY, says=says, do_next="")
