"""A whole schedule gives each device the verdict that its readings alone would have."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checkers import run
from checkers.catalogue.schedule import Inputs, schedule_for
from checkers.domain.inputs.parsing import parse_inputs
from checkers.judgement.schedule.output.table import TableOutput
from checkers.judgement.schedule.rows.entry import RowKind
from checkers.judgement.schedule.rows.row import Row

ASKED = {"code": "gb", "on": "2026-11-24"}
COLUMNS = ["Device", "RCD type", "IΔn (mA)", "½ (ms)", "x1 0° (ms)", "x5 180° (ms)", "Ramp (mA)"]
VALUES = st.tuples(
    st.sampled_from(["AC", "A", "F", "B"]),
    st.sampled_from(["30", "100", "300"]),
    st.sampled_from([">1999", "28", "test not completed", ""]),
    st.sampled_from(["28.5", "301.0", "412.0", ">300", "no trip", "aborted"]),
    st.sampled_from(["18.3", "41.0", "58.0", ">40", ""]),
    st.sampled_from(["22.4", "33.0", "47.5", "14.0", "75.0", ""]),
)
TABLES = st.lists(VALUES, min_size=1, max_size=4)
Table = list[tuple[str, ...]]


def rows_of(*pieces: str | bytes, **request: Any) -> list[Row]:
    """Return the rows of a schedule that comes in pieces."""
    schedule = schedule_for(parse_inputs(Inputs, {**ASKED, **request}))
    return [*(row for piece in pieces for row in schedule.feed(piece)), *schedule.finish()]


def as_file(table: Table, delimiter: str = ",", columns: list[str] | None = None) -> str:
    """Return a schedule with a label on each row."""
    lines = [delimiter.join(columns or COLUMNS)]
    lines += [delimiter.join([f"RCD {n}", *row]) for n, row in enumerate(table, 1)]
    return "\n".join(lines) + "\n"


def verdicts(rows: list[Row]) -> list[tuple[str, str]]:
    """Return kind and outcome of every row."""
    return [(row.kind.value, row.outcome.value if row.outcome else "") for row in rows]


@given(TABLES)
@settings(deadline=None, max_examples=30)
def test_a_row_has_the_verdict_of_its_readings_alone(table: Table) -> None:
    """The readings checker, asked about one device, says the same."""
    for row, written in zip(rows_of(as_file(table))[1:], table, strict=True):
        kind, rated, half, once, five, ramp = written
        levels = [("no-trip", "1/2", "", half), ("trip-time", "1", "0", once)]
        levels.append(("trip-time", "5", "180", five))
        readings = [
            {"test": test, "multiple": multiple, "phase": phase, "waveform": "ac", "value": value}
            for test, multiple, phase, value in levels
            if value
        ]
        readings += [{"test": "ramp", "waveform": "ac", "value": ramp}] if ramp else []
        device = {"type": kind, "rated_residual_current": rated}
        reply = run("readings", {**ASKED, "device": device, "readings": readings})

        assert reply["outcome"] == row.outcome


@given(TABLES, st.sampled_from([",", ";", "\t", "|"]))
@settings(deadline=None, max_examples=20)
def test_the_delimiter_never_changes_a_verdict(table: Table, delimiter: str) -> None:
    """Comma, semicolon, tab and bar are found out."""
    assert verdicts(rows_of(as_file(table))) == verdicts(rows_of(as_file(table, delimiter)))


@given(TABLES, st.sampled_from(["utf-8", "utf-8-sig", "utf-16", "utf-16-be", "cp1252"]))
@settings(deadline=None, max_examples=20)
def test_the_encoding_never_changes_a_verdict(table: Table, encoding: str) -> None:
    """Nor whether the file comes as text or as bytes; Windows has no Δ, and writes IΔn as Idn."""
    text = as_file(table)
    raw = (text.replace("IΔn", "Idn") if encoding == "cp1252" else text).encode(encoding)

    assert verdicts(rows_of(text)) == verdicts(rows_of(raw))


@given(TABLES, st.sampled_from(["\n", "\r\n", "\r"]), st.integers(1, 300))
@settings(deadline=None, max_examples=20)
def test_line_ends_and_pieces_never_change_a_verdict(table: Table, end: str, size: int) -> None:
    """A file may arrive in pieces cut anywhere."""
    raw = as_file(table).replace("\n", end).encode()
    pieces = [raw[start : start + size] for start in range(0, len(raw), size)]

    assert verdicts(rows_of(as_file(table))) == verdicts(rows_of(*pieces))


@given(TABLES, st.permutations(range(1, 7)))
@settings(deadline=None, max_examples=20)
def test_the_order_of_the_columns_never_changes_a_verdict(table: Table, order: list[int]) -> None:
    """Readings may stand in any order."""
    columns = [COLUMNS[0], *(COLUMNS[place] for place in order)]
    turned = [tuple(row[place - 1] for place in order) for row in table]

    assert verdicts(rows_of(as_file(table))) == verdicts(rows_of(as_file(turned, columns=columns)))


@given(TABLES, st.sampled_from([" ms", "ms", " mSec", " MS"]))
@settings(deadline=None, max_examples=20)
def test_units_in_the_cell_never_change_a_verdict(table: Table, unit: str) -> None:
    """A unit may stand in heading and cell at once."""
    with_units = [
        tuple(
            cell + unit if place in (2, 3, 4) and cell[-1:].isdigit() else cell
            for place, cell in enumerate(row)
        )
        for row in table
    ]

    assert verdicts(rows_of(as_file(table))) == verdicts(rows_of(as_file(with_units)))


@given(TABLES)
@settings(deadline=None, max_examples=20)
def test_decimal_commas_never_change_a_verdict(table: Table) -> None:
    """Between semicolons, 28,5 is 28.5."""
    comma = [tuple(cell.replace(".", ",") for cell in row) for row in table]

    assert verdicts(rows_of(as_file(table, ";"))) == verdicts(rows_of(as_file(comma, ";")))


@given(st.binary(max_size=400))
@settings(deadline=None, max_examples=60)
def test_no_file_is_an_error_or_a_pass(raw: bytes) -> None:
    """Any bytes at all end in rows, none of which passes."""
    assert all(row.outcome != "pass" for row in rows_of(raw))


@given(st.lists(st.text(st.characters(exclude_categories=["Cs"]), max_size=20), max_size=12))
@settings(deadline=None, max_examples=60)
def test_every_line_of_a_file_comes_out(cells: list[str]) -> None:
    """Whatever stands under sound headings, there is a row for each record, in order."""
    lines = ["Device,IΔn (mA),x1 (ms)", *(cell.replace('"', "") for cell in cells)]
    rows = rows_of("\n".join(lines) + "\n")
    numbers = [row.line for row in rows]

    assert len(rows) >= len(lines)
    assert numbers == sorted(set(numbers))


DAMAGED = {
    "cells": "RCD 1,30," + "," * 50_000,
    "NUL": "RCD 1,30,2\x008",
    "never closed": 'RCD 1,"30,28',
    "characters long": "RCD 1,30," + "9" * 10_000_000,
    "headings": "RCD 1,30,28,5,4",
}


@pytest.mark.parametrize("words", DAMAGED)
def test_a_damaged_row_is_named_and_the_others_are_judged(words: str) -> None:
    """It is no pass, its line and reason are told, and the rows around it have their verdict."""
    text = f"Device,IΔn (mA),x1 (ms)\nRCD 0,30,28\n{DAMAGED[words]}\nRCD 2,30,410\n"
    reply = run("schedule", {**ASKED, "text": text})

    assert [one["line"] for one in reply["answer"]["unread"]] == [3]
    assert words in reply["answer"]["unread"][0]["reason"]
    assert reply["answer"]["devices"]["pass"] == 1
    assert reply["answer"]["devices"]["fail"] == 1
    assert verdicts(rows_of(text))[1:] == [
        ("device", "pass"),
        ("not read", "cannot-say"),
        ("device", "fail"),
    ]


def test_rows_that_cannot_be_read_keep_the_whole_from_passing() -> None:
    """Every device that could be read passes, and still nobody knows of the other row."""
    reply = run("schedule", {**ASKED, "text": 'Device,IΔn,x1\nA1,30 mA,28\nA2,"30 mA,28\n'})

    assert reply["outcome"] == "cannot-say"


@pytest.mark.parametrize("text", ["a,b\n1,2\n", "Device,Type\nRCD 1,A\n", "28\n30\n"])
def test_a_file_without_readings_is_no_pass(text: str) -> None:
    """The finding says what to do about it."""
    reply = run("schedule", {**ASKED, "text": text})

    assert reply["outcome"] == "cannot-say"
    assert "Say what the columns hold" in reply["findings"][0]["do_next"]


def test_a_file_without_headings_is_judged_by_a_mapping() -> None:
    """Columns are then named by their numbers."""
    columns = {"1": "device", "2": "rated residual current (mA)", "3": "trip-time x1 (ms)"}
    mapping = [{"column": column, "means": means} for column, means in columns.items()]
    reply = run("schedule", {**ASKED, "text": "A1,30,28\nA2,30,410\n", "mapping": mapping})

    assert reply["answer"]["devices"]["pass"] == 1
    assert reply["answer"]["devices"]["fail"] == 1


@pytest.mark.parametrize(
    ("request_part", "field"),
    [
        ({"text": " \n "}, "text"),
        ({"mapping": [{"column": "9x", "means": "device"}]}, "mapping"),
        ({"mapping": [{"column": "1", "means": "sideways"}]}, "mapping"),
        ({"mapping": [{"column": "1"}]}, "mapping[0].means"),
        ({"delimiter": "both"}, "delimiter"),
    ],
)
def test_a_bad_request_names_its_field(request_part: dict[str, Any], field: str) -> None:
    """Nothing is judged, and the message stands at the field."""
    request = {**ASKED, "text": "Device,IΔn,x1\nA1,30 mA,28\n", **request_part}

    assert field in run("schedule", request)["errors"]


def test_leading_cells_that_are_empty_stay_in_their_columns() -> None:
    """The text is taken as it stands, leading tabs and line ends included."""
    reply = run("schedule", {**ASKED, "text": "\n\tIΔn\tx1\nA1\t30 mA\t28\n"})

    assert reply["outcome"] == "pass"
    assert reply["findings"][1]["device"] == "line 3"


def test_what_holds_for_every_device_fills_what_a_row_leaves_open() -> None:
    """A row's own word comes first."""
    text = "Device,IΔn,x1\nA1,,410\nA2,300 mA,410\n"
    device = {"type": "A", "rated_residual_current": "100 mA", "delay": "S"}
    rows = rows_of(text, device=device)

    assert [row.outcome for row in rows[1:]] == ["pass", "pass"]
    assert "130 ms to 500 ms" in rows[1].why
    assert rows_of(text)[1].outcome == "cannot-say"


def test_the_rows_that_need_a_person_come_worst_first() -> None:
    """No trip before too late, too late before too early, failures before what cannot be said."""
    text = (
        "Device,IΔn,x1,Ramp,½\nA1,30 mA,test not completed,,\nA2,30 mA,28,,28\nA3,30 mA,410,,\n"
        "A4,30 mA,no trip,,\nA5,30 mA,302,,\nA6,30 mA,28,,\nA7,30 mA,900,,\nA8,30 mA,,,\n"
    )
    first = run("schedule", {**ASKED, "text": text})["answer"]["first"]

    assert [one["device"] for one in first] == ["A4", "A7", "A3", "A2", "A5", "A8", "A1"]


def test_a_further_reading_of_a_device_can_only_make_it_worse() -> None:
    """It is counted once, with the worst that was read of it."""
    text = "Device,IΔn,x1\nA1,30 mA,28\nA2,30 mA,28\nA1,30 mA,410\nA2,30 mA,31\n"
    devices = run("schedule", {**ASKED, "text": text})["answer"]["devices"]

    assert devices["fail"] == 1
    assert devices["pass"] == 1


def test_a_device_listed_first_and_tested_further_down_is_tested() -> None:
    """The row without a reading is answered by the later one."""
    text = "Device,IΔn,x1\nA1,30 mA,\nA2,30 mA,28\nA1,,28\n"
    reply = run("schedule", {**ASKED, "text": text})

    assert reply["answer"]["devices"]["not tested"] == 0
    assert reply["answer"]["devices"]["pass"] == 2


def test_the_same_label_with_another_rating_is_not_taken_for_tested() -> None:
    """It may be another device, so its own readings are asked for."""
    text = "Device,IΔn,x1\nA1,30 mA,28\nA2,30 mA,28\nA1,100 mA,\n"

    assert rows_of(text)[3].outcome == "cannot-say"


@pytest.mark.parametrize("device", ["RCBO A", "Maker X200 RCBO", "RCBO B32 type A", "30", "RCD"])
def test_rows_with_the_same_description_are_different_devices(device: str) -> None:
    """A row without a reading is not taken for tested because another has the same product."""
    text = f"Circuit,RCD,IΔn,x1\n1,{device},30 mA,28\n2,{device},30 mA,410\n3,{device},30 mA,\n"

    assert verdicts(rows_of(text))[1:] == [
        ("device", "pass"),
        ("device", "fail"),
        ("not tested", "cannot-say"),
    ]


def test_neighbouring_rows_with_other_values_for_one_test_are_judged_apart() -> None:
    """One of them fails, and it is told which."""
    text = "Device,IΔn,x1\nA1,30 mA,28\nA1,30 mA,410\n"

    assert verdicts(rows_of(text))[1:] == [("device", "pass"), ("same device", "fail")]


def test_readings_on_another_day_are_another_visit() -> None:
    """Rows of one device with different days are not mixed."""
    text = "Device,IΔn,x1,Date\nA1,30 mA,28,2023-05-01\nA1,30 mA,410,2024-05-01\n"

    assert verdicts(rows_of(text))[1:] == [("device", "pass"), ("device", "fail")]


def test_no_trace_of_earlier_rows_is_kept_beyond_bounds() -> None:
    """What a schedule remembers does not grow with the file."""
    schedule = schedule_for(parse_inputs(Inputs, ASKED))
    rows = 0
    for number in range(3000):
        piece = f"A{number},30 mA,410\n" if number else "Device,IΔn,x1\n"
        rows += sum(row.kind is RowKind.DEVICE for row in schedule.feed(piece))
    rows += sum(row.kind is RowKind.DEVICE for row in schedule.finish())

    assert rows == 2999
    assert len(schedule.worst.rows) == 200
    assert len(schedule._memory._known) == 2000


@pytest.mark.parametrize("part", ["-", "1 ", "x1 ", "\t", " ", "'", "_", "=", "x", "(", "1/", "Δ"])
def test_no_cell_takes_long(part: str) -> None:
    """A cell of one thing over and over is named as too long, in every kind of column."""
    cell = part * (30_000 // len(part))
    text = f'Circuit,RCD,RCD type,IΔn,x1,Result,Notes\n1,"{cell}",A,30 mA,28,,\n'
    text += "".join(f'2,RCBO{"," * place}"{cell}"{"," * (5 - place)}\n' for place in range(1, 6))
    output = TableOutput(",")

    for row in rows_of(text):
        assert output.row(row)
        assert row.outcome != "pass" or row.line == 2


def test_a_reading_too_long_to_be_understood_is_named() -> None:
    """What cannot be understood is no reason to pass by what can."""
    rows = rows_of(f"Device,IΔn,x1,x5\nA1,30 mA,28,{'9' * 400}\n")

    assert rows[1].outcome == "cannot-say"
    assert "too long to be understood" in rows[1].why


@pytest.mark.parametrize("heading", ["No trip x1 (ms)", "No trip 30 mA (ms)"])
@pytest.mark.parametrize("cell", [">1999", "no trip"])
def test_holding_at_the_rating_fails_under_any_heading(heading: str, cell: str) -> None:
    """30 mA must trip a 30 mA device (IEC 61008-1), whatever the column is called."""
    columns = ["Device", "RCD type", "IΔn (mA)", heading, "x5 (ms)"]
    _, *found = rows_of(as_file([("A", "30", cell, "20")], columns=columns))

    assert [row.outcome for row in found] == ["fail"]


LEFT_OPEN = (
    "RCD no.,RCD type,IΔn,x1 (ms),x5 (ms),button\n"
    "RCD 1,A,30 mA,26,14,ok\nRCD 2,A,30 mA,,14,ok\nRCD 3,A,30 mA,26,14,\n"
    "RCD 4,A,30 mA,,14,\n"
)


def test_devices_that_pass_so_far_are_counted_apart() -> None:
    """BS 7671:2018+A2:2022, 643.8 and 643.10: once the rating, and the button."""
    reply = run("schedule", {**ASKED, "text": LEFT_OPEN})

    assert reply["outcome"] == "pass"
    assert reply["answer"]["devices"]["pass"] == 4
    assert reply["answer"]["devices"]["pass so far"] == 3
    assert reply["findings"][0]["says"] == (
        "Devices: 1 pass, 3 pass so far, with tests still to do."
    )
    assert [one["words"] for one in reply["still_to_do"]] == [
        "×1 trip time on AC (BS 7671) for 2 devices",
        "test button (BS 7671) for 2 devices",
    ]


def test_a_further_row_of_a_device_does_what_an_earlier_one_left() -> None:
    """Of RCD 2 the time stands on one row, the ramp and the button on a later one."""
    text = (
        "RCD no.,RCD type,IΔn,x1 (ms),ramp (mA),button\nRCD 2,A,30 mA,26,,\n"
        "RCD 3,A,30 mA,28,,ok\nRCD 2,A,30 mA,,22,ok\nRCD 3,A,30 mA,,,\n"
    )
    reply = run("schedule", {**ASKED, "text": text})

    assert [len(row.still_to_do) for row in rows_of(text)[1:]] == [1, 0, 0, 0]
    assert (reply["answer"]["devices"]["pass"], reply["answer"]["devices"]["pass so far"]) == (2, 0)
    assert reply["still_to_do"] == []


@given(TABLES)
@settings(max_examples=40, deadline=None)
def test_no_form_of_output_writes_a_bare_pass_for_a_device_with_something_to_do(
    table: Table,
) -> None:
    """Under the same code each row leaves to do what its readings alone leave."""
    for row in rows_of(as_file(table)):
        if row.outcome == "pass" and row.still_to_do:
            written = TableOutput(",").row(row)
            assert ",pass," not in written
            assert all(one.words in written for one in row.still_to_do)
