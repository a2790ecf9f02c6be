"""A checker's page on paper: what was said, what was found, and where each limit comes from."""

from __future__ import annotations

from playwright.sync_api import expect

from tests.browser.phone import Phone

CASE = (
    "checkers/readings/#code=gb&on=2026-11-24&device.type=A&device.rated_residual_current=30+mA"
    "&readings.0.test=trip-time&readings.0.multiple=1&readings.0.waveform=ac&readings.0.value=400"
)


def test_paper_shows_what_was_said_and_every_source(phone: Phone) -> None:
    """Sources are printed open; fields that say nothing, empty groups and buttons are left out."""
    phone.open(CASE)
    phone.waits_for("fail")
    phone.page.get_by_role("button", name="×5 0°").click()

    phone.page.evaluate("dispatchEvent(new Event('beforeprint'))")
    phone.page.emulate_media(media="print")

    sources = phone.results.locator(".finding .sources li")
    assert sources.count() > 0
    for source in sources.all():
        expect(source).to_be_visible()
    expect(phone.field("device", "rated_residual_current").locator("input")).to_be_visible()
    expect(phone.page.locator("[data-entry]").nth(0)).to_be_visible()
    expect(phone.page.locator("[data-entry]").nth(1)).to_be_hidden()
    expect(phone.field("circuit")).to_be_hidden()
    expect(phone.page.locator("[data-add]")).to_be_hidden()


def test_paper_has_the_same_colours_whatever_the_screen_has(phone: Phone) -> None:
    """Small print out of dark colours is as dark on paper as out of light ones."""
    phone.open("checkers/readings/")
    phone.page.emulate_media(media="print")
    hint = phone.page.locator(".field__hint").first
    colours = []
    for scheme in ("default", "slate"):
        phone.page.evaluate("(one) => { document.body.dataset.mdColorScheme = one; }", scheme)
        colours.append(hint.evaluate("(one) => getComputedStyle(one).color"))

    assert colours[0] == colours[1]
