"""What is said of a whole schedule: mapping, assumptions, questions, totals, what comes first."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from checkers.domain.codes.registry import CODES
from checkers.domain.device.readings import Test
from checkers.domain.quantities.quantity import format_number
from checkers.domain.verdicts import Figure, Finding, Judges, Outcome, StillToDo
from checkers.judgement.device.still_to_test import SO_FAR
from checkers.judgement.schedule.file.delimiters import NAMES
from checkers.judgement.schedule.file.layout import Column
from checkers.judgement.schedule.headings.meaning import NOT_USED
from checkers.judgement.schedule.rows.entry_reader import UNSAID, Rules
from checkers.judgement.schedule.rows.row import Row
from checkers.judgement.schedule.rows.schedule import Schedule
from checkers.judgement.schedule.rows.surveys import SURVEYS, Survey
from checkers.judgement.schedule.rows.totals import Totals

ABOUT = "the whole schedule"
NO_HEADINGS = "No row of headings was recognised, so no row was judged."
NO_READINGS = "No column of readings was recognised, so nothing was judged."
NAME_THE_COLUMNS = (
    "Say what the columns hold: a column's number or heading, and its meaning in words such as "
    "device, device type, trip time x1 0°, ramp (mA), button."
)
WHICH_MULTIPLE = "At which multiple of IΔn were these times taken?"
N_T = (
    "n/t was read as: not tested, and leaves its row open where the device may not have tripped. "
    "Say what it stands for: not tested, or no trip."
)
N_T_TAKEN = "n/t under a no-trip test or a test button was taken for: not tested."
WHAT_YES_MEANS = (
    "What do yes, OK or a tick say here: that the device held, or that it tripped? Until that is "
    "answered such cells are not judged. Answer by the column's meaning: “{held}” or “{tripped}”."
)
AC_TAKEN = "Columns whose headings name no waveform were taken for AC, with the strictest limits."


def answer_of(schedule: Schedule, rules: Rules) -> dict[str, Any]:
    """Return everything that is said of a schedule beside its findings, by name."""
    totals = schedule.totals
    return {
        "mapping": mapping_of(schedule),
        "delimiter": NAMES.get(schedule.intake.delimiter, schedule.intake.delimiter),
        "encoding": schedule.intake.encoding,
        "assumed": _assumed(schedule, rules),
        "questions": _questions(schedule, rules),
        "rows": {kind.value: count for kind, count in totals.rows.items()},
        "devices": devices_of(totals),
        **_rates(totals),
        "surveys": [_survey(survey) for survey in SURVEYS],
        "first": [_first(row) for row in schedule.worst.rows],
        "need_a_person": schedule.worst.count,
        "unread": [{"line": r.line, "reason": r.findings[0].says} for r in schedule.unread],
    }


def mapping_of(schedule: Schedule) -> list[dict[str, Any]]:
    """Return what each column was taken for; empty until the headings are known."""
    return [_column(column, schedule) for column in schedule.layout.columns]


def _column(column: Column, schedule: Schedule) -> dict[str, Any]:
    waits = _waits(column, schedule)
    return {
        "column": column.place + 1,
        "heading": column.heading,
        "means": str(column.meaning),
        "used": column.meaning.kind not in NOT_USED and column.meaning.is_sure,
        "asks": column.meaning.asks or waits,
        "answers": column.meaning.answers if waits else [],
    }


def _assumed(schedule: Schedule, rules: Rules) -> list[str]:
    columns = schedule.layout.columns
    said = []
    silent = [one for one in columns if one.meaning.is_reading and not one.meaning.waveform]
    if silent and rules.waveform == "ac":
        said.append(AC_TAKEN)
    if schedule.reader and schedule.reader.n_t_seen:
        said.append(N_T_TAKEN)
    if schedule.layout.of_kind("day"):
        order = "the month" if CODES[rules.code].month_first else "the day"
        said.append(f"A day such as 3/4/2026 was read with {order} first.")
    return said


def _questions(schedule: Schedule, rules: Rules) -> list[str]:
    columns = schedule.layout.columns
    asked = [f"{_place(one)}: {one.meaning.asks}" for one in columns if one.meaning.asks]
    asked += [f"{_place(one)}: {WHICH_MULTIPLE}" for one in columns if _lacks_a_multiple(one)]
    asked += [
        f"{_place(one)}: {one_asks}" for one in columns if (one_asks := _waits(one, schedule))
    ]
    if schedule.reader and schedule.reader.n_t_seen and rules.n_t == UNSAID:
        asked.append(N_T)
    return asked


def _waits(column: Column, schedule: Schedule) -> str:
    """Return what is asked of a column in which a word waits for an answer."""
    if schedule.reader is None or column.place not in schedule.reader.waiting:
        return ""
    held, tripped = schedule.reader.waiting[column.place].answers
    return WHAT_YES_MEANS.format(held=held, tripped=tripped)


def _place(column: Column) -> str:
    return f"Column {column.place + 1}, {column.heading}"


def _lacks_a_multiple(column: Column) -> bool:
    meaning = column.meaning
    is_time = meaning.is_reading and meaning.is_sure and meaning.test == Test.TRIP_TIME
    return is_time and not meaning.tells_level


def devices_of(totals: Totals) -> dict[str, int]:
    """Return how many devices came out how; which pass so far, and have no reading, also apart."""
    counts = {outcome.value: totals.devices[outcome] for outcome in Outcome}
    return counts | {SO_FAR: totals.so_far, "not tested": totals.not_tested}


def _rates(totals: Totals) -> dict[str, Any]:
    rate = totals.failure_rate
    if rate is None:
        return {}
    names = ("failure_rate", "failure_rate_at_least", "failure_rate_at_most")
    return {
        name: Figure(round(100 * value, 2), "%") for name, value in zip(names, rate, strict=True)
    }


def _survey(survey: Survey) -> dict[str, Any]:
    percent = Figure(round(100 * survey.failed, 2), "%")
    return {"says": survey.says, "failed": percent, "source": survey.source.words}


def _first(row: Row) -> dict[str, Any]:
    return {
        "line": row.line,
        "device": row.device,
        "outcome": row.outcome.value if row.outcome else "",
        "why": row.why,
        "do_next": row.do_next,
    }


def findings_on_the_whole(schedule: Schedule) -> list[Finding]:
    """Return what is found of the schedule itself: that it can be read, and what it comes to."""
    if not schedule.layout.columns:
        return [_on_the_whole(Outcome.CANNOT_SAY, NO_HEADINGS, NAME_THE_COLUMNS)]
    if not schedule.layout.has_readings:
        return [_on_the_whole(Outcome.CANNOT_SAY, NO_READINGS, NAME_THE_COLUMNS)]
    return [_on_the_whole(schedule.totals.outcome, sentence_of(schedule.totals))]


def sentence_of(totals: Totals) -> str:
    """Return what a schedule comes to, in words."""
    counts = devices_of(totals)
    counts["pass"] -= totals.so_far
    parts = [f"{count} {_IN_WORDS[name]}" for name, count in counts.items() if count]
    listed = ", ".join(parts) or "no device was found"
    unread = totals.rows_not_read
    return f"Devices: {listed}." + (f" Rows that could not be read: {unread}." if unread else "")


_IN_WORDS: Mapping[str, str] = {
    "pass": "pass",
    "fail": "fail",
    "borderline": "borderline",
    "cannot-say": "cannot be judged",
    SO_FAR: "pass so far, with tests still to do",
    "not tested": "of these not tested",
}


def still_to_do(totals: Totals) -> list[StillToDo]:
    """Return the tests that are still to do, each with the number of devices in its words."""
    return [
        replace(one, words=f"{one.words} for {count} {'device' if count == 1 else 'devices'}")
        for one, count in totals.still_to_do.items()
        if count > 0
    ]


def rate_sentence(totals: Totals) -> str:
    """Return the rate of failures with its interval, in words; empty where none was judged."""
    rate = totals.failure_rate
    if rate is None:
        return ""
    share, low, high = (format_number(100 * value, 3) for value in rate)
    failed = totals.devices[Outcome.FAIL]
    return (
        f"{failed} of {totals.judged} judged devices fail: {share} % "
        f"(95 % interval {low} to {high} %)."
    )


def _on_the_whole(outcome: Outcome, says: str, do_next: str = "") -> Finding:
    return Finding(ABOUT, outcome, says, Judges.DEVICE_STANDARD, do_next=do_next)
