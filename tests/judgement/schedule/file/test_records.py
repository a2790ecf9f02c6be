"""Rows of cells come out whole, whatever stands in the cells."""

from __future__ import annotations

import csv
import io

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from checkers.judgement.schedule.file.lines import LONGEST, Line, Lines
from checkers.judgement.schedule.file.records import MOST_CELLS, Record, Records
from checkers.wording.book import part

CELL = st.text(st.characters(exclude_characters="\0\r", exclude_categories=["Cs"]), max_size=12)


def records_of(text: str, delimiter: str = ",") -> list[Record]:
    """Return the records of a text."""
    lines, reader = Lines(), Records(delimiter)
    found = [record for line in lines.feed(text) for record in reader.feed(line)]
    found += [record for line in lines.finish() for record in reader.feed(line)]
    return [*found, *reader.finish()]


@given(
    rows=st.lists(st.lists(CELL, min_size=1, max_size=4), min_size=1, max_size=5),
    delimiter=st.sampled_from([",", ";", "\t", "|"]),
)
@settings(deadline=None)
@example(rows=[['"', '""', 'a"b', '"a', "\n", " x "]], delimiter=",")
def test_what_the_standard_library_writes_is_read_back(
    rows: list[list[str]], delimiter: str
) -> None:
    """Every cell of a file written by Python's own csv module (RFC 4180) comes back."""
    file = io.StringIO()
    csv.writer(file, delimiter=delimiter, quoting=csv.QUOTE_ALL, lineterminator="\r\n").writerows(
        rows
    )

    assert rows == [list(record.cells) for record in records_of(file.getvalue(), delimiter)]


@given(st.text(max_size=60), st.integers(1, 7))
@settings(deadline=None)
def test_the_pieces_of_a_file_do_not_matter(text: str, size: int) -> None:
    """Lines are the same whether a text comes at once or in small pieces."""
    whole, pieces = Lines(), Lines()
    expected = [*whole.feed(text), *whole.finish()]
    found = [
        line
        for start in range(0, len(text), size)
        for line in pieces.feed(text[start : start + size])
    ]

    assert expected == [*found, *pieces.finish()]


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_any_end_of_line_is_known(end: str) -> None:
    """CR LF, LF and CR give the same lines, with the same numbers."""
    assert [record.line for record in records_of(f"a{end}b{end}{end}c")] == [1, 2, 3, 4]


def test_a_quoted_cell_may_hold_delimiters_and_line_ends() -> None:
    """The record is named by its first line."""
    found = records_of('1,"a\nb, c",2\n3,,4\n')

    assert found == [Record(1, ("1", "a\nb, c", "2")), Record(3, ("3", "", "4"))]


def test_inches_in_a_cell_are_no_quotation() -> None:
    """A quotation mark inside a cell stands for itself."""
    assert records_of('1,5" pipe,2\n')[0].cells == ("1", '5" pipe', "2")
    assert records_of('1,"5" pipe",2\n')[0].cells == ("1", '5" pipe', "2")


def test_a_quotation_that_is_never_closed_costs_one_line() -> None:
    """The line is named, and the lines after it are read."""
    rows = "".join(f"{number},x,y\n" for number in range(2, 70))
    found = records_of('1,"x,y\n' + rows)

    assert (found[0].line, found[0].problem) == (1, part("schedule.quotation-never-closed"))
    assert [record.line for record in found] == list(range(1, 70))
    assert not any(record.problem for record in found[1:])


def test_two_open_quotations_do_not_swallow_what_lies_between() -> None:
    """A mark that opens on the next line does not close the first."""
    found = records_of('1,"28,18\n2,"30,12\n3,31,12\n')

    never_closed = part("schedule.quotation-never-closed")
    assert [record.problem for record in found] == [never_closed, never_closed, ""]


def test_nul_characters_are_named() -> None:
    """A damaged row is not read, and what is shown of it holds no NUL."""
    (found,) = records_of("1,2\x008,3\n")

    assert found.problem == part("schedule.row-with-nul")
    assert "\0" not in "".join(found.cells)


def test_a_line_of_very_many_columns_is_named() -> None:
    """It is cut, and says how many cells it had."""
    found = records_of("," * 50_000 + "\n1,2\n")

    assert "50001 cells" in found[0].problem
    assert len(found[0].cells) == MOST_CELLS
    assert found[1].cells == ("1", "2")


def test_a_cell_of_ten_megabytes_is_named_and_not_kept() -> None:
    """The row says how long it is; the rows around it are read."""
    lines, reader = Lines(), Records(",")
    found: list[Record] = []
    for piece in ["1,2\n3,", *["x" * 100_000] * 100, "\n5,6\n"]:
        found += [record for line in lines.feed(piece) for record in reader.feed(line)]
        assert len(lines.rest) <= LONGEST + 1

    assert "10000002 characters long" in found[1].problem
    assert sum(map(len, found[1].cells)) < 1000
    assert [found[0].cells, found[2].cells] == [("1", "2"), ("5", "6")]


def test_many_lines_that_open_a_quotation_are_read_in_reasonable_steps() -> None:
    """Each is named by itself; none hides another."""
    found = records_of('a,"b\n' * 300)

    assert [record.line for record in found] == list(range(1, 301))
    assert all(record.problem for record in found)


def test_a_line_keeps_its_number_and_what_was_cut() -> None:
    """A line as long as allowed is whole; one longer is cut."""
    lines = Lines()

    assert next(lines.feed("x" * LONGEST + "\n")) == Line(1, "x" * LONGEST)
    assert next(lines.feed("x" * (LONGEST + 5) + "\n")).cut == 5


@pytest.mark.parametrize(("length", "read"), [(32_767, True), (32_768, False)])
def test_a_cell_is_as_long_as_spreadsheets_let_it_be(length: int, read: bool) -> None:
    """32,767 characters, the most that one keeps in a cell (common practice, from memory)."""
    (found,) = records_of("1," + "x" * length + "\n")

    assert (found.problem == "") is read
    assert (len(found.cells[1]) == length) is read
