"""The browser's way to a schedule: JSON text in and out, piece by piece."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

import pytest

from checkers.contract import schedule_stream
from checkers.contract.schedule_stream import Stream

TEXT = "Device,IΔn,x1\nRCD 1,30 mA,28\nRCD 2,30 mA,410\n"
FORMS = ["csv", "html"]


def begun(**request: Any) -> dict[str, Any]:
    """Return the reply to a beginning."""
    asked = {"request": {"code": "gb", "on": "2026-11-24", **request}, "forms": FORMS}
    reply: dict[str, Any] = json.loads(schedule_stream.begin(json.dumps(asked)))
    return reply


def fed(text: str, size: int = 9) -> Iterator[dict[str, Any]]:
    """Yield the replies to each piece of a text, as memory the browser shares."""
    raw = text.encode()
    for start in range(0, len(raw), size):
        yield from whole(schedule_stream.feed(memoryview(raw)[start : start + size]))


def ended() -> list[dict[str, Any]]:
    """Return the replies to the end of the file."""
    return list(whole(schedule_stream.finish()))


def whole(text: str) -> Iterator[dict[str, Any]]:
    """Yield a reply and those that follow from it."""
    reply = json.loads(text)
    yield reply
    while reply.get("more"):
        reply = json.loads(schedule_stream.go_on())
        yield reply


def test_rows_pieces_and_reply_come_out() -> None:
    """Every row once, each form's pieces, and the reply at the end."""
    assert begun() == {"kind": "begun"}
    replies = [*fed(TEXT), *ended()]
    end = replies[-1]

    assert [row["line"] for reply in replies for row in reply["rows"]] == [1, 2, 3]
    assert end["kind"] == "end"
    assert end["reply"]["outcome"] == "fail"
    assert [one["means"] for one in end["reply"]["answer"]["mapping"]][-1] == "trip time ×1"
    head, tail = end["frames"]["html"]
    page = head + "".join(reply["pieces"].get("html", "") for reply in replies) + tail
    assert page.startswith("<!doctype html>")
    assert page.count('<tr id="line-') == 3


def test_the_last_beginning_counts() -> None:
    """A schedule that was stopped leaves nothing behind."""
    begun()
    list(fed("Device,IΔn,x1\nRCD 9,30 mA,410\n"))
    begun()
    list(fed(TEXT.replace("410", "41")))

    assert ended()[-1]["reply"]["outcome"] == "pass"


def test_no_call_judges_more_than_a_few_rows() -> None:
    """A long piece comes back in parts, so that the reader can stop in between."""
    begun()
    rows = "".join(f"RCD {number},30 mA,28\n" for number in range(500))
    replies = [*fed("Device,IΔn,x1\n" + rows, size=100_000), *ended()]

    assert max(len(reply["rows"]) for reply in replies) <= schedule_stream.AT_ONCE
    assert [row["line"] for reply in replies for row in reply["rows"]] == list(range(1, 502))
    assert [reply["kind"] for reply in replies].count("end") == 1


def test_an_empty_file_ends_in_a_reply() -> None:
    """Nothing passes, and the outputs are whole."""
    begun()
    (end,) = ended()

    assert end["reply"]["outcome"] == "cannot-say"
    assert set(end["frames"]) == set(FORMS)


@pytest.mark.parametrize(
    ("request_part", "field"), [({"code": "xx"}, "code"), ({"waveform": "square"}, "waveform")]
)
def test_a_bad_beginning_names_its_field(request_part: dict[str, str], field: str) -> None:
    """As for every checker."""
    reply = begun(**request_part)

    assert reply["kind"] == "invalid"
    assert field in reply["errors"]


def test_a_mapping_of_a_column_that_is_not_there_is_named() -> None:
    """It shows as soon as the headings are read."""
    begun(mapping=[{"column": "x9", "means": "device"}])
    list(fed(TEXT))

    assert "mapping" in ended()[-1]["errors"]


@pytest.mark.parametrize("text", ["", "[]", "{}", "null"])
def test_a_broken_beginning_is_a_reply_too(text: str) -> None:
    """Nothing that is sent stops the worker."""
    assert json.loads(schedule_stream.begin(text))["kind"] in ("invalid", "crash")


def test_the_rows_do_not_depend_on_the_pieces() -> None:
    """A file cut anywhere gives the same rows."""
    whole, cut = Stream({"code": "gb"}), Stream({"code": "gb"})
    expected = [*whole.feed(TEXT.encode()), *whole.finish()]
    found = [row for byte in TEXT.encode() for row in cut.feed(bytes([byte]))]

    assert expected == [*found, *cut.finish()]
