"""Arrangements from practice get the verdict a careful practitioner gives."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest

from checkers import run

FILE = Path(__file__).with_name("series_from_practice.toml")
CASES = tomllib.loads(FILE.read_text(encoding="utf-8"))["case"]
EVERY = pytest.mark.parametrize("case", CASES, ids=[case["title"] for case in CASES])


def by_id(reply: dict[str, Any], key: str) -> dict[str, Any]:
    """Return one value of each device of an answer, by the device's name."""
    return {one["id"]: one[key] for one in reply["answer"]["devices"]}


@EVERY
def test_an_arrangement_from_practice_has_its_verdict(case: dict[str, Any]) -> None:
    """The outcome, the words and what fails are those the case names."""
    reply = run("series", case["request"])

    assert reply["kind"] == "result", reply
    said = " ".join(finding["says"] for finding in reply["findings"])
    assert case["outcome"] == reply["outcome"], said
    assert case.get("says", "").lower() in said.lower()
    failed = {one["judges"] for one in reply["findings"] if one["outcome"] == "fail"}
    assert set(case.get("fails", [])) <= failed


@EVERY
def test_each_device_has_its_verdict_and_its_dc(case: dict[str, Any]) -> None:
    """The verdict and the greatest smooth DC of each device named are those of the case."""
    reply = run("series", case["request"])
    found = {
        one["device"]: one["outcome"]
        for one in reply["findings"]
        if one["judges"] == "fitness-for-dc"
    }
    flowing = by_id(reply, "greatest_unseen_dc")

    assert by_id(reply, "verdict") == found
    assert case.get("devices", {}).items() <= found.items()
    for name, dc in case.get("dc", {}).items():
        assert dc == (flowing[name]["value"] if isinstance(dc, int) else flowing[name])


@EVERY
def test_each_pair_and_the_least_change_are_as_named(case: dict[str, Any]) -> None:
    """Which opens first, and what would mend it, are those of the case."""
    answer = run("series", case["request"])["answer"]
    pairs = {pair["lower"]: pair["selective"] for pair in answer["pairs"]}

    assert case.get("pairs", {}).items() <= pairs.items()
    assert case.get("change", "") in " ".join(answer.get("least_change", []))
