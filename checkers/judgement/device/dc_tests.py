"""What tests with smooth DC, made or not made, say of a device that is there for smooth DC."""

from __future__ import annotations

from collections.abc import Sequence

from checkers.domain.device.readings import HALF_WAVES, Reading, Test, Waveform
from checkers.domain.quantities.measured_value import SHOWS_NOTHING
from checkers.domain.verdicts import Finding, Judges, Outcome
from checkers.judgement.case import Case
from checkers.judgement.readings.verdict import Judged
from checkers.wording.book import part
from checkers.wording.finding import finding

SHAPES = {
    "device.half-wave": HALF_WAVES,
    "device.smooth-dc": frozenset({Waveform.SMOOTH_DC}),
}


def judge_dc_tests(
    readings: Sequence[Reading], judged: Sequence[list[Judged]], case: Case
) -> list[Finding]:
    """Return the finding on fitness for DC where a test with smooth DC failed.

    Inputs: the readings of one device, and for each of them what was judged.
    """
    if not _is_there_for_dc(case):
        return []
    failed = [
        one.finding
        for reading, found in zip(readings, judged, strict=True)
        if reading.waveform == Waveform.SMOOTH_DC
        for one in found
        if one.finding.outcome is Outcome.FAIL
    ]
    return [_not_fit(failed[0], case)] if failed else []


def not_tested_with_dc(readings: Sequence[Reading], case: Case) -> tuple[str, ...]:
    """Return a caution that names the waveforms a device is there for and was not tested with."""
    if not _is_there_for_dc(case):
        return ()
    tested = {one.waveform for one in readings if _gave_a_result(one)}
    missing = [name for name, shapes in SHAPES.items() if not tested & shapes]
    if case.device.detects_dc:
        missing = [name for name in missing if name == "device.smooth-dc"]
    if not missing:
        return ()
    shapes = part("device.and").join(map(part, missing))
    return (part("device.not-tested-with", shapes=shapes, what=_what(case)),)


def _is_there_for_dc(case: Case) -> bool:
    return case.device.senses_smooth_dc or case.device.detects_dc


def _gave_a_result(reading: Reading) -> bool:
    told = reading.measured.said not in SHOWS_NOTHING
    return told and reading.test not in (Test.BUTTON, Test.UNKNOWN)


def _what(case: Case) -> str:
    if case.device.detects_dc:
        return part("device.the-detection")
    return part("device.this-type", type=case.device.type)


def _not_fit(failed: Finding, case: Case) -> Finding:
    return finding(
        "device.dc-test-failed",
        Outcome.FAIL,
        Judges.FITNESS_FOR_DC,
        {"what": _what(case)},
        measured=failed.measured,
        measured_as=failed.measured_as,
        limit=failed.limit,
        sources=failed.sources,
    )
