"""A schedule that comes in pieces: the same requests and replies as the bridge, row by row.

`begin`, `feed` and `finish` take and give JSON text, for the browser's worker; one
schedule is under way at a time. The command line uses the Stream itself.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping, Sequence
from typing import Any

from checkers.bridge import crash, invalid, reply_to
from checkers.catalogue.schedule import CHECKER, Inputs, schedule_for, summary_of
from checkers.domain.errors import InvalidRequest
from checkers.domain.parsing import parse_inputs
from checkers.judgement.schedule.decoding import DECODERS
from checkers.judgement.schedule.layout import BadMapping
from checkers.judgement.schedule.output import Output
from checkers.judgement.schedule.output_html import HtmlOutput
from checkers.judgement.schedule.output_json import JsonOutput, row_as_values
from checkers.judgement.schedule.output_table import TableOutput
from checkers.judgement.schedule.row import Row
from checkers.judgement.schedule.schedule import Schedule
from checkers.judgement.schedule.summary import mapping_of

FORMS: dict[str, Callable[[Schedule], Output]] = {
    "csv": lambda schedule: TableOutput(schedule.intake.delimiter),
    "tsv": lambda _: TableOutput("\t"),
    "html": HtmlOutput,
    "json": lambda _: JsonOutput(),
}
ENCODINGS = tuple(DECODERS)


class Stream:
    """One schedule under way: rows come out as soon as they are known, the reply at the end."""

    def __init__(self, request: Mapping[str, Any], encoding: str = "") -> None:
        """Begin, with a request that holds everything but the text.

        Raises InvalidRequest with one message for every bad field.
        """
        if encoding and encoding not in DECODERS:
            known = ", ".join(ENCODINGS)
            raise InvalidRequest({"encoding": f"{encoding!r} is not one of {known}"})
        self.inputs: Inputs = parse_inputs(Inputs, request)
        self.schedule = schedule_for(self.inputs, encoding)

    def feed(self, piece: bytes) -> list[Row]:
        """Return the rows that a further piece finishes; raises InvalidRequest for the mapping."""
        try:
            return list(self.schedule.feed(piece))
        except BadMapping as bad:
            raise InvalidRequest({"mapping": str(bad)}) from bad

    def finish(self) -> list[Row]:
        """Return the rows that are left; raises InvalidRequest as feed does."""
        try:
            return list(self.schedule.finish())
        except BadMapping as bad:
            raise InvalidRequest({"mapping": str(bad)}) from bad

    def reply(self) -> dict[str, Any]:
        """Return the reply of the contract, with the findings of the rows that come first."""
        return reply_to(CHECKER, self.inputs, summary_of(self.schedule, self.inputs))

    def output(self, form: str) -> Output:
        """Return a form of output, by its name; the first row must be known."""
        return FORMS[form](self.schedule)


class _UnderWay:
    """The schedule of the worker, and the outputs that are written as it goes."""

    def __init__(self, stream: Stream, forms: Sequence[str]) -> None:
        self.stream = stream
        self.forms = forms
        self.outputs: dict[str, Output] = {}

    def answer(self, rows: Sequence[Row]) -> dict[str, Any]:
        pieces = {}
        if rows:
            self._open_outputs()
            pieces = {form: "".join(map(one.row, rows)) for form, one in self.outputs.items()}
        return {
            "kind": "rows",
            "rows": [row_as_values(row) for row in rows],
            "mapping": mapping_of(self.stream.schedule),
            "pieces": pieces,
        }

    def end(self, rows: Sequence[Row]) -> dict[str, Any]:
        last, reply, schedule = self.answer(rows), self.stream.reply(), self.stream.schedule
        self._open_outputs()
        frames = {
            form: [one.head(reply, schedule), one.tail(reply, schedule)]
            for form, one in self.outputs.items()
        }
        return {**last, "kind": "end", "reply": reply, "frames": frames}

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
    return _answered(lambda: _begun(json.loads(request)))


def _begun(asked: Mapping[str, Any]) -> dict[str, Any]:
    forms = [form for form in asked.get("forms", ()) if form in FORMS]
    _under_way[:] = [_UnderWay(Stream(asked["request"], asked.get("encoding", "")), forms)]
    return {"kind": "begun"}


def feed(piece: bytes | memoryview) -> str:
    """Take a further piece of the file; returns JSON text with the rows it finishes."""
    return _answered(lambda: _under_way[0].answer(_under_way[0].stream.feed(bytes(piece))))


def finish() -> str:
    """End the schedule; returns JSON text with the last rows and the reply."""
    return _answered(lambda: _under_way[0].end(_under_way[0].stream.finish()))


def _answered(work: Callable[[], dict[str, Any]]) -> str:
    try:
        made = work()
    except InvalidRequest as bad:
        made = invalid(CHECKER.slug, bad.errors)
    except Exception as error:  # noqa: BLE001  # the contract: a crash is a reply
        made = crash(CHECKER.slug, error)
    return json.dumps(made, ensure_ascii=False)
