"""Whatever the form, every row of the file is in it, and nothing in a cell can harm."""

from __future__ import annotations

import csv
import io
import json
from html.parser import HTMLParser
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checkers.contract.schedule_stream import FORMS, Stream

REQUEST = {"code": "gb", "on": "2026-11-24"}
BOARD = (
    "Board DB1;;;\n;;;\nCircuit;RCD;IΔn;x1\n1 <b>Sockets</b>;RCBO A;30 mA;28,5\n"
    '2 "Kitchen";RCBO A;30 mA;410\n3;"RCBO\nA";30 mA;aborted\n4 spare;;;\n=1+1;RCBO;30 mA;28;7;8\n'
    '5;"RCBO;30 mA;28\n6;RCBO;30 mA;31\n'
)
LINES = [1, 2, 3, 4, 5, 6, 8, 9, 10, 11]


def written(form: str, text: str = BOARD) -> str:
    """Return a schedule in a form of output."""
    stream = Stream(REQUEST)
    rows = [*stream.feed(text.encode()), *stream.finish()]
    output = stream.output(form)
    body = "".join(map(output.row, rows))
    reply = stream.reply()
    return output.head(reply, stream.schedule) + body + output.tail(reply, stream.schedule)


class Page(HTMLParser):
    """The elements of a page, with their attributes and the text within."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.open: list[str] = []
        self.text = ""
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Note an element."""
        self.elements.append((tag, dict(attrs)))
        if tag not in ("meta", "br"):
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        """Close the element opened last."""
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        """Note a text."""
        self.text += data


@pytest.mark.parametrize(("form", "delimiter"), [("csv", ";"), ("tsv", "\t")])
def test_a_table_has_a_row_for_each_row_of_the_file(form: str, delimiter: str) -> None:
    """Python's own csv module reads it back, with the verdict before the cells as they were."""
    text = written(form)
    rows = list(csv.reader(io.StringIO(text.removeprefix("\ufeff")), delimiter=delimiter))

    assert [row[0] for row in rows] == ["1", "2", "line", *(str(one) for one in LINES[3:])]
    assert rows[3][1:3] == ["device", "pass so far; still to do: test button (BS 7671)"]
    assert rows[3][7:] == ["1 <b>Sockets</b>", "RCBO A", "30 mA", "28,5"]
    assert rows[4][2] == "FAIL"
    assert rows[5][8] == "RCBO\nA"
    assert rows[7][7] == "'=1+1"
    assert text.startswith("\ufeff")
    assert text.count("\r\n") == len(rows)


def test_a_json_file_is_one_reply_with_every_row() -> None:
    """The reply of the contract, and the rows in order."""
    made = json.loads(written("json"))

    assert (made["kind"], made["outcome"]) == ("result", "fail")
    assert [row["line"] for row in made["rows"]] == LINES
    assert made["rows"][4]["outcome"] == "fail"
    assert made["rows"][7]["cells"][0] == "=1+1"
    assert made["cautions"]
    assert made["local_note"]


def test_an_html_page_is_whole_and_safe() -> None:
    """Every element is closed, every row has its anchor, and no cell becomes an element."""
    page = Page(written("html"))
    anchors = {element[1].get("id") for element in page.elements}

    assert page.open == []
    assert {f"line-{line}" for line in LINES} <= anchors
    assert "b" not in {tag for tag, _ in page.elements}
    assert "<b>Sockets</b>" in page.text
    assert "Never leave a device that failed in service" in page.text
    assert "BS 7671" in page.text
    links = {str(a["href"])[1:] for tag, a in page.elements if tag == "a"}
    assert links <= anchors
    assert not [a for tag, a in page.elements if tag in ("script", "link", "img")]


def test_the_verdict_of_a_row_does_not_rest_on_colour() -> None:
    """The page names no colour but black, white and greys, and says each outcome in words."""
    text = written("html")
    style = text.partition("<style>")[2].partition("</style>")[0]

    assert {part.partition(";")[0] for part in style.split("#")[1:]} <= {"111", "fff", "777"}
    assert "FAIL" in text
    assert "cannot say" in text


@given(
    st.lists(
        st.lists(
            st.text(st.characters(exclude_characters="\0", exclude_categories=["Cs"])), max_size=5
        ),
        max_size=5,
    )
)
@settings(deadline=None, max_examples=30)
def test_any_cells_come_out_whole_in_every_form(cells: list[list[str]]) -> None:
    """Each form can be read back by what is made to read it, with as many rows as went in."""
    file = io.StringIO()
    writer = csv.writer(file, delimiter=";", quoting=csv.QUOTE_ALL)
    writer.writerows([["Circuit", "RCD", "IΔn", "x1", "Notes"], *cells])
    text = file.getvalue()
    stream = Stream(REQUEST)
    count = len([*stream.feed(text.encode()), *stream.finish()])

    read = csv.reader(io.StringIO(written("csv", text).removeprefix("\ufeff")), delimiter=";")
    assert len(list(read)) == count
    rows: list[Any] = json.loads(written("json", text))["rows"]
    assert len(rows) == count
    assert Page(written("html", text)).open == []


def test_every_form_is_known_by_an_ending() -> None:
    """CSV, TSV, JSON and HTML."""
    assert set(FORMS) == {"csv", "tsv", "json", "html"}
