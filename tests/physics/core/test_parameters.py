"""The figures of the cores, and the refusal of a file that is not whole."""

from __future__ import annotations

from typing import Any

import pytest

from checkers.domain.device.device import SENSES_SMOOTH_DC, DeviceType
from checkers.domain.errors import DataError
from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.physics.core.parameters import CORE, Scatter, load_core_file


def raw_file() -> dict[str, Any]:
    """The data file as it stands."""
    return read_toml(data_folder() / "core.toml", "core.toml")


def test_every_type_that_does_not_sense_dc_has_every_core() -> None:
    """Types AC, A and F each have a typical core and both ends of the spread."""
    types = set(DeviceType) - SENSES_SMOOTH_DC - {DeviceType.UNKNOWN}

    assert set(CORE.cores) == {(one, scatter) for one in types for scatter in Scatter}


def test_every_figure_of_a_core_is_explained() -> None:
    """No core has a figure whose meaning is not written down."""
    figures = {key for core in raw_file()["core"] for key in core}

    assert figures - {"types", "scatter", "evidence", "note"} == set(CORE.parameters)


def test_the_least_knee_counts_for_a_sensitive_device_only() -> None:
    """A type A core of 10 mA has a higher knee for its rating than one of 300 mA."""
    data = CORE.cores["A", Scatter.TYPICAL]

    assert data.scaled(9.0).knee == pytest.approx(110.0 / (2.0**0.5 * 9.0), rel=1e-3)
    assert data.scaled(270.0).knee == data.knee


def test_bench_points_are_marked_as_common_practice() -> None:
    """No bench point claims a published source."""
    assert {point.citation.evidence for point in CORE.bench_points} == {"common-practice"}


@pytest.mark.parametrize(
    ("place", "change", "words"),
    [
        ("button", {"greatest_of_rated": "much"}, "greatest_of_rated"),
        ("button", {"document": "a leaflet"}, "document"),
        ("own_trip_current", {"least_of_rated": 0}, "above zero"),
        ("in_print", {"colour": "red"}, "unknown key 'colour'"),
        ("model", {"forms": ["toaster"]}, "toaster"),
    ],
)
def test_a_broken_file_is_refused_by_name(place: str, change: dict[str, Any], words: str) -> None:
    """A wrong kind, an unknown word and an unknown key each stop the loading."""
    text = raw_file()
    text[place] = {**text[place], **change}

    with pytest.raises(DataError, match=words):
        load_core_file(text, "core.toml")


def test_a_missing_table_is_refused_by_name() -> None:
    """Without the table of the button nothing is loaded."""
    text = raw_file()
    del text["button"]

    with pytest.raises(DataError, match="button"):
        load_core_file(text, "core.toml")
