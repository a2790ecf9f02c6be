"""What is offered as a change really mends the arrangement, and no smaller set does."""

from __future__ import annotations

from itertools import combinations
from typing import Any

from hypothesis import given, settings

from checkers import run
from checkers.judgement.series.change.changes import Change, changes_at, detections
from checkers.judgement.series.change.efforts import EFFORTS
from checkers.judgement.series.change.least_change import Mend, least_changes, state_of
from tests.judgement.series.trees import arranged, trees

QUICK = settings(deadline=None, max_examples=60)


def point(below: str, **more: Any) -> dict[str, Any]:
    """Return a charge point on a device."""
    return {"below": below, "load": "ev-charge-point", **more}


def device(name: str, below: str, kind: str, rated: str = "30 mA") -> dict[str, Any]:
    """Return a device of a request."""
    return {"id": name, "below": below, "type": kind, "rated_residual_current": rated}


@QUICK
@given(request=trees(most=5))
def test_after_each_way_offered_nothing_fails(request: dict[str, Any]) -> None:
    """Judged again as a whole, with no device open that was not so before."""
    arrangement = arranged(request)
    before = state_of(arrangement)

    for way in least_changes(arrangement):
        changed = arrangement
        for change in way.changes:
            changed = change.made_to(changed)
        after = state_of(changed)
        assert not after.failing
        assert after.open - after.idle <= before.open


@QUICK
@given(request=trees(most=4))
def test_no_single_change_mends_where_several_are_offered(request: dict[str, Any]) -> None:
    """Fewest changes come first: tried again here without the search's short cuts."""
    arrangement = arranged(request)
    ways = least_changes(arrangement)
    if not ways or len(ways[0].changes) == 1:
        return
    before = state_of(arrangement)
    singles: list[Change] = list(detections(arrangement))
    for place in range(len(arrangement.devices)):
        singles += changes_at(arrangement, place)

    assert not any(state_of(one.made_to(arrangement)).mends(before) for one in singles)


@QUICK
@given(request=trees(most=5))
def test_where_something_fails_a_way_is_found(request: dict[str, Any]) -> None:
    """A type B in place of each device that fails is always a way, if not the least."""
    arrangement = arranged(request)
    failing = state_of(arrangement).failing

    assert bool(failing) == bool(least_changes(arrangement))


def test_the_least_work_comes_first() -> None:
    """Of several ways with as many changes, none is shown before one of less work."""
    devices = [device("m", "", "A"), device("a", "m", "A"), device("b", "m", "A")]
    loads = [point("a", dc_protection="rdc-dd"), point("b", dc_protection="rdc-dd")]
    ways = least_changes(arranged({"devices": devices, "loads": loads}))

    assert len(ways) == 3
    assert all(one.effort <= other.effort for one, other in combinations(ways, 2))
    assert EFFORTS["beside"] == ways[0].effort


def test_detection_mends_a_whole_chain_at_once() -> None:
    """Where the source is bounded, every device above it is put right."""
    devices = [device("m", "", "A", "300 mA"), device("s", "m", "A"), device("e", "s", "A")]
    (way, *_) = least_changes(arranged({"devices": devices, "loads": [point("e")]}))

    assert way.words == (
        "add 6 mA DC detection that opens the supply of Electric vehicle charge point (mode 3)",
    )


def test_several_faults_are_mended_together() -> None:
    """Two circuits on their own devices, each with a source that its type does not see."""
    devices = [device("a", "", "A"), device("b", "", "AC")]
    loads = [
        {"below": "a", "load": "three-phase-drive"},
        {"below": "b", "load": "switched-mode-supply"},
    ]
    (way, *_) = least_changes(arranged({"devices": devices, "loads": loads}))

    assert set(way.words) == {
        "put a type B in place of a (type A)",
        "put a type A in place of b (type AC)",
    }


def test_where_many_fail_each_is_put_right() -> None:
    """More than three together are no longer searched: each device gets what it needs."""
    devices = [device(f"d{n}", "", "A") for n in range(6)]
    loads = [{"below": f"d{n}", "load": "three-phase-drive"} for n in range(6)]
    (way,) = least_changes(arranged({"devices": devices, "loads": loads}))

    assert len(way.changes) == 6


def test_the_words_of_a_mend_make_a_sentence() -> None:
    """They stand as what to do next."""
    mend = Mend((), ("put a type B in place of a", "feed b from beside c"))

    assert mend.sentence == "Put a type B in place of a; and feed b from beside c."


def test_nothing_is_offered_where_nothing_fails() -> None:
    """Sound, and not known, are no reason to change anything."""
    sound = {"devices": [device("a", "", "A")], "loads": [point("a", dc_protection="rdc-dd")]}
    unknown = {"devices": [device("a", "", "A")], "loads": [{"below": "a", "load": "pv-inverter"}]}

    assert not least_changes(arranged(sound))
    assert not least_changes(arranged(unknown))


def test_moving_a_branch_warns_of_the_protection_it_loses() -> None:
    """Above all in TT, where the device above may be its only fault protection."""
    request = {
        "devices": [device("m", "", "A", "300 mA"), device("b", "m", "B")],
        "loads": [{"below": "b", "load": "three-phase-drive"}],
    }
    reply = run("series", request)

    assert "feed b from beside m, not from below" in reply["answer"]["least_change"]
    assert any("loses what that device gave it" in one for one in reply["cautions"])
