"""Evidence left out takes away the findings it made, and changes no other, in every checker."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from datetime import date
from pathlib import Path as File
from typing import Any

import pytest

from checkers import run
from checkers.catalogue import CHECKERS
from checkers.domain.device.device import Form
from tests.catalogue.properties.worse_knowledge import Path, Request, name_of, paths_in, without

CASES = File(__file__).parents[2] / "cases"
ASKED_OF = {
    "readings": "readings",
    "series": "series",
    "type-for-load": "types",
    "": "site_work",
}
# What was measured, seen or listed; an entry of a list is one piece.
EVIDENCE = (
    "readings",
    "history",
    "items",
    "loads",
    "circuit.dc_residual",
    "circuit.standing_leakage",
    "circuit.seen_to_open",
    "measured",
    "insulation_resistance",
    "own_trip_current",
    "maker_says",
    "shared",
    "dc_detection",
    "device",
    "device.type",
    "device.rated_residual_current",
)
# Where the device is what the question is about, leaving it out is no matter of evidence.
DEVICE_IS_EVIDENCE = ("demonstration",)
SEES_DC = ("B", "B+")
Found = dict[tuple[str, str, str], dict[str, dict[str, Any]]]


def plain(value: Any) -> Any:
    """Return a request with its days as text, as JSON would have them."""
    if isinstance(value, dict):
        return {key: plain(one) for key, one in value.items()}
    if isinstance(value, list):
        return [plain(one) for one in value]
    return value.isoformat() if isinstance(value, date) else value


def asked() -> Iterator[tuple[str, str, Request]]:
    """Yield every example and every case from practice: checker, title, request."""
    for checker in CHECKERS:
        if checker.slug not in ("practice", "explain", "schedule"):
            for one in checker.examples:
                yield checker.slug, one.title, dict(one.request)
    for slug, name in ASKED_OF.items():
        text = (CASES / f"{name}_from_practice.toml").read_text(encoding="utf-8")
        for case in tomllib.loads(text)["case"]:
            yield case.get("checker", slug), case["title"], plain(case["request"])


def pieces(slug: str, request: Request) -> list[Path]:
    """Return the places of all evidence in a request."""
    return [
        path
        for path in paths_in(request)
        if name_of(path) in EVIDENCE
        and (path[0] != "device" or slug in DEVICE_IS_EVIDENCE)
        and not (path[-1] == "device" and len(path) > 1)
    ]


def found(slug: str, request: Request) -> Found | None:
    """Return the findings by what they are about and by the input that made them."""
    reply = run(slug, request)
    if reply["kind"] != "result":
        return None
    by_place: Found = {}
    for one in reply["findings"]:
        place = (one.get("device", ""), one["about"], one["judges"])
        by_place.setdefault(place, {}).setdefault(made_by(one), one)
        kept = by_place[place][made_by(one)]
        if RANK.index(one["outcome"]) < RANK.index(kept["outcome"]):
            by_place[place][made_by(one)] = one
    return by_place


RANK = ("fail", "borderline", "cannot-say", "pass")


def made_by(finding: dict[str, Any]) -> str:
    """Return the input that made a finding; an entry left out moves the numbers of the others."""
    return re.sub(r"\[\d+\]", "", finding.get("field", ""))


def cleared(slug: str, request: Request, path: Path) -> list[str]:
    """Return what passes without a piece of evidence and did not pass with it."""
    before, after = found(slug, request), found(slug, without(request, path))
    if before is None or after is None:
        return []
    wrong = []
    for place, ones in after.items():
        for field, one in ones.items():
            was = before.get(place, {}).get(field)
            if one["outcome"] != "pass" or (was and was["outcome"] == "pass"):
                continue
            if not is_of(slug, request, path, place, before):
                wrong.append(f"{place}: {was and was['outcome']} became pass")
    return wrong


def is_of(
    slug: str, request: Request, path: Path, place: tuple[str, str, str], before: Found
) -> bool:
    """Tell whether a finding is one that a piece of evidence made, or made together with others.

    A reading makes the findings on its own test. That a device was not seen to open makes a
    finding on each reading that shows a trip, and says so. A load makes those on every device that
    its current flows through.
    """
    if name_of(path) == "circuit.seen_to_open":
        same = [ones for other, ones in before.items() if other[:2] == place[:2]]
        return any("seen to open" in one["says"] for ones in same for one in ones.values())
    if path[0] in ("readings", "history") and len(path) > 1:
        only = without(request, path[:1])
        only[str(path[0])] = [request[str(path[0])][path[1]]]
        alone = found(slug, only)
        return alone is not None and place in alone
    if path[0] == "loads" and len(path) > 1:
        return place[0] in flowed_through(request, int(path[1]))
    return False


def flowed_through(request: Request, load: int) -> set[str]:
    """Return the devices between a load and the supply, and all below one of them that sees DC.

    DC of two circuits may cancel in a device above both, which then lets more of it flow in each.
    """
    devices = {one["id"]: one for one in request["devices"]}
    way = list(above(devices, request["loads"][load].get("below", "")))
    senses = {
        one
        for one in way
        if devices[one].get("form") == Form.RDC_DD or devices[one].get("type") in SEES_DC
    }
    return {*way, *(one for one in devices if senses & set(above(devices, one)))}


def above(devices: dict[str, dict[str, Any]], name: str) -> Iterator[str]:
    """Yield a device and those above it, nearest first."""
    while name in devices:
        yield name
        name = devices[name].get("below", "")


@pytest.mark.parametrize(("slug", "title", "request_"), list(asked()))
def test_evidence_left_out_clears_nothing_but_what_it_made(
    slug: str, title: str, request_: Request
) -> None:
    """No finding of another subject turns into a pass, and none that passes is added."""
    for path in pieces(slug, request_):
        assert not cleared(slug, request_, path), (title, path)


@pytest.mark.parametrize(
    ("slug", "title", "request_"), [one for one in asked() if one[0] == "readings"]
)
def test_a_reading_left_out_changes_no_finding_on_another(
    slug: str, title: str, request_: Request
) -> None:
    """Those on other readings stay as they are; only a trip still to be shown may be added."""
    for path in pieces(slug, request_):
        if path[0] != "readings" or len(path) == 1 or len(request_["readings"]) == 1:
            continue
        before, after = found(slug, request_), found(slug, without(request_, path))
        assert before is not None
        assert after is not None
        for place, ones in after.items():
            if is_of(slug, request_, path, place, before) or place[1] == "trip not shown":
                continue
            assert ones.keys() == before.get(place, {}).keys(), (title, path, place)
            for field, one in ones.items():
                assert one["outcome"] == before[place][field]["outcome"], (title, path, place)


def test_the_device_of_a_demonstration_decides_only_what_will_be_seen() -> None:
    """The findings on source and resistor are the same, word for word, whatever device it is."""
    whole = {"dc_wanted": "6 mA", "supply_voltage": "12 V", "device": {"type": "A"}}
    asked_for = run("demonstration", {**whole, "own_trip_current": "27 mA"})["findings"]
    without_device = run("demonstration", {**whole, "device": {}})["findings"]

    assert [one for one in asked_for if one["about"] != "what will be seen"] == without_device
    assert {one["outcome"] for one in without_device} == {"pass"}


@pytest.mark.parametrize("code", ["gb", "no"])
def test_whether_a_device_is_shared_is_asked_and_never_taken_to_be_no(code: str) -> None:
    """IEC 60364-7-722, 722.531.3 (secondary): each connecting point has an RCD of its own."""
    request = {
        "code": code,
        "on": "2026-11-24",
        "load": "ev-charge-point",
        "dc_detection": True,
        "device": {"type": "A", "rated_residual_current": "30 mA"},
    }
    said = [run("type-for-load", {**request, "shared": one})["outcome"] for one in (True, False)]
    unsaid = run("type-for-load", request)

    assert said == ["fail", "pass"]
    assert unsaid["outcome"] == "cannot-say"
    assert any("feeds anything else" in one.get("do_next", "") for one in unsaid["findings"])
