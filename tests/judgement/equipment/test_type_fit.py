"""One judgement of a load: what one checker fails, the other never passes."""

from __future__ import annotations

from itertools import product
from typing import Any

import pytest

from checkers import run
from checkers.catalogue import checker_for
from checkers.domain.codes.registry import CODES
from checkers.domain.inputs.parsing import parse_inputs
from checkers.domain.loads.kinds import Separation
from checkers.domain.loads.registry import LOADS

TYPES = ("AC", "A", "F", "B", "B+")
MAKERS = ("silent", *TYPES, "no-dc")
DECLARED = (None, "0 mA", "3 mA", "6 mA", "8 mA", "20 mA")
PROTECTIONS = ("none", "rdc-dd", "type-b")
SUPPLIED = [(key, supply) for key, load in LOADS.items() for supply in load.circuits]
KNOWN = list(product(SUPPLIED, Separation, PROTECTIONS, DECLARED, MAKERS, TYPES))
STEP = 23
"""Every so many of all combinations; no list above has a length that divides by it."""

Known = tuple[tuple[str, str], str, str, str | None, str, str]


def outcome(slug: str, request: dict[str, Any]) -> str:
    """Return the outcome of a checker, without its reply in words."""
    checker = checker_for(slug)
    return str(checker.check(parse_inputs(checker.inputs, request)).outcome)


def in_a_tree(known: Known, code: str = "iec") -> dict[str, Any]:
    """Return the request on one device and one load."""
    (load, supply), separation, protection, declared, maker, kind = known
    one: dict[str, Any] = {
        "below": "a",
        "load": load,
        "supply": supply,
        "separation": str(separation),
    }
    one |= {"dc_protection": protection, "dc_residual": declared, "maker_says": maker}
    return {"code": code, "devices": [{"id": "a", **device(kind)}], "loads": [one]}


def alone(known: Known, code: str = "iec") -> dict[str, Any]:
    """Return the request on the type that the load calls for."""
    (load, supply), separation, protection, declared, maker, kind = known
    found: dict[str, Any] = {
        "load": load,
        "supply": supply,
        "separation": str(separation),
        "maker_says": maker,
    }
    found |= {"dc_detection": "yes" if protection == "rdc-dd" else "no", "dc_residual": declared}
    return {"code": code, **found, "device": device(kind)}


def device(kind: str) -> dict[str, str]:
    """Return a device of 30 mA."""
    return {"type": kind, "rated_residual_current": "30 mA"}


@pytest.mark.parametrize("start", range(4))
def test_what_one_checker_passes_the_other_does_not_fail(start: int) -> None:
    """Over every load, supply, separation, protection, declared DC, maker's word and type."""
    for known in KNOWN[start * STEP :: 4 * STEP]:
        if known[2] == "type-b":
            continue
        found = {outcome("series", in_a_tree(known)), outcome("type-for-load", alone(known))}
        assert not {"pass", "fail"} <= found, known


@pytest.mark.slow  # one in 23 of the same is walked above
def test_nor_anywhere_in_the_whole_of_it() -> None:
    """Every one of the combinations."""
    for known in KNOWN:
        if known[2] == "type-b":
            continue
        found = {outcome("series", in_a_tree(known)), outcome("type-for-load", alone(known))}
        assert not {"pass", "fail"} <= found, known


def test_a_type_b_of_its_own_fails_every_narrower_device_above() -> None:
    """DGUV Information 203-006, 5.2, and GB 39752-2024, 5.3.3.1: whatever it feeds."""
    for known in KNOWN[::STEP]:
        if known[2] == "type-b" and known[-1] not in {"B", "B+"}:
            assert outcome("series", in_a_tree(known)) == "fail", known


@pytest.mark.parametrize("code", CODES)
def test_the_two_agree_under_every_code(code: str) -> None:
    """The rules of a code on types are part of the one judgement."""
    for known in KNOWN[:: 131 * 3]:
        if known[2] == "type-b":
            continue
        found = {
            outcome("series", in_a_tree(known, code)),
            outcome("type-for-load", alone(known, code)),
        }
        assert not {"pass", "fail"} <= found, known


@pytest.mark.parametrize(("load", "supply"), SUPPLIED)
def test_declared_dc_never_makes_a_narrower_type_pass(load: str, supply: str) -> None:
    """What flows in normal use says nothing of the type that a fault calls for."""
    for kind, maker, separation in product(("AC", "A", "F"), MAKERS, Separation):
        known: Known = ((load, supply), separation, "none", None, maker, kind)
        if outcome("series", in_a_tree(known)) == "pass":
            continue
        for declared in DECLARED[1:]:
            more: Known = (known[0], separation, "none", declared, maker, kind)
            assert outcome("series", in_a_tree(more)) != "pass", more


@pytest.mark.parametrize(("load", "supply"), SUPPLIED)
def test_no_smooth_dc_passes_no_type_ac_and_waives_no_type_f(load: str, supply: str) -> None:
    """Up to 6 mA and any pulsating DC may flow; mixed frequencies are another matter.

    IEC 60364-5-53:2019, 531.3.3, and the scope of type F in IEC 62423:2009.
    """
    silent, stated = (
        {
            kind: outcome(
                "type-for-load", alone(((load, supply), "none", "none", None, maker, kind))
            )
            for kind in ("AC", "A", "F")
        }
        for maker in ("silent", "no-dc")
    )

    assert stated["AC"] != "pass" or silent["AC"] == "pass"
    for kind in ("A", "F"):
        called_for_b = LOADS[load].need(supply, "none").type == "B"
        assert stated[kind] != "pass" or silent[kind] == "pass" or called_for_b


def asked(**request: Any) -> dict[str, Any]:
    """Return the finding on the type of a 30 mA device for a load."""
    kind = request.pop("type")
    return dict(run("type-for-load", {**request, "device": device(kind)})["findings"][0])


@pytest.mark.parametrize("maker", ["A", "F", "no-dc", "silent"])
def test_detection_that_nobody_stated_is_asked_about(maker: str) -> None:
    """A charge point on a type A: 722.531.2.101 turns on its detection, so that is the question."""
    found = asked(load="ev-charge-point", maker_says=maker, type="F")

    assert found["outcome"] == "cannot-say"
    assert "because" not in found["says"]
    assert "has 6 mA DC detection to IEC 62955" in found["do_next"]


@pytest.mark.parametrize(
    ("request_", "condition"),
    [
        ({"load": "dimmer", "maker_says": "AC", "type": "AC"}, "only filament lamps"),
        (
            {"load": "welder", "supply": "three-phase", "maker_says": "A", "type": "A"},
            "a mains transformer",
        ),
        ({"load": "site-machine", "maker_says": "A", "type": "A"}, "every machine used there"),
    ],
)
def test_a_condition_of_the_installation_is_never_taken_as_met(
    request_: dict[str, Any], condition: str
) -> None:
    """Not said: asked about; said to hold: a pass; said not to: a fail."""
    unsaid = asked(**request_)
    holds, fails = (asked(**request_, condition_holds=said) for said in ("yes", "no"))

    assert [one["outcome"] for one in (unsaid, holds, fails)] == ["cannot-say", "pass", "fail"]
    assert condition in unsaid["do_next"]


def test_the_sentence_quotes_only_what_was_said() -> None:
    """A maker who spoke of DC alone is not said to have spoken of a type."""
    solar = asked(load="pv-inverter", separation="none", maker_says="no-dc", type="A")
    drive = asked(load="single-phase-drive", maker_says="no-dc", type="A")

    assert solar["outcome"] == "pass"
    assert "its maker states that no smooth DC above 6 mA can flow" in solar["says"]
    assert drive["outcome"] == "cannot-say"
    assert "because" not in drive["says"]


@pytest.mark.parametrize(("maker", "expected"), [("A", "pass"), ("F", "fail"), ("silent", "fail")])
def test_a_word_for_type_f_promises_no_more_than_a_type_f_bears(maker: str, expected: str) -> None:
    """10 mA (531.3.3, note 2), which a type A above does not bear: 6 mA."""
    devices = [
        {"id": "up", "type": "A", "rated_residual_current": "100 mA", "delay": "S"},
        {"id": "f", "below": "up", **device("F")},
    ]
    load = {"below": "f", "load": "heat-pump-three-phase", "maker_says": maker}
    (up, _) = run("series", {"devices": devices, "loads": [load]})["answer"]["devices"]

    assert up["verdict"] == expected


def test_without_the_rating_a_rule_on_it_asks_for_it() -> None:
    """IEC 60364-7-722: 30 mA at most; 710: final circuits up to 32 A have 30 mA."""
    for load, supply in (("ev-charge-point", "single-phase"), ("medical", "three-phase")):
        reply = run("type-for-load", {"load": load, "supply": supply, "device": {"type": "B"}})
        (found,) = (one for one in reply["findings"] if one["about"] == "rated residual current")

        assert reply["outcome"] == found["outcome"] == "cannot-say"
        assert found["field"] == "device.rated_residual_current"
        assert "IΔn" in found["do_next"]


@pytest.mark.parametrize("form", ["monitor", "rdc-dd"])
def test_what_is_no_rcd_has_nothing_that_passes(form: str) -> None:
    """A monitor warns (IEC 62020-1), and detection works beside an RCD (IEC 62955)."""
    request = {"load": "ev-charge-point", "dc_detection": True, "shared": False}
    reply = run("type-for-load", {**request, "device": {**device("A"), "form": form}})

    assert {one["outcome"] for one in reply["findings"]} == {"cannot-say"}


def test_a_type_b_in_china_turns_on_what_stands_upstream() -> None:
    """GB 39752-2024, 5.3.3.1: type B only if the RCD upstream is one too, or there is none."""
    request = {"code": "cn", "on": "2026-01-01", "load": "ev-charge-point", "dc_detection": "yes"}
    reply = run("type-for-load", {**request, "device": device("B")})
    (found,) = (one for one in reply["findings"] if "local code" in one["about"])

    assert found["outcome"] == "cannot-say"
    assert "upstream" in found["do_next"]
