"""A schedule that comes in pieces: the same requests and replies as the bridge, row by row.

`begin`, `feed`, `go_on` and `finish` take and give JSON text, for the browser's worker;
one schedule is under way at a time. The command line uses the Stream itself.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import islice
from typing import Any

from checkers.catalogue.schedule import CHECKER, Inputs, schedule_for, summary_of
from checkers.contract.bridge import crash, damaged, invalid, reply_to
from checkers.domain.errors import DataError, InvalidRequest, quoted
from checkers.domain.inputs.parsing import parse_inputs
from checkers.domain.inputs.request_text import read_request
from checkers.judgement.schedule.file.decoding import DECODERS
from checkers.judgement.schedule.file.layout import BadMapping
from checkers.judgement.schedule.output.base import Output
from checkers.judgement.schedule.output.html_page import HtmlOutput
from checkers.judgement.schedule.output.json_object import JsonOutput, row_as_values
from checkers.judgement.schedule.output.table import TableOutput
from checkers.judgement.schedule.rows.row import Row
from checkers.judgement.schedule.rows.schedule import Schedule

FORMS: dict[str, Callable[[Schedule], Output]] = {
    "csv": lambda schedule: TableOutput(schedule.intake.delimiter),
    "tsv": lambda _: TableOutput("\t"),
    "html": HtmlOutput,
    "json": lambda _: JsonOutput(),
}
ENCODINGS = tuple(DECODERS)
AT_ONCE = 40  # rows that a call of the worker judges, so that it can be stopped in between


class Stream:
    """One schedule under way: rows come out as soon as they are known, the reply at the end."""

    def __init__(self, request: Mapping[str, Any], encoding: str = "") -> None:
        """Begin, with a request that holds everything but the text.

        Raises InvalidRequest with one message for every bad field.
        """
        if encoding and encoding not in DECODERS:
            known = ", ".join(ENCODINGS)
            raise InvalidRequest({"encoding": f"{quoted(encoding)} is not one of {known}"})
        self.request = request
        self.inputs: Inputs = parse_inputs(Inputs, request)
        self.schedule = schedule_for(self.inputs, encoding)

    def feed(self, piece: bytes) -> Iterator[Row]:
        """Yield the rows that a further piece finishes; raises InvalidRequest for the mapping."""
        yield from _named(self.schedule.feed(piece))

    def finish(self) -> Iterator[Row]:
        """Yield the rows that are left; raises InvalidRequest as feed does."""
        yield from _named(self.schedule.finish())

    def reply(self) -> dict[str, Any]:
        """Return the reply of the contract, with the findings of the rows that come first."""
        result = summary_of(self.schedule, self.inputs)
        return reply_to(CHECKER, self.inputs, result, self.request)

    def output(self, form: str) -> Output:
        """Return a form of output, by its name; the first row must be known."""
        return FORMS[form](self.schedule)


def _named(rows: Iterator[Row]) -> Iterator[Row]:
    """Yield rows; a mapping that cannot be used becomes an error at its field."""
    try:
        yield from rows
    except BadMapping as bad:
        raise InvalidRequest({"mapping": str(bad)}) from bad


class _UnderWay:
    """The schedule of the worker: the rows that wait, and the outputs written as it goes."""

    def __init__(self, stream: Stream, forms: Sequence[str]) -> None:
        self.stream = stream
        self.forms = forms
        self.outputs: dict[str, Output] = {}
        self.waiting: Iterator[Row] = iter(())
        self.ends = False

    def take(self, rows: Iterator[Row], *, ends: bool = False) -> dict[str, Any]:
        """Take what a further piece, or the end of the file, gives."""
        self.waiting, self.ends = rows, ends
        return self.go_on()

    def go_on(self) -> dict[str, Any]:
        """Return some of the rows that wait, and the reply with the last of them."""
        rows = list(islice(self.waiting, AT_ONCE))
        answer = self._rows(rows)
        more = len(rows) == AT_ONCE
        if more or not self.ends:
            return {**answer, "kind": "rows", "more": more}
        return {**answer, "kind": "end", "more": False, **self._end()}

    def _rows(self, rows: Sequence[Row]) -> dict[str, Any]:
        if rows:
            self._open_outputs()
        return {
            "rows": [row_as_values(row) for row in rows],
            "pieces": {form: "".join(map(one.row, rows)) for form, one in self.outputs.items()},
        }

    def _end(self) -> dict[str, Any]:
        reply, schedule = self.stream.reply(), self.stream.schedule
        self._open_outputs()
        frames = {
            form: [one.head(reply, schedule), one.tail(reply, schedule)]
            for form, one in self.outputs.items()
        }
        return {"reply": reply, "frames": frames}

    def _open_outputs(self) -> None:
        """Open the outputs once the delimiter is known."""
        if not self.outputs:
            self.outputs = {form: self.stream.output(form) for form in self.forms}


_under_way: list[_UnderWay] = []


def begin(request: str) -> str:
    """Begin a schedule; an earlier one that was not finished is forgotten.

    Inputs: JSON text with `request`, `encoding` and `forms`, the outputs to be written.
    Result: JSON text, {"kind": "begun"} or an invalid reply.
    """
    return _answered(lambda: _begun(read_request(request)))


def _begun(asked: Any) -> dict[str, Any]:
    forms = [form for form in asked.get("forms", ()) if form in FORMS]
    _under_way[:] = [_UnderWay(Stream(asked["request"], asked.get("encoding", "")), forms)]
    return {"kind": "begun"}


def feed(piece: bytes | memoryview) -> str:
    """Take a further piece of the file.

    Result: JSON text with rows and the pieces of each output; `more` tells that further
    rows of the piece wait for `go_on`.
    """
    return _answered(lambda: _under_way[0].take(_under_way[0].stream.feed(bytes(piece))))


def go_on() -> str:
    """Return further rows of what was given last, as feed and finish do."""
    return _answered(lambda: _under_way[0].go_on())  # noqa: PLW0108  # there may be none


def finish() -> str:
    """End the schedule; with the last rows, which may need `go_on`, comes the reply."""
    return _answered(lambda: _under_way[0].take(_under_way[0].stream.finish(), ends=True))


def _answered(work: Callable[[], dict[str, Any]]) -> str:
    try:
        made = work()
    except InvalidRequest as bad:
        made = invalid(CHECKER.slug, bad.errors)
    except DataError as bad:
        made = damaged(CHECKER.slug, bad)
    except Exception as error:  # noqa: BLE001  # the contract: a crash is a reply
        made = crash(CHECKER.slug, error)
    return json.dumps(made, ensure_ascii=False)
