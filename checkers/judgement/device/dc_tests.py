"""What tests with smooth DC, made or not made, say of a device that is there for smooth DC."""

from __future__ import annotations

from collections.abc import Sequence

from checkers.domain.device.readings import HALF_WAVES, Reading, Test, Waveform
from checkers.domain.quantities.measured_value import SHOWS_NOTHING
from checkers.domain.verdicts import Finding, Judges, Outcome
from checkers.judgement.case import Case
from checkers.judgement.readings.verdict import Judged

ABOUT = "sensing of smooth DC"
REPLACE = "Take it out of service, and fit one that senses smooth DC; test the new one with it."
SHAPES = {"half wave": HALF_WAVES, "smooth DC": frozenset({Waveform.SMOOTH_DC})}


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
        missing = [name for name in missing if name == "smooth DC"]
    if not missing:
        return ()
    shapes = " and ".join(missing)
    return (
        f"Not tested here: {shapes}. Nothing in these readings shows that {_what(case)} senses it.",
    )


def _is_there_for_dc(case: Case) -> bool:
    return case.device.senses_smooth_dc or case.device.detects_dc


def _gave_a_result(reading: Reading) -> bool:
    told = reading.measured.said not in SHOWS_NOTHING
    return told and reading.test not in (Test.BUTTON, Test.UNKNOWN)


def _what(case: Case) -> str:
    return "the detection" if case.device.detects_dc else f"this type {case.device.type}"


def _not_fit(failed: Finding, case: Case) -> Finding:
    what = _what(case)
    return Finding(
        about=ABOUT,
        outcome=Outcome.FAIL,
        says=f"A test with smooth DC failed: {what} is not fit where smooth DC can flow.",
        judges=Judges.FITNESS_FOR_DC,
        measured=failed.measured,
        measured_as=failed.measured_as,
        limit=failed.limit,
        do_next=REPLACE,
        sources=failed.sources,
    )
