"""What the readings of several visits tell, and when the next test is due."""

from __future__ import annotations

from math import hypot
from random import Random
from typing import Any

import icalendar
import pytest

from checkers import run

DEVICE = {"type": "A", "rated_residual_current": "30 mA"}
TIMED = {"test": "trip-time", "multiple": 1, "waveform": "ac", "phase": "0"}
FINE = {"time_uncertainty": "3 ms"}


def ask(history: list[dict[str, Any]], **more: Any) -> dict[str, Any]:
    """Return the reply for some readings with their days, under the British rules."""
    request = {"code": "gb", "on": "2026-11-24", "device": DEVICE, "history": history, **more}
    return run("over-the-years", request)


def visits(*values: str, first: int = 2022, **more: Any) -> list[dict[str, Any]]:
    """Return a reading for each November from a first year on."""
    return [
        {**TIMED, "on": f"{first + place}-11-01", "value": value, **more}
        for place, value in enumerate(values)
    ]


def test_scatter_within_the_instrument_is_no_trend() -> None:
    """The newest reading passes, and nothing else is claimed."""
    reply = ask(visits("24 ms", "26 ms", "25 ms", "27 ms", "24 ms"))

    assert reply["outcome"] == "pass"
    assert reply["answer"]["trends"][0]["trend"] == "none beyond the instruments"


def test_a_steady_rise_names_the_year_of_the_limit_with_its_interval() -> None:
    """40 ms more each year from 220 ms: two years to 300 ms."""
    reply = ask(visits("60 ms", "103 ms", "141 ms", "182 ms", "220 ms"), instrument=FINE)
    trend = reply["answer"]["trends"][0]

    assert trend["trend"] == "rising"
    assert trend["limit_reached_in"] == 2028
    assert trend["limit_reached_from"] <= 2028 <= trend["limit_reached_until"]
    assert trend["slope_low"]["value"] < 40 < trend["slope_high"]["value"]
    assert reply["outcome"] == "cannot-say"


def test_a_limit_that_comes_after_the_next_test_is_no_finding() -> None:
    """The same rise, tested every year: the next test comes before the limit."""
    reply = ask(
        visits("60 ms", "103 ms", "141 ms", "182 ms", "220 ms"),
        instrument=FINE,
        timed_test_every="1 year",
    )

    assert not any(one["about"].startswith("trend") for one in reply["findings"])
    assert reply["answer"]["trends"][0]["expected_next"]["value"] == pytest.approx(260, abs=5)


def test_a_worse_instrument_does_not_clear_a_rise_that_the_figures_show() -> None:
    """10 ms more each year: seen to 3 ms, hidden by 60 ms, and no pass; level ones stay one."""
    rising = visits("60 ms", "71 ms", "80 ms", "91 ms", "100 ms")
    coarse = {"time_uncertainty": "60 ms"}
    seen, hidden = ask(rising, instrument=FINE), ask(rising, instrument=coarse)
    level = ask(visits("24 ms", "26 ms", "25 ms", "27 ms", "24 ms"), instrument=coarse)

    assert seen["outcome"] == hidden["outcome"] == "cannot-say"
    assert any("not good enough to tell" in one["says"] for one in hidden["findings"])
    assert level["outcome"] == "pass"


def test_a_hidden_rise_is_a_finding_only_where_the_limit_may_come_first() -> None:
    """Tested again within the year, a line from 100 ms cannot be at 300 ms, unsure as it is."""
    rising = visits("60 ms", "71 ms", "80 ms", "91 ms", "100 ms")
    coarse = {"time_uncertainty": "60 ms"}

    assert ask(rising, instrument=coarse, timed_test_every="1 year")["outcome"] == "pass"
    later = ask(rising, instrument=coarse, timed_test_every="9 years")
    assert later["outcome"] == "cannot-say"


def test_a_ramp_that_falls_runs_towards_its_lower_limit() -> None:
    """Down to half the rating, where the device becomes too sensitive."""
    figures = ("27 mA", "25 mA", "23 mA", "21 mA", "19 mA")
    reply = ask(
        visits(*figures, test="ramp", multiple=None, phase=""),
        instrument={"current_uncertainty": "0.3 mA"},
    )
    trend = reply["answer"]["trends"][0]

    assert trend["trend"] == "falling"
    assert trend["limit_reached_in"] == 2028


def test_two_visits_date_no_limit() -> None:
    """60 ms and 220 ms rise beyond any doubt, and two points have no scatter to go by."""
    reply = ask(visits("60 ms", "220 ms", first=2025), instrument=FINE)
    trend = reply["answer"]["trends"][0]

    assert trend["trend"] == "rising"
    assert "limit_reached_in" not in trend
    assert not any("limit is reached" in one["says"] for one in reply["findings"])
    assert any("larger than the instruments explain" in one["says"] for one in reply["findings"])


@pytest.mark.parametrize(
    ("unit", "value", "repeats", "instrument"),
    [
        ("mA", 22.0, 0.03 * 22.0, {"current_uncertainty": "0.5 mA"}),
        ("ms", 25.0, 1.5, {"time_uncertainty": "1 ms"}),
    ],
    ids=["ramp", "time"],
)
def test_a_device_that_does_not_change_seldom_shows_a_trend(
    unit: str, value: float, repeats: float, instrument: dict[str, str]
) -> None:
    """A device repeats its current to 3 % and its time to 1.5 ms (judgement): five in a hundred.

    With the instrument alone counted it was every second pair of visits.
    """
    random = Random(7)  # noqa: S311  # a simulation
    spread = hypot(repeats, float(next(iter(instrument.values())).split()[0]) / 2.0)
    ramp: dict[str, Any] = {"test": "ramp", "multiple": None, "phase": ""} if unit == "mA" else {}
    seen = changed = 0
    for _ in range(200):
        drawn = (f"{random.gauss(value, spread):.2f} {unit}" for _ in range(2))
        trend = ask(visits(*drawn, **ramp), instrument=instrument)["answer"]["trends"][0]
        seen += trend["trend"] != "none beyond the instruments"
        changed += trend["changed"] != "no"

    assert max(seen, changed) <= 24


def test_a_jump_is_called_larger_than_the_instruments_explain() -> None:
    """From 25 to 90 ms by an instrument good to 3 ms; by one good to 50 ms it is nothing."""
    told = ask(visits("24 ms", "25 ms", "90 ms"), instrument=FINE)
    coarse = ask(visits("24 ms", "25 ms", "90 ms"), instrument={"time_uncertainty": "50 ms"})

    assert any("larger than the instruments explain" in one["says"] for one in told["findings"])
    assert coarse["outcome"] == "pass"


def test_a_start_that_is_not_known_allows_for_half_a_cycle() -> None:
    """8 ms of difference are a change from one start, and may be the other start where not said."""
    told = ask(visits("25 ms", "33 ms"), instrument=FINE)
    untold = ask(visits("25 ms", "33 ms", phase=""), instrument=FINE)

    assert told["answer"]["trends"][0]["changed"] != "no"
    assert untold["answer"]["trends"][0]["changed"] == "no"


def test_a_failure_at_the_newest_visit_fails_whatever_the_years_say() -> None:
    """A bound lies on no line and is judged all the same."""
    reply = ask(visits("24 ms", "26 ms", "> 300 ms"))

    assert reply["outcome"] == "fail"
    assert reply["answer"]["trends"][0]["readings"] == 2


def test_an_old_failure_is_settled_only_by_the_same_test() -> None:
    """A later test from 0° does not settle a failure from 180°; one from either start does."""
    failed = {**TIMED, "phase": "180", "on": "2024-11-01", "value": "> 300 ms"}
    other = {**TIMED, "on": "2026-11-01", "value": "25 ms"}

    assert ask([failed, other])["outcome"] == "fail"
    assert ask([failed, {**other, "phase": "180"}])["outcome"] == "pass"
    assert ask([failed, {**other, "phase": ""}])["outcome"] == "pass"


def test_a_reading_is_judged_by_the_rules_of_its_own_day() -> None:
    """Five times the rating was asked for in Britain in 2015 (BS 7671:2008), and is no more."""
    old = {**TIMED, "multiple": 5, "on": "2015-05-01", "value": "30 ms"}
    reply = ask([old])

    installation = [one for one in reply["findings"] if one["judges"] == "installation-code"]
    assert any("2008" in source["edition"] for one in installation for source in one["sources"])


def test_the_button_is_due_half_a_year_after_it_was_pressed() -> None:
    """BS 7671:2018, 514.12.2 (as quoted): six-monthly; a calendar program reads the day."""
    pressed = {"test": "button", "on": "2026-10-31", "value": "operates"}
    answer = ask([*visits("24 ms", first=2026), pressed], label="Kitchen; ring, RCD 1")["answer"]

    assert answer["next_tests"][0]["due"] == "2027-04-30"
    (event,) = icalendar.Calendar.from_ical(answer["calendar"]).walk("VEVENT")
    assert str(event["SUMMARY"]) == "Test button: Kitchen; ring, RCD 1"
    assert event.decoded("DTSTART").isoformat() == "2027-04-30"


def test_a_button_never_pressed_is_due_today() -> None:
    """No record of it is no reason to wait."""
    assert ask(visits("24 ms", first=2026))["answer"]["next_tests"][0]["due"] == "2026-11-24"


def test_an_overdue_test_is_a_finding() -> None:
    """Pressed two years ago, due a year and a half ago: nothing is known of today."""
    pressed = {"test": "button", "on": "2024-11-01", "value": "operates"}
    reply = ask([*visits("24 ms", first=2026), pressed])

    assert reply["outcome"] == "cannot-say"
    assert any("overdue since 2025-05-01" in one["says"] for one in reply["findings"])
    (button,) = (one for one in reply["answer"]["next_tests"] if one["test"] == "button")
    assert (button["due"], button["overdue_since"]) == ("2026-11-24", "2025-05-01")
    assert "20250501" not in reply["answer"]["calendar"]


# Queensland (as a secondary source gives it): construction work, fixed: button monthly, timed
# yearly; portable: button each day before use, timed every three months.
@pytest.mark.parametrize(
    ("form", "dates"),
    [
        ("rcbo", {"button": "2026-12-01", "trip-time": "2027-11-01"}),
        ("portable", {"button": "2026-11-02", "trip-time": "2027-02-01"}),
    ],
)
def test_the_kind_of_place_and_device_decides_the_interval(
    form: str, dates: dict[str, str]
) -> None:
    """The same readings, fixed and portable."""
    pressed = {"test": "button", "on": "2026-11-01", "value": "operates"}
    reply = ask(
        [*visits("24 ms", first=2026), pressed],
        code="au",
        place="construction work",
        device={**DEVICE, "form": form},
        on="2026-11-02",
    )

    assert dates == {one["test"]: one["due"] for one in reply["answer"]["next_tests"]}


def test_without_the_kind_of_place_the_code_cannot_say_when() -> None:
    """The finding lists the places to choose from, and there is no calendar."""
    reply = ask(visits("24 ms", first=2026), code="au")

    assert any("construction work" in one.get("do_next", "") for one in reply["findings"])
    assert "calendar" not in reply["answer"]


def test_the_order_of_the_readings_changes_nothing() -> None:
    """They are put in order by their days."""
    history = visits("24 ms", "90 ms", "25 ms", "27 ms")

    assert ask(history) == ask(history[::-1])


@pytest.mark.parametrize(
    ("bad", "field"),
    [
        ({"history": []}, "history"),
        ({"history": [{**TIMED, "value": "28 ms"}]}, "history[0].on"),
        ({"history": [{**TIMED, "on": "2027-01-01", "value": "28 ms"}]}, "history[0].on"),
        ({"history": [{**TIMED, "on": "1900-01-01", "value": "28 ms"}]}, "history[0].on"),
        ({"history": [{**TIMED, "on": "2026-01-01"}]}, "history[0].value"),
        ({"history": visits("28 ms"), "timed_test_every": "often"}, "timed_test_every"),
        ({"history": visits("28 ms"), "place": "the moon"}, "place"),
    ],
)
def test_bad_input_is_named_by_field(bad: dict[str, Any], field: str) -> None:
    """The message stands at the field that is wrong."""
    assert field in ask(**bad)["errors"]


def test_holding_at_the_rating_fails_whatever_the_test_is_called() -> None:
    """30 mA must trip a 30 mA device (IEC 61008-1)."""
    held = {"test": "no-trip", "multiple": 1, "waveform": "ac", "value": "> 1999 ms"}

    assert ask([*visits("24 ms", "26 ms"), {**held, "on": "2024-11-01"}])["outcome"] == "fail"
