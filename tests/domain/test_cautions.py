"""Cautions: what stands on every page and every printed record."""

from __future__ import annotations

from checkers.catalogue import CHECKERS
from checkers.domain.cautions import CAUTIONS, EVERYWHERE, cautions_for

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
