"""What people write down for a reading is understood, asked about, or refused."""

from __future__ import annotations

import pytest

from checkers.domain.quantities.measured_value import Said, parse_measured
from checkers.domain.quantities.typed_numbers import NotAQuantity

MS = [
    ("28", Said.FIGURE, 28),
    ("28 ms", Said.FIGURE, 28),
    ("28mS", Said.FIGURE, 28),
    ("28 mSec", Said.FIGURE, 28),
    ("0.028 s", Said.FIGURE, 28),
    ("0,028 s", Said.FIGURE, 28),
    ("28\u00a0ms", Said.FIGURE, 28),
    ("28\u2009ms", Said.FIGURE, 28),
    (">300", Said.MORE_THAN, 300),
    ("> 300 ms", Said.MORE_THAN, 300),
    ("greater than 300", Said.MORE_THAN, 300),
    (">1999", Said.MORE_THAN, 1999),
    ("> 1 999 ms", Said.MORE_THAN, 1999),
    ("< 40 ms", Said.LESS_THAN, 40),
]
MA = [
    ("27", 27),
    ("27 mA", 27),
    ("27ma", 27),
    ("0.027 A", 27),
    ("0,03A", 30),
    ("1000 µA", 1),
    ("1000 \u03bcA", 1),
]
WORDS = [
    ("no trip", Said.NO_TRIP),
    ("Did Not Trip", Said.NO_TRIP),
    ("n/t", Said.NOT_TESTED),
    ("N/T", Said.NOT_TESTED),
    ("not tested", Said.NOT_TESTED),
    ("no action", Said.DOES_NOT_OPERATE),
    ("does nothing", Said.DOES_NOT_OPERATE),
    ("no response", Said.DOES_NOT_OPERATE),
    ("tripped", Said.TRIPPED),
    ("test not completed", Said.NO_RESULT),
    # Short code words for an aborted test are read in silence, and shown nowhere.
    ("trp", Said.NO_RESULT),
    ("Limit", Said.NO_RESULT),
    ("lim", Said.NO_RESULT),
    ("aborted", Said.NO_RESULT),
]


@pytest.mark.parametrize(("typed", "said", "value"), MS)
def test_a_time_is_read_in_every_notation(typed: str, said: Said, value: float) -> None:
    """Units, case, decimal commas and odd spaces do not change a time."""
    measured = parse_measured(typed, "trip_time")

    assert (said, value, "ms") == (measured.said, measured.value, measured.unit)


@pytest.mark.parametrize(("typed", "value"), MA)
def test_a_current_is_read_in_every_notation(typed: str, value: float) -> None:
    """Units, case, decimal commas and both kinds of mu do not change a current."""
    measured = parse_measured(typed, "trip_current")

    assert (value, "mA") == (measured.value, measured.unit)


@pytest.mark.parametrize(("typed", "said"), WORDS)
def test_words_stand_for_results(typed: str, said: Said) -> None:
    """No trip, tripped, and tests without a result are told apart."""
    assert said is parse_measured(typed, "trip_time").said


@pytest.mark.parametrize(
    "typed",
    ["28.5/18", "28.5 / 18 ms", "28 and 18", "38.2;18.8", "1,999 ms", "28 182", "28 18", "9 8"],
)
def test_a_text_with_two_meanings_is_asked_about(typed: str) -> None:
    """Two figures, or a comma that could part thousands, come back as a question."""
    measured = parse_measured(typed, "trip_time")

    assert measured.said is Said.UNCLEAR
    assert measured.question


@pytest.mark.parametrize(
    "typed", ["nan", "inf", "-28", "1e9", "0.028", "0", "twelve", "28 furlongs", "999999 s", "٢٨x"]
)
def test_a_text_beyond_belief_is_refused(typed: str) -> None:
    """NaN, infinity, negatives, exponents and absurd figures never become a reading."""
    with pytest.raises(NotAQuantity):
        parse_measured(typed, "trip_time")


def test_a_current_written_for_a_time_keeps_its_unit() -> None:
    """A mix-up of units is kept as written, so that it can be asked about."""
    assert parse_measured("33 mA", "trip_time").unit == "mA"


@pytest.mark.parametrize(
    "typed", ["no trip by 30 mA", "No trip by 30", "did not trip up to 30mA", "held at 0.03 A"]
)
def test_a_ramp_that_ended_without_a_trip_is_a_bound(typed: str) -> None:
    """No trip by 30 mA says that the trip current is more than 30 mA."""
    measured = parse_measured(typed, "trip_current")

    assert (measured.said, measured.value, measured.unit) == (Said.MORE_THAN, 30, "mA")


@pytest.mark.parametrize(("typed", "value"), [("33 ms.", 33), ("28.", 28), (".4 s", 400)])
def test_a_full_stop_ends_a_reading_and_a_point_begins_one(typed: str, value: float) -> None:
    """A point before the digits is a decimal point; a stop after them says nothing."""
    assert value == parse_measured(typed, "trip_time").value


@pytest.mark.parametrize("typed", [".4", ",4", ". 4", "..4"])
def test_a_leading_point_is_never_dropped(typed: str) -> None:
    """.4 is not 4: without its unit it is refused, as 0.4 is."""
    with pytest.raises(NotAQuantity):
        parse_measured(typed, "trip_time")
