"""The series checker keeps its part of the contract, and keeps up with typing."""

from __future__ import annotations

import time
from typing import Any

from checkers import run
from checkers.catalogue import checker_for
from checkers.domain.verdicts import Judges


def board(count: int) -> dict[str, Any]:
    """Return a main device with so many circuits below it, some of them charge points."""
    devices: list[dict[str, Any]] = [
        {"id": "main", "type": "A", "rated_residual_current": "300 mA", "delay": "S"}
    ]
    devices += [
        {
            "id": f"circuit {n}",
            "below": "main",
            "type": "A",
            "rated_residual_current": "30 mA",
        }
        for n in range(1, count)
    ]
    loads = [
        {
            "below": f"circuit {n}",
            "load": "ev-charge-point" if n % 3 == 0 else "led-lighting",
            "dc_protection": "rdc-dd",
        }
        for n in range(1, count)
    ]
    return {"devices": devices, "loads": loads}


def test_each_device_has_one_finding_on_dc_and_one_row_in_the_answer() -> None:
    """With its name, and the verdict in both."""
    reply = run("series", board(7))
    fitness = [one for one in reply["findings"] if one["judges"] == Judges.FITNESS_FOR_DC]
    rows = reply["answer"]["devices"]

    assert [one["device"] for one in fitness] == [row["id"] for row in rows]
    assert [one["outcome"] for one in fitness] == [row["verdict"] for row in rows]
    assert all({"id", "greatest_unseen_dc", "tolerates", "verdict"} <= set(row) for row in rows)


def test_each_pair_has_one_finding_and_one_row() -> None:
    """Six circuits below one device are six pairs."""
    reply = run("series", board(7))
    found = [one for one in reply["findings"] if one["judges"] == Judges.SELECTIVITY]

    assert len(found) == len(reply["answer"]["pairs"]) == 6


def test_the_whole_is_the_worst_of_its_findings() -> None:
    """Two charge points below one type A fail it, however many circuits pass."""
    reply = run("series", board(7))

    assert reply["outcome"] == "fail"
    assert [one["device"] for one in reply["findings"] if one["outcome"] == "fail"] == ["main"]


def test_all_bad_places_are_reported_at_once() -> None:
    """By field, devices and loads together."""
    request = board(4)
    request["devices"][1]["below"] = "nowhere"
    request["devices"][3]["id"] = "circuit 2"
    request["loads"][0]["below"] = "elsewhere"

    assert {"devices[1].below", "devices[3].id", "loads[0].below", "loads[2].below"} == set(
        run("series", request)["errors"]
    )


def test_fifty_devices_are_judged_and_mended_while_a_key_is_pressed() -> None:
    """Sixteen charge points among them: 50 ms on a quiet machine, here with room for a busy one."""
    request = board(50)
    run("series", request)
    best = min(_seconds(request) for _ in range(5))

    assert best < 0.1


def _seconds(request: dict[str, Any]) -> float:
    start = time.process_time()
    assert run("series", request)["answer"]["least_change"]
    return time.process_time() - start


def test_a_resistance_left_out_is_named() -> None:
    """What is taken in its place decides whether the lower device opens alone.

    230 V over 1000 ohm is 230 mA, less than 2.5 times 100 mA, where the upper may open as soon.
    """
    request = dict(checker_for("series").examples[1].request)
    weak = run("series", {**request, "electrode_resistance": "1000 ohm"})
    usual = run("series", request)

    assert (weak["outcome"], usual["outcome"]) == ("fail", "pass")
    assert "electrode_resistance" in {one["field"] for one in usual["assumed"]}
