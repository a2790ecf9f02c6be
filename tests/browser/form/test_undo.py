"""Whatever a button takes away of what was typed comes back with Undo, until something is typed."""

from __future__ import annotations

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.log.job_log import SOUND
from tests.browser.phone import Phone
from tests.browser.sampling import sampled

MORE = "&readings.1.test=trip-time&readings.1.multiple=5&readings.1.value=14,5 ms"
CASE = f"{SOUND}{MORE}&device.form=rcbo&circuit.dc_residual=0,03 A"
# What a reader sees in a form: every value, and what is chosen.
STANDS = """
[...document.querySelectorAll("[data-inputs] :is(input, select, textarea)")]
  .filter(({ type, checked }) => type !== "radio" || checked).map(({ value }) => value)
"""
# The same without what a field begins with.
SAID = """
[...document.querySelectorAll("[data-inputs] [data-field]")].flatMap((field) =>
  [...field.querySelectorAll("input, select, textarea")]
    .filter(({ type, checked }) => type !== "radio" || checked)
    .filter(({ value }) => value !== (field.dataset.default ?? ""))
    .map(({ value }) => `${field.dataset.field}=${value}`))
"""
BUTTONS = "[...document.querySelectorAll('[data-inputs] button:not([data-copy], [data-undo])')]"
UNFOLD = "document.querySelectorAll('[data-rest]').forEach((rest) => { rest.open = true; })"
# A case of each form, with something typed in every list it has.
FORMS = {
    "readings": CASE.partition("#")[2],
    "explain": CASE.partition("#")[2].partition("&circuit")[0],
    "leakage-budget": "code=gb&items.0.load=it-equipment&items.0.count=7&items.1.load=ups",
    "series": "code=gb&devices.0.id=Main&devices.0.type=B&devices.1.id=Way 1&devices.1.below=Main"
    "&loads.0.id=Car&loads.0.below=Way 1&loads.0.load=ev-charge-point",
    "over-the-years": "code=gb&history.0.value=28 ms&history.0.on=2024-05-01&history.1.value=31",
}


def _undo(page: Page) -> Locator:
    return page.locator("[data-told-undo]").get_by_role("button", name="Undo")


def test_start_again_keeps_code_and_device_and_can_be_undone(phone: Phone, page: Page) -> None:
    """The next device on the board needs the same settings; a slip costs nothing."""
    phone.open(CASE)
    phone.waits_for("fail")  # 30 mA of smooth DC blinds a type A
    before = page.evaluate(STANDS)

    page.get_by_role("button", name="Start again").click()

    expect(phone.field("code").locator("select")).to_have_value("gb")
    expect(phone.field("device", "type").locator("input:checked")).to_have_value("A")
    expect(phone.field("device", "rated_residual_current").locator("input")).to_have_value("30 mA")
    expect(phone.field("readings", "0", "value").locator("input")).to_have_value("")
    expect(phone.field("circuit", "dc_residual").locator("input").first).to_have_value("")
    expect(_undo(page)).to_be_focused()
    assert "gb" in page.evaluate("localStorage.getItem('/some/where/ last')")

    page.keyboard.press("Enter")

    phone.waits_for("fail")
    assert page.evaluate(STANDS) == before
    expect(_undo(page)).to_have_count(0)


def test_a_reading_taken_away_comes_back_where_it_stood(phone: Phone, page: Page) -> None:
    """Also the second of two, step by step; typing ends the offer."""
    phone.open(CASE)
    phone.waits_for("fail")
    before = page.evaluate(STANDS)
    remove = phone.field("readings").locator("[data-remove]")

    remove.nth(0).click()
    expect(page.locator("[data-told-undo] [role=status]")).to_contain_text("Removed")
    expect(_undo(page)).to_be_focused()
    remove.nth(0).click()
    _undo(page).click()
    _undo(page).click()

    assert page.evaluate(STANDS) == before
    remove.nth(1).click()
    phone.types("29 ms", "readings", "0", "value")
    expect(_undo(page)).to_have_count(0)


def test_a_figure_that_a_word_replaced_comes_back(phone: Phone, page: Page) -> None:
    """A tap on a word beside the field is a slip as easily."""
    phone.open(CASE)
    phone.waits_for("fail")
    value = phone.field("device", "rated_residual_current")

    value.locator("[data-suggestion='300 mA']").click()
    expect(value.locator("input")).to_have_value("300 mA")
    _undo(page).click()

    expect(value.locator("input")).to_have_value("30 mA")


def test_an_example_over_what_was_typed_can_be_undone(phone: Phone, page: Page) -> None:
    """What was typed stands again, with its verdict and its address."""
    phone.open(CASE)
    phone.waits_for("fail")
    phone.types("29 ms", "readings", "0", "value")
    before = page.evaluate(STANDS)

    page.locator(".examples a").first.click()
    phone.waits_for("pass")
    _undo(page).click()

    phone.waits_for("fail")
    assert page.evaluate(STANDS) == before
    page.wait_for_url("**value=29+ms*")


@pytest.mark.parametrize("slug", sampled(FORMS, always=1))
def test_whatever_a_button_of_a_form_takes_away_comes_back(
    phone: Phone, page: Page, slug: str
) -> None:
    """Every button is tried: none takes a value away for good."""
    address = f"checkers/{slug}/#{FORMS[slug].replace(' ', '+')}"
    phone.open(address)
    phone.waits_until_running()
    count = page.evaluate(f"{BUTTONS}.length")
    for place in range(count):
        before, said = page.evaluate(STANDS), page.evaluate(SAID)
        page.evaluate(UNFOLD)
        name = page.evaluate(
            f"(at) => {{ const one = {BUTTONS}[at]; one.click(); return one.textContent; }}", place
        )
        left = page.evaluate(SAID)
        if gone := [one for one in said if said.count(one) > left.count(one)]:
            expect(_undo(page), f"{name} took {gone}").to_have_count(1)
            _undo(page).click()
            assert page.evaluate(STANDS) == before, name


def test_rows_that_an_example_replaced_come_back(phone: Phone, page: Page) -> None:
    """A pasted schedule is a board's work."""
    rows = "Device\tIΔn\tx1\nRCD 1\t30 mA\t28\n"
    phone.open("checkers/schedule/")
    phone.waits_for("unfinished")
    page.locator("[data-text]").fill(rows)
    page.locator("[data-judge]").click()
    phone.waits_for("pass")

    page.locator(".md-content a[href*='#code=']").first.click()
    phone.waits_for("fail")
    page.get_by_role("button", name="Undo").click()

    phone.waits_for("pass")
    expect(page.locator("[data-text]")).to_have_value(rows)
