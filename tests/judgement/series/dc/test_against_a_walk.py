"""Verdicts on smooth DC, against a walk over all that can flow in an arrangement.

The walk knows no rule of the product: Kirchhoff's current law, sources of either sign up to
their greatest, and detectors that open when the sum through them is more than 6 mA.
"""

from __future__ import annotations

from itertools import combinations, product
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from checkers import run

Request = dict[str, Any]
Row = list[float]

UNBOUNDED = 1000.0
DETECTS = 6.0
BEARS = {"AC": 0.0, "A": 6.0, "F": 10.0}
"""Smooth DC borne [mA]: BS 7671:2018+A2:2022, 531.3.3, notes 1 and 2; none declared for AC."""

SOURCES: tuple[tuple[float, Request], ...] = (
    (6.0, {"load": "ev-charge-point", "dc_protection": "rdc-dd"}),
    (UNBOUNDED, {"load": "ev-charge-point"}),
    (UNBOUNDED, {"load": "ev-charge-point", "dc_residual": "1 mA"}),
    (6.0, {"load": "heat-pump-three-phase", "maker_says": "A"}),
    (10.0, {"load": "heat-pump-three-phase", "maker_says": "F"}),
    (UNBOUNDED, {"load": "three-phase-drive", "dc_residual": "2 mA"}),
    (4.0, {"load": "led-lighting", "dc_residual": "4 mA"}),
    (6.0, {"load": "pv-inverter", "separation": "simple"}),
)
"""What each can leave [mA]: 6 mA by IEC 62955 and by a word for type A, 10 mA by one for type F,
what is declared of ordinary electronics; of a vehicle or a link nothing bounds it."""

SHARES = (0.0, 0.5, 1.0)


@st.composite
def arrangements(draw: st.DrawFn, *, parallel: bool) -> Request:
    """Draw devices below one another, some of them 6 mA detection, and up to three sources."""
    count = draw(st.integers(1, 5))
    devices: list[Request] = []
    for place in range(count):
        above = [f"d{n}" for n in range(place)]
        least = min(1, len(above))
        most = 2 if parallel else 1
        chosen = st.lists(st.sampled_from(above), min_size=least, max_size=most, unique=True)
        below = draw(chosen) if above else []
        form = draw(st.sampled_from(["rccb", "rccb", "rdc-dd"]))
        kind = draw(st.sampled_from(list(BEARS)))
        one = {"id": f"d{place}", "below": ",".join(below), "form": form, "type": kind}
        devices.append({**one, "rated_residual_current": "30 mA"})
    loads = []
    for _ in range(draw(st.integers(1, 3))):
        greatest, source = draw(st.sampled_from(SOURCES))
        where = f"d{draw(st.integers(0, count - 1))}"
        pieces = draw(st.integers(1, 2))
        loads.append({**source, "below": where, "count": pieces, "most": greatest * pieces})
    return {"devices": devices, "loads": loads}


def walked(drawn: Request) -> list[float]:
    """Return the greatest smooth DC [mA] through each device, over every corner of what flows."""
    devices, loads = drawn["devices"], drawn["loads"]
    meeting = [one["id"] for one in devices if "," in one["below"]]
    greatest = [0.0] * len(devices)
    for shares in product(SHARES, repeat=len(meeting)):
        flows = shared_out(drawn, dict(zip(meeting, shares, strict=True)))
        for corner in corners(drawn, flows):
            for place, flow in enumerate(flows):
                through = abs(sum(part * now for part, now in zip(flow, corner, strict=True)))
                greatest[place] = max(greatest[place], through)
    assert len(loads) == len(flows[0])
    return greatest


def below_it(drawn: Request, device: Request) -> bool:
    """Tell whether any source is named below a device."""
    place = drawn["devices"].index(device)
    return any(shared_out(drawn, {})[place])


def shared_out(drawn: Request, shares: dict[str, float]) -> list[Row]:
    """Return for each device how much of each source flows through it."""
    names = [one["id"] for one in drawn["devices"]]
    flows = [[0.0] * len(drawn["loads"]) for _ in names]
    for number, load in enumerate(drawn["loads"]):
        flows[names.index(load["below"])][number] += 1.0
    for place in reversed(range(len(names))):
        above = [name for name in drawn["devices"][place]["below"].split(",") if name]
        first = shares.get(names[place], 1.0)
        for name, share in zip(above, (first, 1.0 - first), strict=False):
            for number, part in enumerate(flows[place]):
                flows[names.index(name)][number] += share * part
    return flows


def corners(drawn: Request, flows: list[Row]) -> list[Row]:
    """Return every corner of the currents that no detector opens at."""
    sizes = [one["most"] for one in drawn["loads"]]
    count = len(sizes)
    walls = [([float(n == k) for n in range(count)], sizes[k]) for k in range(count)]
    for place, flow in enumerate(flows):
        if drawn["devices"][place]["form"] == "rdc-dd":
            walls.append((flow, DETECTS))
    sided = [(row, side * end) for row, end in walls for side in (1.0, -1.0)]
    found = (solved(chosen) for chosen in combinations(sided, count))
    return [one for one in found if one is not None and inside(one, walls)]


def inside(point: Row, walls: list[tuple[Row, float]]) -> bool:
    """Tell whether no source gives more than it can, and no detector opens."""
    return all(
        abs(sum(a * b for a, b in zip(row, point, strict=True))) <= end + 1e-6 for row, end in walls
    )


def solved(equations: tuple[tuple[Row, float], ...]) -> Row | None:
    """Return where some planes cross in one point, or None."""
    rows = [[*row, end] for row, end in equations]
    for column in range(len(rows)):
        pivot = max(range(column, len(rows)), key=lambda one: abs(rows[one][column]))
        if abs(rows[pivot][column]) < 1e-9:
            return None
        rows[column], rows[pivot] = rows[pivot], rows[column]
        rows[column] = [value / rows[column][column] for value in rows[column]]
        for other in range(len(rows)):
            factor = rows[other][column] if other != column else 0.0
            rows[other] = [a - factor * b for a, b in zip(rows[other], rows[column], strict=True)]
    return [row[-1] for row in rows]


def judged(drawn: Request) -> list[Request]:
    """Return what the series checker answers of each device."""
    loads = [{key: one[key] for key in one if key != "most"} for one in drawn["loads"]]
    reply = run("series", {"devices": drawn["devices"], "loads": loads})
    return list(reply["answer"]["devices"])


def refuse_false_passes(drawn: Request) -> None:
    """Fail where a device passes through which more can flow than its type bears."""
    for device, found, most in zip(drawn["devices"], judged(drawn), walked(drawn), strict=True):
        blinded = device["form"] == "rccb" and most > BEARS[device["type"]] + 1e-6
        assert not (blinded and found["verdict"] == "pass"), (device, found, most)


@settings(deadline=None, max_examples=150)
@given(drawn=arrangements(parallel=False))
def test_no_device_passes_that_the_walk_finds_blinded(drawn: Request) -> None:
    """In a tree."""
    refuse_false_passes(drawn)


@settings(deadline=None, max_examples=150)
@given(drawn=arrangements(parallel=True))
def test_nor_where_devices_stand_in_parallel(drawn: Request) -> None:
    """Of the paths, each carries none, half or all of what flows."""
    refuse_false_passes(drawn)


@settings(deadline=None, max_examples=150)
@given(drawn=arrangements(parallel=False))
def test_in_a_tree_the_figure_is_that_of_the_walk(drawn: Request) -> None:
    """So nothing is judged worse than it can be, either; what is not named is another matter."""
    assume(all(below_it(drawn, one) for one in drawn["devices"] if one["form"] == "rdc-dd"))
    for found, most in zip(judged(drawn), walked(drawn), strict=True):
        told = found["greatest_unseen_dc"]
        if found["greatest_unseen_dc"] == "not known":
            continue
        figure = told["value"] if isinstance(told, dict) else most
        assert min(figure, UNBOUNDED) == pytest.approx(min(most, UNBOUNDED), abs=1e-3)
        assert isinstance(told, dict) or most >= UNBOUNDED - DETECTS


POINT = {"load": "ev-charge-point"}
UP = {"id": "up", "form": "rdc-dd", "type": "A", "rated_residual_current": "6 mA"}


def type_a(name: str, below: str = "") -> Request:
    """Return a type A of 30 mA."""
    return {"id": name, "below": below, "type": "A", "rated_residual_current": "30 mA"}


def test_detection_above_two_charge_points_keeps_neither_to_6_ma() -> None:
    """+50 mA in one and −45 mA in the other leave 5 mA in the detection: it holds."""
    devices = [UP, type_a("a", "up"), type_a("b", "up")]
    loads = [{"below": "a", **POINT}, {"below": "b", **POINT}]
    reply = run("series", {"devices": devices, "loads": loads})

    assert [one["verdict"] for one in reply["answer"]["devices"]] == ["pass", "fail", "fail"]


def test_detection_above_one_charge_point_keeps_it_to_6_ma() -> None:
    """With nothing beside it, the sum is its own."""
    devices = [UP, type_a("a", "up")]
    reply = run("series", {"devices": devices, "loads": [{"below": "a", **POINT}]})

    assert [one["greatest_unseen_dc"]["value"] for one in reply["answer"]["devices"]] == [6.0, 6.0]
    assert reply["outcome"] == "pass"


@pytest.mark.parametrize("detectors", [2, 3])
def test_detectors_in_parallel_let_pass_their_sum(detectors: int) -> None:
    """The DC divides: just under 6 mA in each."""
    names = [f"r{n}" for n in range(detectors)]
    devices = [type_a("t"), *({**UP, "id": name, "below": "t"} for name in names)]
    devices.append(type_a("a", ",".join(names)))
    reply = run("series", {"devices": devices, "loads": [{"below": "a", **POINT}]})
    by_name = {one["id"]: one for one in reply["answer"]["devices"]}

    for name in ("t", "a"):
        assert by_name[name]["greatest_unseen_dc"]["value"] == 6.0 * detectors
        assert by_name[name]["verdict"] == "fail"


def test_detectors_in_parallel_pass_no_more_than_is_given() -> None:
    """One charge point with 6 mA detection of its own, behind two more."""
    devices = [type_a("t"), *({**UP, "id": name, "below": "t"} for name in ("p", "q"))]
    devices.append(type_a("a", "p,q"))
    loads = [{"below": "a", **POINT, "dc_protection": "rdc-dd"}]
    reply = run("series", {"devices": devices, "loads": loads})

    assert {one["greatest_unseen_dc"]["value"] for one in reply["answer"]["devices"]} == {6.0}


def test_paths_that_meet_again_below_one_detection_are_kept_to_it() -> None:
    """All of it flows through the detection above, whichever way it takes."""
    devices = [UP, type_a("p", "up"), type_a("q", "up"), type_a("a", "p,q")]
    reply = run("series", {"devices": devices, "loads": [{"below": "a", **POINT}]})

    assert {one["greatest_unseen_dc"]["value"] for one in reply["answer"]["devices"]} == {6.0}
