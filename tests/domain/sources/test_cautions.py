"""Cautions: what stands on every page and every printed record."""

from __future__ import annotations

from typing import Any

import pytest

from checkers import run
from checkers.catalogue import CHECKERS
from checkers.domain.loads.registry import LOADS
from checkers.domain.sources.cautions import (
    CAUTIONS,
    EVERYWHERE,
    HAZARDS,
    cautions_against,
    cautions_for,
)

SUBJECTS = ("live work", "authorised", "prove dead", "failed in service", "consent", "earth")


def test_every_place_shows_the_general_cautions() -> None:
    """A page nobody thought of still carries them."""
    shown = " ".join(cautions_for("a page nobody thought of"))

    assert [word for word in SUBJECTS if word not in shown] == []


def test_a_checker_with_dangers_of_its_own_shows_them_first() -> None:
    """Injecting DC belongs on an isolated rig."""
    assert "isolated" in cautions_for("demonstration")[0]


def test_the_reader_of_an_ac_test_is_told_that_it_says_nothing_of_dc() -> None:
    """A pass must not be taken for fitness."""
    assert any(
        "does not show that a device copes with DC" in one for one in cautions_for("readings")
    )


def test_every_checker_built_so_far_has_cautions() -> None:
    """None is forgotten."""
    assert all(cautions_for(checker.slug) for checker in CHECKERS)


def test_the_long_form_says_more_than_the_short_one() -> None:
    """The safety page explains what a record only names."""
    assert all(len(caution.long) > len(caution.short) for caution in CAUTIONS)
    assert any(EVERYWHERE in caution.where for caution in CAUTIONS)


def test_every_hazard_has_a_caution_and_some_equipment() -> None:
    """None is named that no page shows."""
    assert {hazard for load in LOADS.values() for hazard in load.hazards} == HAZARDS


def about(load: str) -> dict[str, dict[str, Any]]:
    """Return a request about a kind of equipment to each checker that takes equipment."""
    return {
        "type-for-load": {"load": load},
        "leakage-budget": {"items": [{"load": load}]},
        "series": {"devices": [{"id": "a"}], "loads": [{"below": "a", "load": load}]},
    }


@pytest.mark.parametrize("load", LOADS)
@pytest.mark.parametrize("slug", about(""))
def test_a_reply_about_equipment_carries_its_cautions(slug: str, load: str) -> None:
    """Whichever checker is asked, once each."""
    shown = run(slug, about(load)[slug])["cautions"]

    assert set(cautions_against(LOADS[load].hazards)) <= set(shown)
    assert len(shown) == len(set(shown))


def said(key: str) -> str:
    """Return all the words of a caution."""
    return next(f"{one.short} {one.long}" for one in CAUTIONS if one.key == key)


@pytest.mark.parametrize(
    ("key", "words"),
    [
        ("capacitors", ("manufacturer states", "prove dead", "rated for that DC voltage")),
        ("modules", ("DC isolator", "never part a DC connector under load")),
        ("battery", ("cannot be made dead", "insulated tools", "no jewellery", "arc")),
        ("vehicle", ("Unplug", "insulation test", "adapter that stands for one")),
        ("lost-pen", ("no RCD sees it", "outdoors")),
        ("own-source", ("one place only", "button", "change-over", "every mode")),
        ("medical-it", ("group 2", "Do not test it", "tell the person in charge")),
    ],
)
def test_a_caution_of_equipment_says_what_to_do(key: str, words: tuple[str, ...]) -> None:
    """What a licensed person expects to read there (common practice)."""
    assert [word for word in words if word not in said(key)] == []


def test_there_is_one_rule_for_smooth_dc_on_site() -> None:
    """Allowed for a type B and for detection, under conditions; to show blinding, on a rig only."""
    test, rig = said("dc-test"), said("dc-rig")

    assert all(word in test for word in ("type B", "6 mA detection", "upstream", "repeat"))
    assert "To show what DC does" in rig
    for place in ("smooth-dc", "b", "b-plus", "dc-detection", "test-plan"):
        assert any("smooth DC only a type B" in one for one in cautions_for(place)), place


def test_a_clamp_that_cannot_resolve_the_limit_proves_nothing() -> None:
    """6 mA is what a type A bears (IEC 60364-5-53, 531.3.3): 0.0 A on a coarse clamp is no 0."""
    for place in ("blinding", "loads", "readings", "explain", "practice", "troubleshooting"):
        assert any("must resolve 1 mA" in one for one in cautions_for(place)), place


def test_the_voltage_of_a_test_on_an_electrode_is_worked_out_right() -> None:
    """50 V / 30 mA is the greatest electrode; five times 30 mA through it puts 250 V on metal."""
    volts = 5 * 30 * (50 / 30)

    assert f"{volts:.0f} V" in said("electrode-voltage")
    assert any("25 V" in one for one in cautions_for("test-plan"))
