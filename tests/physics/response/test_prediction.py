"""What each test would show, under each cause."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checkers.domain.causes import CAUSES
from checkers.physics.condition.knowledge import Known
from checkers.physics.condition.random_draws import COLUMNS, Lots, even_lots
from checkers.physics.condition.state import Possible
from checkers.physics.condition.under_cause import CHANGES, under_cause
from checkers.physics.response.attempt import Attempt
from checkers.physics.response.prediction import Prediction, predict

KNOWN = Known(rated=30.0, type="A", loads="on")
AT_ONE = Attempt("trip-time", 30.0, 30.0, loads="on")
AT_FIVE = Attempt("trip-time", 30.0, 150.0, loads="on")
AT_HALF = Attempt("no-trip", 30.0, 15.0, loads="on", window=2000.0)
RAMP = Attempt("ramp", 30.0, 33.0, loads="on", current_uncertainty=1.5)
BUTTON = Attempt("button", 30.0, 0.0, loads="on")
FRACTION = st.floats(0.001, 0.999)
MIDDLE = Lots(*[0.0] * 13, *[0.45] * (COLUMNS - 13))


def middle(cause: str, known: Known = KNOWN, **lots: float) -> Possible:
    """Return the middle of a cause, but for some of its lots."""
    return under_cause(cause, known, MIDDLE._replace(**lots))


def shown(cause: str, attempt: Attempt, **lots: float) -> Prediction:
    """Return what a test would show in the middle of a cause."""
    return predict(middle(cause, KNOWN, **lots), attempt)


def test_every_cause_has_its_change_and_its_words() -> None:
    """The list of causes and the model name the same codes."""
    assert set(CAUSES) == set(CHANGES)


@given(st.sampled_from(sorted(CHANGES)), st.tuples(*[FRACTION] * COLUMNS))
@settings(max_examples=200)
def test_no_draw_leads_to_an_impossible_prediction(cause: str, row: tuple[float, ...]) -> None:
    """Chances lie between 0 and 1, spreads are positive, figures are finite where shown."""
    possible = under_cause(cause, KNOWN, Lots(*row))

    for attempt in (AT_HALF, AT_ONE, AT_FIVE, RAMP, BUTTON):
        found = predict(possible, attempt)
        assert 0.0 <= found.shows <= 1.0 + 1e-9
        assert 0.0 <= found.opens_shown <= 1.0 + 1e-9
        assert 0.0 <= found.opens_unseen <= 1.0 + 1e-9
        assert found.spread > 0.0
        assert found.shows == 0.0 or found.mean < 1e6


def test_a_sound_device_trips_at_its_rating_and_holds_at_half_of_it() -> None:
    """The middle device in good order does what its standard asks."""
    assert shown("in-good-order", AT_ONE).shows > 0.999
    assert shown("in-good-order", AT_HALF).shows < 0.001
    assert shown("in-good-order", RAMP).mean == pytest.approx(21.9, abs=0.3)
    assert shown("in-good-order", BUTTON).shows > 0.999


def test_a_hundred_milliamp_device_passes_five_times_and_holds_at_one_times() -> None:
    """Where 100 mA sits in a 30 mA place, 150 mA trips it and 30 mA does not."""
    assert shown("wrong-device", AT_FIVE, kind=0.1).shows > 0.99
    assert shown("wrong-device", AT_ONE, kind=0.1).shows == 0.0
    assert 50.0 <= shown("wrong-device", RAMP, kind=0.1).mean <= 100.0


def test_dc_raises_the_trip_current_and_the_button_may_still_work() -> None:
    """A blinded device needs more than its rating; the button's current may be enough."""
    assert shown("blinded-by-dc", RAMP).mean > 30.0
    assert shown("blinded-by-dc", AT_ONE).shows < 0.1
    assert shown("blinded-by-dc", BUTTON).shows > 0.9


def test_a_path_to_earth_hides_the_test_current_but_not_the_button() -> None:
    """The button's current runs through the sensor alone, so it works all the same."""
    at_socket = Attempt("ramp", 30.0, 33.0, place="point", current_uncertainty=1.5)
    linked = middle("neutral-earth-path", size=0.95)

    assert predict(linked, at_socket).mean > 45.0
    assert predict(linked, BUTTON).shows > 0.99


def test_leakage_in_step_lowers_the_ramp_and_leakage_against_it_raises_it() -> None:
    """The sign of the phase decides."""
    alone = shown("in-good-order", RAMP).mean

    assert shown("leakage-adds", RAMP).mean < alone - 2.0
    assert shown("leakage-opposes", RAMP).mean > alone + 2.0


def test_a_sticking_device_is_slow_first_and_normal_afterwards() -> None:
    """Only the first operation is held back, where it does not stick again."""
    first = Attempt("trip-time", 30.0, 30.0, loads="on", first=True)
    later = shown("slow-mechanism", AT_ONE, side=0.9).mean

    assert shown("slow-mechanism", first, side=0.9).mean > later + 50.0


def test_where_the_timer_runs_on_the_device_opens_all_the_same() -> None:
    """Nothing is shown, though it opened."""
    found = shown("timer-ran-on", AT_ONE, size=0.99)

    assert found.shows < 0.01
    assert found.opens_unseen > 0.99


def test_a_time_may_belong_to_another_device() -> None:
    """A quicker device of lower rating in series takes the reading."""
    found = shown("other-device-first", RAMP, kind=0.6)

    assert found.opens_shown < 0.01
    assert found.mean < 10.0


def test_swapped_waveforms_swap_both_ways() -> None:
    """Half wave noted and AC set is the same mistake as the other way round."""
    half = Attempt("ramp", 30.0, 46.0, "half-wave", loads="on", current_uncertainty=1.5)
    swapped, right = middle("wrong-waveform", half_wave=1.0), middle("in-good-order", half_wave=1.0)

    assert predict(swapped, half).mean == pytest.approx(predict(right, RAMP).mean)
    assert predict(swapped, RAMP).mean == pytest.approx(predict(right, half).mean)


def test_only_type_b_trips_on_smooth_dc() -> None:
    """A smooth-DC ramp shows nothing on type A."""
    smooth = Attempt("ramp", 30.0, 66.0, "smooth-dc", current_uncertainty=1.5)
    b = middle("in-good-order", Known(rated=30.0, type="B"))

    assert predict(middle("in-good-order"), smooth).shows == 0.0
    assert 15.0 <= predict(b, smooth).mean <= 60.0


def test_the_draws_cover_every_number_evenly_and_are_always_the_same() -> None:
    """A Latin hypercube: each of the equal parts of each fraction holds one draw."""
    lots = even_lots(64)

    assert lots == even_lots.__wrapped__(64)
    assert list(range(64)) == sorted(int(one.phase * 64) for one in lots)
