"""The figures of the model: read strictly, and drawn inside their bounds."""

from __future__ import annotations

from collections.abc import Callable
from copy import deepcopy
from dataclasses import fields
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checkers.domain.errors import DataError
from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.physics.scatter import FILE, SCATTER, ScatterTable, Spread, load_figures

TEXT = read_toml(data_folder() / FILE, FILE)


@given(st.sampled_from([field.name for field in fields(ScatterTable)]), st.floats(-6.0, 6.0))
def test_a_figure_stays_inside_its_bounds(name: str, score: float) -> None:
    """However far out a draw is."""
    figure: Spread = getattr(SCATTER, name)

    assert figure.at(score) >= figure.least or figure.logarithmic
    assert figure.at(score) <= figure.most
    assert figure.at(score) >= 0.0


def test_typical_is_what_a_score_of_zero_gives() -> None:
    """For both laws."""
    assert SCATTER.lag.at(0.0) == SCATTER.lag.typical
    assert SCATTER.opening_time.at(0.0) == SCATTER.opening_time.typical


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (lambda text: text.pop("lag"), "is missing"),
        (lambda text: text.update(luck={"typical": 1}), "no figure of the model"),
        (lambda text: text["lag"].pop("typical"), "no typical value"),
        (lambda text: text["lag"].update(typical="18 parsec"), "unit of time"),
        (lambda text: text["lag"].update(law="bell"), "bell"),
        (lambda text: text["lag"].update(evidence="hunch"), "hunch"),
        (lambda text: text["lag"].update(colour="red"), "unknown key"),
        (lambda text: text["lag"].update(document="hearsay"), "unknown source"),
    ],
)
def test_a_broken_file_is_refused_by_name(
    change: Callable[[dict[str, Any]], object], words: str
) -> None:
    """File, row and fault are named."""
    text = deepcopy(TEXT)
    change(text)

    with pytest.raises(DataError, match=words) as refused:
        load_figures(text)

    assert refused.value.file == FILE
