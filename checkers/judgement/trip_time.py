"""Trip times against the device standard and the installation rule."""

from __future__ import annotations

import dataclasses

from checkers.domain.devices import Form
from checkers.domain.judging import JUDGING
from checkers.domain.measured import Measured, Said
from checkers.domain.quantities import format_quantity
from checkers.domain.readings import HALF_WAVES, Reading, Waveform
from checkers.domain.verdicts import Finding, Judges, Outcome
from checkers.judgement.against_limits import Rule, compare_with, finding_for
from checkers.judgement.case import Case
from checkers.judgement.comparison import Limits
from checkers.judgement.current_bands import operating_band
from checkers.judgement.installation_tests import installation_limits
from checkers.judgement.judged import Judged, undecided
from checkers.judgement.multiple_missing import multiple_missing
from checkers.judgement.no_trip import judge_no_trip
from checkers.judgement.reading_words import citations, name_of
from checkers.judgement.test_level import Level, level_of
from checkers.judgement.time_limits import TimeLimit, product_time_limit

FOREIGN: dict[str, str] = {
    Waveform.AC: "AC",
    Waveform.SMOOTH_DC: "smooth DC",
    **dict.fromkeys(HALF_WAVES, "half-wave current"),
}
NEVER_TRIPPED = 3_600_000.0
AFTER_A_FAILURE = (
    "Take the loads off and repeat; if it still fails, do not leave the device in service."
)


def judge_trip_time(reading: Reading, case: Case) -> list[Judged]:
    """Judge one trip time; returns a finding for each rule that speaks of it."""
    level = level_of(reading, case)
    return multiple_missing(reading, case) if level is None else _judge_at(reading, case, level)


def _judge_at(reading: Reading, case: Case, level: Level) -> list[Judged]:
    limit = product_time_limit(case, reading.waveform, level.current)
    if limit.at_most is None:
        return _without_a_limit(reading, case, level)
    if reading.measured.said is Said.TRIPPED:
        return undecided(
            reading, "It tripped, but the time is not given.", "Write down the time in ms."
        )
    judged = [_judged(reading, case, _rule(limit, case, Judges.DEVICE_STANDARD))]
    judged += _judged_by_code(reading, case, level)
    return [_not_proven(one, reading, case, limit) for one in judged]


def _judged_by_code(reading: Reading, case: Case, level: Level) -> list[Judged]:
    """Judge a time by the code; where its limit depends on a kind not said, all must agree."""
    found = [_judged(reading, case, rule) for rule in installation_limits(reading, case, level)]
    if len({one.finding.outcome for one in found}) <= 1:
        return found[:1]
    limits = " or ".join(dict.fromkeys(one.finding.limit for one in found))
    says = f"The limit is {limits}, by a kind of device (such as type I) that is not known."
    changed = _changed(found[0].finding, says, "Read on the device which kind it is.")
    return [Judged(dataclasses.replace(changed, limit=limits, margin=None, numbers=None))]


def _rule(limit: TimeLimit, case: Case, judges: Judges) -> Rule:
    return Rule(
        limits=Limits(limit.at_least, limit.at_most),
        judges=judges,
        sources=citations(*limit.rows),
        unit="ms",
        uncertainty_at_most=case.time_uncertainty(limit.at_most or 0.0),
        uncertainty_at_least=case.time_uncertainty(limit.at_least or 0.0),
    )


def _judged(reading: Reading, case: Case, rule: Rule) -> Judged:
    measured = reading.measured
    if measured.said is Said.NO_TRIP:
        measured = Measured(Said.MORE_THAN, NEVER_TRIPPED, "ms")
    compared = compare_with(rule, measured, JUDGING.confidence)
    finding = finding_for(reading, rule, compared, do_next=_next_step(compared.outcome))
    return _doubted(Judged(finding, compared.outcome is Outcome.PASS), case)


def _next_step(outcome: Outcome) -> str:
    return {
        Outcome.FAIL: AFTER_A_FAILURE,
        Outcome.BORDERLINE: "Repeat with the loads off, and with a more exact instrument.",
        Outcome.CANNOT_SAY: "Set a longer test, so that the timer reaches the limit.",
    }.get(outcome, "")


def _doubted(judged: Judged, case: Case) -> Judged:
    """Turn a pass that standing leakage may have helped into a question."""
    leakage = case.leakage_that_matters()
    finding = judged.finding
    if leakage is None or finding.outcome is not Outcome.PASS:
        return judged
    says = (
        f"{finding.measured} is inside {finding.limit}, but the standing leakage of "
        f"{format_quantity(leakage, 'mA')} may have helped the test current."
    )
    return Judged(_changed(finding, says, "Take the loads off and repeat."))


def _not_proven(judged: Judged, reading: Reading, case: Case, limit: TimeLimit) -> Judged:
    """Leave open a time over the limit where the maker may prove it at a larger current."""
    finding = judged.finding
    if not limit.option_decides or finding.outcome not in (Outcome.FAIL, Outcome.BORDERLINE):
        return judged
    at = "350 mA" if reading.waveform in HALF_WAVES else "250 mA"
    if case.device.quarter_ampere:
        says = f"{finding.measured} here proves nothing: this device's 40 ms are declared at {at}."
        return Judged(_changed(finding, says, f"Repeat at {at}; the limit at ×1 still binds."))
    hint = f"{finding.do_next} If its maker declares the 40 ms at {at}, repeat at {at}."
    return Judged(_changed(finding, finding.says, hint, finding.outcome))


def _changed(
    finding: Finding, says: str, do_next: str, outcome: Outcome = Outcome.CANNOT_SAY
) -> Finding:
    return dataclasses.replace(finding, outcome=outcome, says=says, do_next=do_next)


def _without_a_limit(reading: Reading, case: Case, level: Level) -> list[Judged]:
    """Judge a time at a current for which no greatest time is set."""
    band = operating_band(case, reading.waveform)
    if band is None:
        return _foreign_waveform(reading, case)
    if band.at_least is not None and level.current <= band.at_least:
        return judge_no_trip(reading, case)
    if band.at_most is None or level.current >= band.at_most:
        return undecided(
            reading,
            "No time is known for a device of this rating, delay and form at this current.",
            "Read rating and delay on the device again; its maker states its times: compare there.",
        )
    says = (
        f"At {format_quantity(level.current, 'mA')} the standard lets the device trip or hold; "
        "either is in order, and nothing more is shown."
    )
    return [
        Judged(
            Finding(
                about=name_of(reading),
                outcome=Outcome.PASS,
                says=says,
                judges=Judges.DEVICE_STANDARD,
                measured=str(reading.measured),
                sources=citations(band.row),
            )
        )
    ]


def _foreign_waveform(reading: Reading, case: Case) -> list[Judged]:
    """Judge a time on a waveform that the device's type need not respond to."""
    shape = FOREIGN[reading.waveform]
    held = reading.measured.said in (Said.MORE_THAN, Said.NO_TRIP)
    if (
        case.device.type == "unknown"
        or case.device.form == Form.RDC_DD
        or held
        or reading.measured.said is Said.TRIPPED
    ):
        return undecided(
            reading,
            f"No limit on {shape} is known for this device, so this shows nothing of it.",
            "Read type and form on the device, and test with a current it must respond to; "
            "if another can occur here, it is not fit for it.",
        )
    says = (
        f"Type {case.device.type} has no limit on {shape}: that it tripped adds nothing, "
        "and does not make it another type."
    )
    finding = Finding(
        about=name_of(reading),
        outcome=Outcome.PASS,
        says=says,
        judges=Judges.DEVICE_STANDARD,
        measured=str(reading.measured),
    )
    return [Judged(finding)]
