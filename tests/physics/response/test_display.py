"""Readings drawn as an instrument would show them."""

from __future__ import annotations

from random import Random

from checkers.domain.quantities.measured_value import Said, parse_measured
from checkers.physics.response.attempt import Attempt
from checkers.physics.response.display import shown_reading
from checkers.physics.response.prediction import Prediction

TIME = Attempt("trip-time", 30.0, 30.0)
RAMP = Attempt("ramp", 30.0, 33.0)
HALF = Attempt("no-trip", 30.0, 15.0, window=2000.0)
BUTTON = Attempt("button", 30.0, 0.0)


def draw(prediction: Prediction, attempt: Attempt, count: int = 400) -> list[str]:
    """Return many drawn readings of one test."""
    random = Random(5)  # noqa: S311  # a model's draws
    return [shown_reading(prediction, attempt, random) for _ in range(count)]


def test_figures_scatter_about_the_mean_and_read_back() -> None:
    """A drawn time parses as a figure near what was predicted."""
    values = [parse_measured(one, "trip_time") for one in draw(Prediction(1.0, 30.0, 3.0), TIME)]
    figures = sorted(one.value for one in values if one.said is Said.FIGURE)

    assert len(figures) > 390
    assert 29.0 < figures[len(figures) // 2] < 31.0


def test_no_trip_is_shown_as_the_end_of_the_range() -> None:
    """A device that holds shows more than the window, counter or ramp end."""
    nothing = Prediction(0.0, 0.0, 1.0)

    assert "> 300 ms" in draw(nothing, TIME)
    assert "> 1999 ms" in draw(nothing, HALF)
    assert "> 90 mA" in draw(nothing, RAMP)
    assert "does not operate" in draw(nothing, BUTTON)


def test_the_same_seed_shows_the_same() -> None:
    """Draws repeat."""
    prediction = Prediction(0.5, 30.0, 3.0)

    assert draw(prediction, TIME) == draw(prediction, TIME)
