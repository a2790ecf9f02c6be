"""No answer quotes another country's rule as if it bound."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

import checkers.data
from checkers import run
from checkers.domain.codes.binding import FOR_COMPARISON
from checkers.domain.codes.registry import CODES
from checkers.domain.loads.registry import LOADS

DATA = Path(checkers.data.__file__).parent
INTERNATIONAL = {"iec", "de", "fr", "ie", "nl", "no"}
"""Those that carry IEC 60364 as their own text, as HD 60364 in Europe."""

WHERE_IT_BINDS = {
    "IEC 60364": INTERNATIONAL,
    "BS 7671": {"gb"},
    "AS/NZS 3000": {"au", "nz"},
    "AS/NZS 3003": {"au", "nz"},
    "AS/NZS 3760": {"au", "nz"},
    "Electricity (Safety) Regulations": {"nz"},
    "Queensland": {"au"},
    "NFPA 70": {"us"},
    "DIN VDE 0100": {"de"},
    "DGUV": {"de"},
    "NF C 15-100": {"fr"},
    "NEN 1010": {"nl"},
    "NPR 5310": {"nl"},
    "NEK 400": {"no"},
    "FEL": {"no"},
    "I.S. 10101": {"ie"},
    "SANS 10142": {"za"},
    "SP 30": {"in"},
    "IS 732": {"in"},
    "SS 638": {"sg"},
    "GB 39752": {"cn"},
    "GB 16895": {"cn"},
    "GB/T 16895": {"cn"},
    "ITC-BT": set(),
}
"""Rules of installations by the start of their names, and the codes they are rules of."""

DEVICE = {"type": "A", "rated_residual_current": "30 mA"}
READING = {"test": "trip-time", "multiple": 1, "waveform": "ac", "value": "28 ms"}


def requests(load: str) -> Iterator[tuple[str, dict[str, Any]]]:
    """Yield requests to every checker that knows codes and cites sources."""
    for kind in ("AC", "A", "B"):
        yield "type-for-load", {"load": load, "device": {**DEVICE, "type": kind}}
    below = {"below": "b", "load": load}
    devices = [{"id": "a", **DEVICE}, {"id": "b", "below": "a", **DEVICE, "type": "B"}]
    yield "series", {"devices": devices, "loads": [below, {**below, "below": "a", "id": "c"}]}
    yield "leakage-budget", {"device": DEVICE, "items": [{"load": load, "count": 2}]}


def elsewhere(code: str) -> Iterator[tuple[str, dict[str, Any]]]:
    """Yield requests that name no equipment."""
    yield "readings", {"device": DEVICE, "readings": [READING]}
    yield "test-plan", {"device": DEVICE}
    yield "earth-electrode", {"device": DEVICE, "electrode_resistance": "200 ohm", "system": "tt"}
    yield "explain", {"device": DEVICE, "readings": [READING]}
    del code


def own_tables(code: str) -> set[str]:
    """Return the folders of the limit tables that a code's file, or the one followed, names."""
    own: dict[str, Any] = tomllib.loads((DATA / "codes" / f"{code}.toml").read_text("utf-8"))
    found = {table.split("/")[0] for table in own.get("tables", {}).values()}
    return found | (own_tables(own["follows"]) if "follows" in own else set())


def refuse_foreign_rules(code: str, reply: dict[str, Any]) -> None:
    """Fail where a source is a rule of elsewhere, and is not marked for comparison."""
    assert reply["kind"] == "result", reply
    for finding in reply["findings"]:
        for source in finding["sources"]:
            key = source["document"].lower().replace(" ", "-").replace("/", "-")
            binds = own_tables(code)
            for name, codes in WHERE_IT_BINDS.items():
                if source["document"].startswith(name) and code not in codes and key not in binds:
                    assert FOR_COMPARISON in source["clause"], (source, finding["says"])


@pytest.mark.parametrize("code", CODES)
def test_each_cited_rule_belongs_to_the_code_or_is_marked(code: str) -> None:
    """Over every code and load, and every checker that cites rules."""
    for load in LOADS:
        for slug, request in requests(load):
            refuse_foreign_rules(code, run(slug, {"code": code, "on": "2026-11-24", **request}))
    for slug, request in elsewhere(code):
        refuse_foreign_rules(code, run(slug, {"code": code, "on": "2026-11-24", **request}))


@pytest.mark.parametrize("code", CODES)
def test_each_rule_listed_beside_an_answer_belongs_to_the_code_or_is_marked(code: str) -> None:
    """What installation rules say where they name the equipment."""
    for load in LOADS:
        listed = run("type-for-load", {"code": code, "load": load})["answer"]["rules"]
        for words in listed:
            cited = words[words.rindex(" (", 0, words.rindex(" (")) + 2 :]
            for name, codes in WHERE_IT_BINDS.items():
                if cited.startswith(name) and code not in codes:
                    assert FOR_COMPARISON in cited, words


def test_every_rule_of_installations_is_known_to_this_test() -> None:
    """A new document has to be placed here before it is cited."""
    sources = tomllib.loads((DATA / "sources.toml").read_text("utf-8"))
    for key, source in sources.items():
        if source["kind"] == "installation-code":
            named = source["designation"]
            assert any(named.startswith(name) for name in WHERE_IT_BINDS), key


@pytest.mark.parametrize("detection", ["yes", "no", None])
@pytest.mark.parametrize("kind", ["AC", "A", "F", "B"])
def test_a_charge_point_in_the_united_states_is_answered_by_its_own_rules(
    kind: str, detection: str | None
) -> None:
    """UL 2231-2:2020, tables 4 and 5: class 5 trips at 4 to 6 mA, class 20 at 15 to 20 mA.

    On smooth DC they open by 30 mA and by 40 mA × 1.414. No device type of IEC passes or fails.
    """
    request = {"code": "us", "load": "ev-charge-point", "dc_detection": detection}
    reply = run("type-for-load", {**request, "device": {**DEVICE, "type": kind}})
    cited = {source["document"] for one in reply["findings"] for source in one["sources"]}

    assert reply["outcome"] == "cannot-say"
    assert cited == {"UL 2231-2"}
    assert "class" in reply["findings"][0]["do_next"]
    assert reply["answer"]["greatest_smooth_dc"] == {"value": 56.6, "unit": "mA"}
    assert reply["answer"]["interrupter_trips_at"] == [
        "class 5, AC (sine): 4 mA to 6 mA",
        "class 20, AC (sine): 15 mA to 20 mA",
        "class 5, Smooth DC: ≤ 30 mA",
        "class 20, Smooth DC: ≤ 56.6 mA",
    ]
    assert "60364-7-722" not in str(reply)


def test_a_charge_point_of_the_united_states_in_a_tree() -> None:
    """Its own interrupter bounds what it leaves, and no type of IEC is asked of its device."""
    devices = [{"id": "a", **DEVICE, "type": "B"}]
    load = {"below": "a", "load": "ev-charge-point"}
    reply = run("series", {"code": "us", "devices": devices, "loads": [load]})

    assert reply["answer"]["devices"][0]["greatest_unseen_dc"] == {"value": 56.6, "unit": "mA"}
    assert reply["outcome"] == "cannot-say"
    assert "60364" not in str(reply["findings"])
