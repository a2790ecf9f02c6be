"""The verdict stays in view, also while a phone's keyboard takes half of the screen."""

from __future__ import annotations

from playwright.sync_api import expect

from tests.browser.phone import Phone
from tests.browser.settled import settle

CHECKER = "checkers/readings/"
DEVICE = "#code=gb&on=2026-11-24&device.type=A&device.rated_residual_current=30+mA"
AT_ONE = "&readings.0.test=trip-time&readings.0.multiple=1&readings.0.waveform=ac"
COVERED = """() => {
  const bar = document.querySelector("[data-verdict]");
  const hidden = (one) => one.closest("[hidden], details:not([open]) > :not(summary)");
  const fields = [...document.querySelectorAll("[data-inputs] :is(input, select, summary)")];
  return fields.filter((one) => !hidden(one)).flatMap((one) => {
    one.focus();
    const [up, at] = [bar.getBoundingClientRect(), one.getBoundingClientRect()];
    const bad = (scrollY > 300 && up.top !== 0) || up.bottom > innerHeight
      || at.top < up.bottom - 1 || at.bottom > innerHeight + 1;
    const name = one.id || one.name || one.textContent;
    return bad ? [[name, up.top, up.bottom, at.top, at.bottom]] : [];
  });
}"""
SEEN = """(from) => {
  Object.assign(visualViewport, { offsetTop: from });
  visualViewport.dispatchEvent(new Event("scroll"));
  return document.querySelector("[data-verdict]").getBoundingClientRect().top;
}"""
OWN_VIEW = "window.visualViewport = Object.assign(new EventTarget(), { scale: 1, offsetTop: 0 })"


def test_the_verdict_stays_in_view(phone: Phone) -> None:
    """At the last field of the form the verdict is still on the screen."""
    phone.open(CHECKER + DEVICE + AT_ONE + "&readings.0.value=28")
    phone.waits_for("pass")

    phone.page.locator("[data-clear]").scroll_into_view_if_needed()

    expect(phone.verdict).to_be_in_viewport(ratio=1)


def test_the_keyboard_hides_neither_verdict_nor_field(phone: Phone) -> None:
    """With half the screen taken, each field that has the focus stands below the whole verdict."""
    phone.page.set_viewport_size({"width": 412, "height": 400})
    phone.open(CHECKER + DEVICE + AT_ONE + "&readings.0.value=400+ms")
    phone.waits_for("fail")
    settle(phone.page)

    assert phone.page.evaluate(COVERED) == []


def test_the_verdict_goes_along_where_the_keyboard_moves_the_view(phone: Phone) -> None:
    """A browser whose keyboard slides what is seen down the page takes the verdict with it."""
    phone.page.add_init_script(OWN_VIEW)
    phone.open(CHECKER + DEVICE + AT_ONE + "&readings.0.value=28")
    phone.waits_for("pass")
    settle(phone.page)
    phone.page.evaluate("scrollTo(0, 600)")

    assert phone.page.evaluate(SEEN, 260) == 260
    assert phone.page.evaluate(SEEN, 0) < 60
