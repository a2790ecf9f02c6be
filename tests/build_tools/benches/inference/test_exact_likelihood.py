"""The exact likelihood is the chance of what an instrument is drawn to show."""

from __future__ import annotations

from random import Random

import numpy as np
import pytest

from build_tools.benches.inference.exact_likelihood import log_likelihoods
from checkers.domain.device.placed_readings import PlacedReading
from checkers.judgement.inference.weighing.attempts import Noted
from checkers.physics.response.attempt import Attempt
from checkers.physics.response.display import shown_reading
from checkers.physics.response.prediction import Prediction

TIME = Attempt("trip-time", 30.0, 30.0)
RAMP = Attempt("ramp", 30.0, 33.0)
BUTTON = Attempt("button", 30.0, 0.0)
DRAWS = 20_000


def likelihood(prediction: Prediction, attempt: Attempt, shown: str) -> float:
    """Return the likelihood of a shown text for one device."""
    columns = tuple(np.array([one]) for one in prediction[:3])
    noted = Noted("", attempt, PlacedReading(shown, attempt.test).measured)
    return float(np.exp(log_likelihoods(columns, noted)[0]))  # type: ignore[arg-type]  # three columns


@pytest.mark.parametrize(
    ("prediction", "attempt", "unit", "end"),
    [
        (Prediction(0.8, 40.0, 6.0), TIME, "ms", 300),
        (Prediction(0.9, 3.0, 4.0), TIME, "ms", 300),
        (Prediction(0.95, 85.0, 5.0), RAMP, "mA", 90),
    ],
)
def test_everything_that_may_be_shown_is_certain_together(
    prediction: Prediction, attempt: Attempt, unit: str, end: int
) -> None:
    """Each tenth of the display, its least figure and its end have the probability one."""
    tenths = (f"{tenth / 10:.1f} {unit}" for tenth in range(11, 10 * end + 1))
    figures = sum(0.1 * likelihood(prediction, attempt, one) for one in tenths)
    least = likelihood(prediction, attempt, f"1.0 {unit}")

    assert figures + least + likelihood(prediction, attempt, f"> {end} {unit}") == pytest.approx(
        1.0, abs=0.003
    )


@pytest.mark.parametrize(
    ("prediction", "attempt", "shown"),
    [
        (Prediction(0.8, 40.0, 6.0), TIME, "> 300 ms"),
        (Prediction(0.95, 85.0, 5.0), RAMP, "> 90 mA"),
        (Prediction(0.7, 0.0, 1.0), BUTTON, "operates"),
        (Prediction(0.9, 3.0, 4.0), TIME, "1.0 ms"),
    ],
)
def test_a_likelihood_is_how_often_it_is_drawn(
    prediction: Prediction, attempt: Attempt, shown: str
) -> None:
    """Within three standard deviations of a share."""
    random = Random(7)  # noqa: S311  # nothing secret
    drawn = [shown_reading(prediction, attempt, random) for _ in range(DRAWS)]
    stated = likelihood(prediction, attempt, shown)

    deviation = (stated * (1.0 - stated) / DRAWS) ** 0.5
    assert drawn.count(shown) / DRAWS == pytest.approx(stated, abs=3.0 * deviation)
