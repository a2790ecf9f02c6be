"""A reply names what was taken where the request said nothing."""

from __future__ import annotations

from datetime import date
from typing import Any

from checkers import run
from checkers.catalogue import CHECKERS
from checkers.domain.device.device import Device
from checkers.domain.device.readings import Instrument
from checkers.domain.inputs.fields import Kind, inputs_of
from checkers.domain.limits.tables import rows_in
from checkers.domain.sources.constants import CONSTANTS
from checkers.judgement.case import INSTRUMENT_ERRORS

BUTTON = {"readings": [{"test": "button", "value": "operates"}]}


def taken(slug: str, request: dict[str, Any]) -> dict[str, str]:
    """Return what a reply says it took, by field."""
    return {one["field"]: one["says"] for one in run(slug, request)["assumed"]}


def test_code_day_delay_and_form_are_named_where_they_are_left_out() -> None:
    """The four defaults that decide most stand in the reply, in words."""
    found = taken("readings", BUTTON)

    assert found["code"] == "Local code: IEC: International"
    assert found["on"] == f"Day: {date.today().isoformat()}, today"  # noqa: DTZ011  # as asked
    assert found["device.delay"] == "Delay: none (general)"
    assert found["device.form"] == "Form: RCCB (without overcurrent protection)"


def test_what_is_given_is_not_named() -> None:
    """A value that was given is nobody's assumption, the usual one too."""
    device = {"form": "rccb", "delay": "none"}
    found = taken("readings", {**BUTTON, "code": "iec", "on": "2026-11-24", "device": device})

    assert not {"code", "on", "device.delay", "device.form"} & set(found)


def test_what_is_not_known_is_not_named() -> None:
    """Nothing was taken for a type or a waveform that nobody gave."""
    found = taken("readings", BUTTON)

    assert not {"device.type", "readings.waveform", "circuit.loads", "circuit.system"} & set(found)


def test_devices_of_a_list_share_one_line() -> None:
    """Two devices without a delay are named once."""
    devices = [{"id": name, "type": "A", "rated_residual_current": "30 mA"} for name in "ab"]
    reply = run("series", {"devices": devices, "loads": []})
    fields = [one["field"] for one in reply["assumed"]]

    assert fields.count("devices.delay") == 1


def test_every_checker_names_code_and_day() -> None:
    """No checker judges by a code or a day that it does not tell."""
    for checker in CHECKERS:
        request = {k: v for k, v in checker.examples[0].request.items() if k not in ("code", "on")}
        found = taken(checker.slug, request)
        assert {"code", "on"} <= set(found), checker.slug


def test_the_words_for_an_unknown_uncertainty_are_the_figures_used() -> None:
    """The shares stand in the limit table and among the known figures; the words repeat them."""
    words = {one.name: one.spec.left_out for one in inputs_of(Instrument)}
    by_field = {"time_uncertainty": "trip-time", "current_uncertainty": "operating-current"}
    for field, quantity in by_field.items():
        share = rows_in(INSTRUMENT_ERRORS, on=date(2026, 11, 24), quantity=quantity)[0].at_most()
        assert share is not None
        assert words[field].startswith(f"{100 * share:g} % ")
    electrode, clamp = (
        {one.name: one.spec.left_out for one in inputs_of(checker.inputs)}
        for checker in CHECKERS
        if checker.slug in ("earth-electrode", "leakage-budget")
    )
    if "clamp_uncertainty" in electrode:
        electrode, clamp = clamp, electrode
    permitted = CONSTANTS["electrode_uncertainty_permitted"].value
    usual = CONSTANTS["electrode_uncertainty_usual"].value
    assert electrode["resistance_uncertainty"] == f"{permitted:g} % to pass, {usual:g} % to fail"
    assert clamp["clamp_uncertainty"].startswith(
        f"{CONSTANTS['leakage_clamp_uncertainty'].value:g} % "
    )


def test_a_choice_with_a_usual_value_is_never_silent() -> None:
    """Whatever choice of a device has a value by itself is named when it is left out."""
    usual = {
        f"device.{one.name}"
        for one in inputs_of(Device)
        if one.spec.kind in (Kind.CHOICE, Kind.CHOICE_OR_QUANTITY) and one.default != "unknown"
    }

    assert usual == {"device.delay", "device.form"}
    assert usual <= set(taken("readings", BUTTON))
