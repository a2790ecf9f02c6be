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
from checkers.wording.book import part
from checkers.wording.finding import finding

NOT_TESTED = "not tested"
COUNTS: Mapping[str, str] = {
    Outcome.PASS.value: "schedule.count-pass",
    Outcome.FAIL.value: "schedule.count-fail",
    Outcome.BORDERLINE.value: "schedule.count-borderline",
    Outcome.CANNOT_SAY.value: "schedule.count-cannot-say",
    SO_FAR: "schedule.count-so-far",
    NOT_TESTED: "schedule.count-not-tested",
}


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
        said.append(part("schedule.ac-taken"))
    if schedule.reader and schedule.reader.n_t_seen:
        said.append(part("schedule.n-t-taken"))
    if schedule.layout.of_kind("day"):
        month_first = CODES[rules.code].month_first
        said.append(part("schedule.month-first" if month_first else "schedule.day-first"))
    return said


def _questions(schedule: Schedule, rules: Rules) -> list[str]:
    columns = schedule.layout.columns
    which_multiple = part("schedule.asks-multiple")
    asked = [_asked_of(one, one.meaning.asks) for one in columns if one.meaning.asks]
    asked += [_asked_of(one, which_multiple) for one in columns if _lacks_a_multiple(one)]
    asked += [_asked_of(one, waits) for one in columns if (waits := _waits(one, schedule))]
    if schedule.reader and schedule.reader.n_t_seen and rules.n_t == UNSAID:
        asked.append(part("schedule.asks-n-t"))
    return asked


def _waits(column: Column, schedule: Schedule) -> str:
    """Return what is asked of a column in which a word waits for an answer."""
    if schedule.reader is None or column.place not in schedule.reader.waiting:
        return ""
    held, tripped = schedule.reader.waiting[column.place].answers
    return part("schedule.asks-yes", held=held, tripped=tripped)


def _asked_of(column: Column, asks: str) -> str:
    facts = {"column": column.place + 1, "heading": column.heading}
    return part("schedule.column-asks", asks=asks, **facts)


def _lacks_a_multiple(column: Column) -> bool:
    meaning = column.meaning
    is_time = meaning.is_reading and meaning.is_sure and meaning.test == Test.TRIP_TIME
    return is_time and not meaning.tells_level


def devices_of(totals: Totals) -> dict[str, int]:
    """Return how many devices came out how; which pass so far, and have no reading, also apart."""
    counts = {outcome.value: totals.devices[outcome] for outcome in Outcome}
    return counts | {SO_FAR: totals.so_far, NOT_TESTED: totals.not_tested}


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
        return [_on_the_whole("no-headings", Outcome.CANNOT_SAY)]
    if not schedule.layout.has_readings:
        return [_on_the_whole("no-readings-column", Outcome.CANNOT_SAY)]
    return [_devices_counted(schedule.totals)]


def sentence_of(totals: Totals) -> str:
    """Return what a schedule comes to, in words."""
    return _devices_counted(totals).says


def _devices_counted(totals: Totals) -> Finding:
    counts = devices_of(totals)
    counts["pass"] -= totals.so_far
    parts = [part(COUNTS[name], count=count) for name, count in counts.items() if count]
    listed, unread = ", ".join(parts) or part("schedule.no-device"), totals.rows_not_read
    code = "devices-counted-rows-unread" if unread else "devices-counted"
    return _on_the_whole(code, totals.outcome, listed=listed, unread=unread)


def still_to_do(totals: Totals) -> list[StillToDo]:
    """Return the tests that are still to do, each with the number of devices in its words."""
    return [
        replace(one, words=_for_devices(one.words, count))
        for one, count in totals.still_to_do.items()
        if count > 0
    ]


def _for_devices(test: str, count: int) -> str:
    code = "to-do-for-one" if count == 1 else "to-do-for-several"
    return part(f"schedule.{code}", test=test, count=count)


def rate_sentence(totals: Totals) -> str:
    """Return the rate of failures with its interval, in words; empty where none was judged."""
    rate = totals.failure_rate
    if rate is None:
        return ""
    share, low, high = (format_number(100 * value, 3) for value in rate)
    counts = {"failed": totals.devices[Outcome.FAIL], "judged": totals.judged}
    return part("schedule.failure-rate", share=share, low=low, high=high, **counts)


def _on_the_whole(code: str, outcome: Outcome, **facts: object) -> Finding:
    return finding(f"schedule.{code}", outcome, Judges.DEVICE_STANDARD, facts)
