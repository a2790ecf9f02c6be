"""A unit stands beside a bare number, and not beside a value that names its own."""

from __future__ import annotations

from playwright.sync_api import expect

from tests.browser.phone import Phone

CASE = "checkers/readings/#code=gb&device.type=A&device.rated_residual_current=30+mA"


def test_a_unit_is_not_said_twice(phone: Phone) -> None:
    """A value from an example brings its unit; typed over by a number, it takes the field's."""
    phone.open(CASE)
    field = phone.field("device", "rated_residual_current")
    unit = field.locator(".field__unit")
    expect(field.locator("input")).to_have_value("30 mA")
    expect(unit).to_be_hidden()

    field.locator("input").fill("30")
    expect(unit).to_be_visible()

    field.get_by_role("button", name="300 mA").click()
    expect(unit).to_be_hidden()
