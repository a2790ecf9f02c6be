"""The response model against published limits, surveys, practice and SciPy.

Limits: IEC 61008-1:2010 with A1 and A2, table 1 and the operating bands, as two published
texts quote them (secondary). Surveys: 607 devices in the United Kingdom, 2007, and 3231 in
Austria, 1989 to 1991 (secondary). Times of one device: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import cos, log, radians, sqrt

import pytest
from scipy.integrate import solve_ivp
from scipy.stats import lomax, norm

from checkers.domain.causes import CAUSES
from checkers.domain.quantities.measured_value import Measured, Said
from checkers.judgement.inference.weighing.likelihood import (
    MISREAD,
    NEIGHBOURS,
    USUAL,
    log_likelihoods,
)
from checkers.judgement.inference.weighing.samples import Columns
from checkers.physics.condition.knowledge import Known
from checkers.physics.condition.random_draws import even_lots
from checkers.physics.condition.sound_device import in_good_order
from checkers.physics.condition.state import Unit
from checkers.physics.response.attempt import Attempt
from checkers.physics.response.prediction import Prediction, predict
from checkers.physics.response.seen_current import Mixed, needed, seen
from checkers.physics.response.timing import below, trip

GENERAL = Known(rated=30.0, type="A", loads="off")
SELECTIVE = Known(rated=100.0, type="A", delay="S", loads="off")
# Multiple of the rating, greatest time [ms]: general type.
GENERAL_TIMES = [(1.0, 300.0), (2.0, 150.0), (5.0, 40.0)]
# Multiple, least and greatest time [ms]: selective type.
SELECTIVE_TIMES = [(1.0, 130.0, 500.0), (2.0, 60.0, 200.0), (5.0, 50.0, 150.0)]
NO_READING_ERROR = 1e-6
DEVICES = 2000


def predictions(known: Known, attempt: Attempt) -> list[Prediction]:
    """Return what many sound devices would show."""
    return [predict(in_good_order(known, lots), attempt) for lots in even_lots(DEVICES)]


def at(multiple: float, rated: float) -> Attempt:
    """Return a trip time, without the instrument's own scatter."""
    current = multiple * rated
    return Attempt("trip-time", rated, current, loads="off", time_uncertainty=NO_READING_ERROR)


def share_below(found: Sequence[Prediction], limit: float) -> float:
    """Return the share of devices that trip within a time [ms]."""
    return sum(one.shows * below((limit - one.mean) / one.spread) for one in found) / len(found)


@pytest.mark.parametrize(("multiple", "most"), GENERAL_TIMES)
def test_sound_general_devices_keep_the_published_times(multiple: float, most: float) -> None:
    """More than 99 in 100 devices in good order trip within the limit."""
    assert share_below(predictions(GENERAL, at(multiple, 30.0)), most) > 0.99


@pytest.mark.parametrize(("multiple", "least", "most"), SELECTIVE_TIMES)
def test_sound_selective_devices_keep_both_published_times(
    multiple: float, least: float, most: float
) -> None:
    """More than 97 in 100 neither trip too early nor too late."""
    found = predictions(SELECTIVE, at(multiple, 100.0))

    assert share_below(found, most) - share_below(found, least) > 0.97


@pytest.mark.parametrize(
    ("waveform", "least", "most"),
    [
        ("ac", 15.0, 30.0),
        ("half-wave", 10.5, 42.0),
        ("half-wave-90", 7.5, 42.0),
        ("half-wave-135", 3.3, 42.0),
    ],
)
def test_sound_devices_ramp_inside_the_published_bands(
    waveform: str, least: float, most: float
) -> None:
    """A 30 mA type A: 0.5 to 1, 0.35 to 1.4, 0.25 to 1.4 and 0.11 to 1.4 times the rating."""
    ramp = Attempt("ramp", 30.0, 50.0, waveform, loads="off")
    found = predictions(GENERAL, ramp)

    assert share_below(found, most) - share_below(found, least) > 0.98


def test_sound_type_b_devices_trip_inside_the_published_band_of_smooth_dc() -> None:
    """IEC 62423: 0.5 to 2 times the rating, 15 to 60 mA for 30 mA (secondary)."""
    ramp = Attempt("ramp", 30.0, 66.0, "smooth-dc", loads="off")
    found = predictions(Known(rated=30.0, type="B", loads="off"), ramp)

    assert share_below(found, 60.0) - share_below(found, 15.0) > 0.99


@pytest.mark.parametrize(("multiple", "most"), [(2.0, 300.0), (4.0, 150.0), (10.0, 40.0)])
def test_sound_type_b_devices_keep_the_published_times_on_smooth_dc(
    multiple: float, most: float
) -> None:
    """IEC 62423, general type: 300, 150 and 40 ms at 2, 4 and 10 times the rating (secondary)."""
    test = replace(at(multiple, 30.0), waveform="smooth-dc", start="+")
    found = predictions(Known(rated=30.0, type="B", loads="off"), test)

    assert share_below(found, most) > 0.97


def test_a_usual_thirty_milliamp_device_trips_near_twenty_two() -> None:
    """About 22 mA, as a trade article says of 30 mA devices (secondary)."""
    found = sorted(one.mean for one in predictions(GENERAL, Attempt("ramp", 30.0, 33.0)))

    assert found[DEVICES // 2] == pytest.approx(22.0, abs=0.5)


@pytest.mark.parametrize(
    ("current", "time"), [(30.0, 45.0), (50.0, 30.0), (100.0, 25.0), (150.0, 20.0)]
)
def test_times_of_one_device_in_practice_follow_the_law(current: float, time: float) -> None:
    """About 45, 30, 25 and 20 ms at 30, 50, 100 and 150 mA; it held at 20 mA."""
    unit = Unit(30.0, "A", 23.0, 1.0, 18.5, 17.5, 0.0, 60.0)
    found = trip(unit, current / unit.own, at(current / 30.0, 30.0), disturbed=False)
    held = trip(unit, 20.0 / unit.own, at(20.0 / 30.0, 30.0), disturbed=False)

    assert found.mean == pytest.approx(time, abs=3.0)
    assert held.probability < 0.01


@pytest.mark.parametrize("overcurrent", [1.1, 1.36, 2.0, 6.8])
def test_the_law_is_that_of_a_lag_of_first_order(overcurrent: float) -> None:
    """SciPy integrates the lag until it reaches the trip level."""
    lag, opening = 18.0, 12.0

    def reaches(_: float, level: Sequence[float]) -> float:
        return level[0] - 1.0

    reaches.terminal = True  # type: ignore[attr-defined]  # SciPy asks for it so
    solved = solve_ivp(
        lambda _, level: (overcurrent - level) / lag,
        (0.0, 500.0),
        [0.0],
        events=reaches,
        rtol=1e-9,
        atol=1e-12,
    )
    unit = Unit(30.0, "A", 22.0, 1.0, opening, lag, 0.0, 60.0)
    found = trip(unit, overcurrent, at(1.0, 30.0), disturbed=False)

    assert found.mean - opening == pytest.approx(solved.t_events[0][0], rel=1e-5)


def test_leakage_adds_as_a_phasor() -> None:
    """10 mA capacitive and 25 mA resistive make 26.9 mA, not 35 (Pythagoras)."""
    mixed = Mixed(1.0, 0.0, 10.0, 1.0, disturbs=False)

    assert seen(mixed, 25.0) == pytest.approx(26.926, abs=0.001)
    assert seen(mixed, 25.0) == pytest.approx(sqrt(10.0**2 + 25.0**2))


def test_leakage_at_an_angle_follows_the_law_of_cosines() -> None:
    """The sum of two phasors, by school trigonometry."""
    angle = radians(60.0)
    mixed = Mixed(1.0, 8.0 * cos(angle), 8.0 * sqrt(1 - cos(angle) ** 2), 1.0, disturbs=False)
    wanted = sqrt(20.0**2 + 8.0**2 + 2 * 20.0 * 8.0 * cos(angle))

    assert seen(mixed, 20.0) == pytest.approx(wanted)
    assert needed(mixed, wanted) == pytest.approx(20.0)


@pytest.mark.parametrize("value", [18.0, 30.0, 44.0])
def test_a_figure_has_the_density_of_a_normal_distribution(value: float) -> None:
    """SciPy's normal and Lomax distributions, mixed by the share of strays."""
    columns = Columns([0.9], [30.0], [5.0], [1.0], [0.0])
    measured = Measured(Said.FIGURE, value, "ms")
    density = norm.pdf(value, 30.0, 5.0 * NEIGHBOURS)
    stray = lomax.pdf(value, USUAL.tail, scale=0.33 * 300.0)
    wanted = (1 - MISREAD) * 0.9 * density + MISREAD * stray
    found = log_likelihoods(columns, at(1.0, 30.0), measured)

    assert found[0] == pytest.approx(log(wanted))


@pytest.mark.parametrize("bound", [20.0, 40.0, 300.0])
def test_a_bound_has_the_probability_of_all_it_allows(bound: float) -> None:
    """SciPy's distribution functions: what is not shown below the bound is above, or no trip."""
    columns = Columns([0.9], [30.0], [5.0], [1.0], [0.0])
    inside = 0.9 * norm.cdf(bound, 30.0, 5.0)
    beyond = lomax.sf(bound, USUAL.tail, scale=0.33 * 300.0)
    for said, chance, stray in (
        (Said.MORE_THAN, 1 - inside, beyond),
        (Said.LESS_THAN, inside, 1 - beyond),
    ):
        found = log_likelihoods(columns, at(1.0, 30.0), Measured(said, bound, "ms"))

        assert found[0] == pytest.approx(log((1 - MISREAD) * chance + MISREAD * stray))


def test_faults_of_devices_are_as_common_as_the_surveys_found() -> None:
    """2.1 to 3.8 % (United Kingdom, without and with one landlord) up to 6.4 % (Austria)."""
    faults = ("trips-too-high", "trips-too-low", "slow-mechanism", "does-not-open", "button-failed")
    together = sum(CAUSES[code].prior or 0.0 for code in faults)

    assert 0.021 <= together <= 0.064


def test_late_and_dead_devices_are_as_common_as_the_survey_found() -> None:
    """Almost 3 % of 607 devices failed on time (United Kingdom)."""
    late = sum(
        CAUSES[code].prior or 0.0 for code in ("trips-too-high", "slow-mechanism", "does-not-open")
    )

    assert 0.02 <= late <= 0.035
