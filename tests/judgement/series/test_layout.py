"""The drawing holds every device and load once, in order, and fits a narrow page."""

from __future__ import annotations

from typing import Any

from hypothesis import given, settings

from checkers import run
from checkers.judgement.series.layout import WIDE
from tests.judgement.series.trees import trees

QUICK = settings(deadline=None)


def drawing(request: dict[str, Any]) -> list[dict[str, Any]]:
    """Return the rows of the drawing of a request."""
    return list(run("series", request)["answer"]["drawing"])


@QUICK
@given(request=trees())
def test_every_device_and_load_is_drawn_once(request: dict[str, Any]) -> None:
    """Whatever the tree."""
    rows = drawing(request)
    devices = [row["id"] for row in rows if row["kind"] == "device"]

    assert sorted(one["id"] for one in request["devices"]) == sorted(devices)
    assert len(request["loads"]) == sum(row["kind"] == "load" for row in rows)


@QUICK
@given(request=trees())
def test_rows_stand_below_one_another_and_right_of_what_they_hang_on(
    request: dict[str, Any],
) -> None:
    """No two rows share a line, and each is joined to a row above it, one step to its left."""
    rows = drawing(request)
    line = 0

    for row in rows:
        assert line == row["top"]
        line += len(row["lines"])
        if row["above"] is not None:
            above = rows[row["above"]]
            assert above["kind"] == "device"
            assert above["top"] < row["top"]
            assert above["depth"] + 1 == row["depth"]


@QUICK
@given(request=trees())
def test_no_line_is_longer_than_a_phone_is_wide(request: dict[str, Any]) -> None:
    """Long words are broken over lines, not cut off."""
    assert all(len(line) <= WIDE for row in drawing(request) for line in row["lines"])


def test_a_device_says_its_verdict_in_a_word_with_the_dc_through_it() -> None:
    """Shape and colour only repeat it."""
    request = {
        "devices": [{"id": "main", "type": "AC", "rated_residual_current": "30 mA"}],
        "loads": [{"below": "main", "load": "switched-mode-supply", "count": 3}],
    }
    (main, load) = drawing(request)

    assert main["lines"] == [
        "main: type AC, 30 mA",
        "Fail: DC up to 6 mA, none declared to be",
        "borne",
    ]
    assert main["verdict"] == "fail"
    assert load["lines"][0].startswith("3 × Switched-mode")


def test_a_second_way_in_parallel_is_told_in_words() -> None:
    """A row hangs below the first; the others are named."""
    request = {
        "devices": [
            {"id": "p", "type": "A", "rated_residual_current": "30 mA"},
            {"id": "q", "type": "A", "rated_residual_current": "30 mA"},
            {"id": "s", "below": "p, q", "type": "A", "rated_residual_current": "30 mA"},
        ],
        "loads": [{"below": "s", "load": "resistive"}],
    }
    rows = {row["id"]: row for row in drawing(request)}

    assert rows["s"]["lines"][1] == "fed in parallel through q as well"
