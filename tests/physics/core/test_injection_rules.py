"""The rules of the injection set-up, and the refusal of a file that is not whole."""

from __future__ import annotations

from typing import Any

import pytest

from checkers.domain.errors import DataError
from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.physics.core.injection_rules import INJECTION, load_injection_rules


def raw_file() -> dict[str, Any]:
    """The data file as it stands."""
    return read_toml(data_folder() / "injection.toml", "injection.toml")


def test_every_rule_has_a_source_and_a_reason() -> None:
    """No limit stands without a document and words for it."""
    rules = (
        INJECTION.supply,
        INJECTION.current_limit,
        INJECTION.resistance,
        INJECTION.heat,
        INJECTION.margin,
    )

    for rule in rules:
        assert rule.citation.document
        assert rule.note


def test_the_hottest_resistor_allowed_has_a_rating() -> None:
    """Twice the greatest heat is a rating that is made."""
    assert INJECTION.power_ratings[-1] >= INJECTION.margin.value * INJECTION.heat.value


@pytest.mark.parametrize(
    ("place", "change", "words"),
    [
        ("supply", {"most": "60 mA"}, "unit of voltage"),
        ("supply", {"document": "a leaflet"}, "document"),
        ("heat", {"most": "0 W"}, "above zero"),
        ("power_ratings", {"values": ["1 W", "0.5 W"]}, "rise"),
        ("power_ratings", {"values": ["1 V"]}, "unit of power"),
        ("preferred_values", {"values": [10, 10]}, "rise"),
        ("preferred_values", {"values": ["10"]}, "whole numbers"),
        ("margin", {"colour": "red"}, "unknown key 'colour'"),
    ],
)
def test_a_broken_file_is_refused_by_name(place: str, change: dict[str, Any], words: str) -> None:
    """A wrong unit, an unknown word, a list out of order: each stops the loading."""
    text = raw_file()
    text[place] = {**text[place], **change}

    with pytest.raises(DataError, match=words):
        load_injection_rules(text, "injection.toml")


def test_a_missing_table_is_refused_by_name() -> None:
    """Without the limit of the supply nothing is loaded."""
    text = raw_file()
    del text["supply"]

    with pytest.raises(DataError, match="supply"):
        load_injection_rules(text, "injection.toml")
