"""Codes: what a jurisdiction asks, on which day."""

from __future__ import annotations

from datetime import date

import pytest

from checkers.domain.codes.registry import CODES, CodeTest

TODAY = date(2026, 11, 24)


def required(code: str, day: date) -> set[tuple[str, float | None]]:
    """Return the tests a code requires at verification on a day."""
    return {
        (test.test, test.multiple)
        for test in CODES[code].tests_on(day)
        if test.standing == "required" and test.purpose == "verification"
    }


@pytest.mark.parametrize(
    ("day", "edition", "tests"),
    [
        (
            date(2010, 1, 1),
            "BS 7671:2008",
            {("trip-time", 1.0), ("trip-time", 5.0), ("no-trip", 0.5), ("button", None)},
        ),
        (date(2020, 1, 1), "BS 7671:2018", {("trip-time", 5.0), ("button", None)}),
        (date(2023, 1, 1), "BS 7671:2018+A2:2022", {("trip-time", 1.0), ("button", None)}),
        (TODAY, "BS 7671:2018+A4:2026", {("trip-time", 1.0), ("button", None)}),
    ],
)
def test_british_verification_follows_the_edition_of_the_day(
    day: date, edition: str, tests: set[tuple[str, float | None]]
) -> None:
    """Each edition asks other tests."""
    assert CODES["gb"].edition_on(day) == edition
    assert required("gb", day) == tests


@pytest.mark.parametrize(("day", "banned"), [(date(2023, 4, 30), False), (date(2023, 5, 1), True)])
def test_australia_ends_type_ac_on_the_first_of_may(day: date, banned: bool) -> None:
    """The last lawful day is 30 April 2023."""
    rules = CODES["au"].type_rules_on(day)
    found = any("AC" in rule.types and rule.standing == "not-accepted" for rule in rules)

    assert found is banned


def test_germany_does_not_accept_type_ac() -> None:
    """The rule has no first day that was read: it holds on any day."""
    rules = CODES["de"].type_rules_on(TODAY)

    assert any(rule.types == {"AC"} and rule.standing == "not-accepted" for rule in rules)


def test_germany_lowered_the_standing_leakage_in_2018() -> None:
    """The code names its own table, which holds both figures."""
    assert CODES["de"].tables["standing-leakage"] == "din-vde-0100-530/standing-leakage"


@pytest.mark.parametrize("code", ["fr", "nl", "no", "ie"])
def test_a_code_that_adopts_the_international_text_shows_its_tests_as_such(code: str) -> None:
    """What was not read of the country is shown as IEC 60364-6, cited as that."""
    tests = CODES[code].tests_on(TODAY)

    assert tests == CODES["iec"].tests_on(TODAY)
    assert any("was not read" in sentence for sentence in CODES[code].not_known)


@pytest.mark.parametrize("code", ["in", "sg"])
def test_a_code_of_which_nothing_is_known_shows_no_test(code: str) -> None:
    """Silence is not filled with another country's rule."""
    assert CODES[code].tests_on(TODAY) == ()
    assert CODES[code].not_known


def test_own_type_rules_stand_before_those_of_the_code_followed() -> None:
    """Norway's own rule on charging comes first, the international one after it."""
    charging = [
        rule.document
        for rule in CODES["no"].type_rules_on(TODAY)
        if "ev-charge-point" in rule.loads
    ]

    assert charging == ["nek-400", "iec-60364-7-722"]


def british_test(multiple: float, day: date) -> CodeTest:
    """Return the British trip-time test at a multiple on a day."""
    (found,) = [
        test
        for test in CODES["gb"].tests_on(day)
        if (test.test, test.multiple) == ("trip-time", multiple)
    ]
    return found


def test_a_test_for_additional_protection_concerns_only_ratings_up_to_30_milliamperes() -> None:
    """A 300 mA device was not tested at five times."""
    test = british_test(5.0, date(2020, 1, 1))

    assert test.concerns(rated=30.0, delay="none")
    assert test.concerns()
    assert not test.concerns(rated=100.0, delay="none")
    assert not test.concerns(rated=30.0, delay="S")


def test_the_button_is_pressed_half_yearly_since_2019_and_was_quarterly_before() -> None:
    """The notice beside each RCD changed with the edition."""
    every = [
        [one.every for one in CODES["gb"].intervals_on(day)]
        for day in (date(2018, 12, 31), date(2019, 1, 1))
    ]

    assert every == [["3 months"], ["6 months"]]


def test_the_international_code_comes_first() -> None:
    """It is the one a reader starts from."""
    assert next(iter(CODES)) == "iec"


@pytest.mark.parametrize("form", ["rdc-dd", "monitor", "gfci"])
def test_no_test_at_a_multiple_on_ac_is_asked_of_a_device_that_has_no_such_limit(form: str) -> None:
    """6 mA detection, a monitor and a North American device are not timed at once their rating."""
    for code in CODES.values():
        asked = [test.test for test in code.tests_on(TODAY) if test.concerns(form=form)]
        assert not {"trip-time", "no-trip"} & set(asked)


def test_smooth_dc_is_tried_only_on_types_that_sense_it() -> None:
    """At twice the rating, in both polarities, on type B."""
    found = [
        test
        for test in CODES["iec"].tests_on(TODAY)
        if test.waveform == "smooth-dc" and test.test == "trip-time"
    ]

    assert [(one.multiple, one.phases) for one in found] == [(2.0, ("+", "-"))]
    assert found[0].types == frozenset({"B", "B+"})
