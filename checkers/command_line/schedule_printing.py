"""A schedule's rows and summary as text that a person reads in eighty columns."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from checkers.command_line.printing import HEADLINES, headline, wrap
from checkers.judgement.device.still_to_test import SO_FAR
from checkers.judgement.schedule.rows.row import Row
from checkers.judgement.schedule.rows.schedule import Schedule
from checkers.judgement.schedule.rows.summary import mapping_of, rate_sentence, sentence_of

MOST_LISTED = 20


def row_as_text(row: Row) -> str:
    """Return one row with its verdict, its reasons beneath where there is something to do."""
    outcome = HEADLINES[row.outcome.value] if row.outcome else ""
    if row.passes_so_far:
        head = f"line {row.line}  {SO_FAR.upper()}  {row.device}"
        return "\n".join([*wrap(head), *wrap(row.do_next, "    ")])
    head = f"line {row.line}  {outcome.ljust(10)}  {row.device}".rstrip()
    if row.outcome == "pass":
        return head
    return "\n".join([*wrap(head), *wrap(row.why, "    "), *wrap(row.do_next, "    ")])


def mapping_as_text(schedule: Schedule) -> str:
    """Return what each column was taken for."""
    lines = ["The columns were taken for:"]
    for one in mapping_of(schedule):
        means = one["means"] if one["used"] else f"not used ({one['asks'] or one['means']})"
        lines += wrap(f"{one['column']}  {one['heading'] or '(no heading)'}: {means}", "  ")
    return _lines(lines)


def summary_as_text(reply: Mapping[str, Any], schedule: Schedule) -> str:
    """Return what a schedule comes to: totals, mapping, what comes first, cautions."""
    return _lines(_summary(reply, schedule))


def _summary(reply: Mapping[str, Any], schedule: Schedule) -> Iterator[str]:
    answer, totals = reply["answer"], schedule.totals
    where = f"{reply['edition'] or reply['code']}, on {reply['on']}"
    yield from ("", *wrap(f"{headline(reply)}   ({where})"), "")
    yield from wrap(f"{sentence_of(totals)} {rate_sentence(totals)}")
    whole = reply["findings"][0]
    if whole.get("do_next"):
        yield from (*wrap(whole["says"]), *wrap(whole["do_next"]))
    yield ""
    yield from mapping_as_text(schedule).splitlines()
    yield from _section("Still to do", (one["words"] for one in reply["still_to_do"]))
    yield from _section("Taken for granted", answer["assumed"])
    yield from _section("Asked back", answer["questions"])
    yield from _section("These rows first", map(_first, answer["first"][:MOST_LISTED]))
    yield from _more(answer["need_a_person"] - MOST_LISTED)
    yield from _section("Rows that could not be read", map(_unread, answer["unread"][:MOST_LISTED]))
    yield from _more(totals.rows_not_read - MOST_LISTED)
    yield from _section(
        "Published surveys, to set the rate beside", map(_survey, answer["surveys"])
    )
    yield from _section("Cautions", reply["cautions"])
    yield from ("", *wrap(reply["local_note"]))


def _section(title: str, sentences: Iterable[str]) -> Iterator[str]:
    lines = [line for one in sentences for line in wrap(f"- {one}", hang="  ")]
    if lines:
        yield from ("", title, *lines)


def _more(count: int) -> Iterator[str]:
    if count > 0:
        yield f"- and {count} more"


def _first(row: Mapping[str, Any]) -> str:
    return f"line {row['line']} {row['device']}: {HEADLINES[row['outcome']]}. {row['why']}"


def _unread(row: Mapping[str, Any]) -> str:
    return f"line {row['line']}: {row['reason']}"


def _survey(survey: Mapping[str, Any]) -> str:
    return f"{survey['failed']['value']} %: {survey['says']}. {survey['source']}."


def _lines(lines: Iterable[str]) -> str:
    return "\n".join(lines) + "\n"
