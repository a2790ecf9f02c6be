"""What is chosen from a list can be read whole on a phone, not cut behind the arrow."""

from __future__ import annotations

import pytest

from tests.browser.phone import Phone

# Every choice in turn: is its text wider than the room beside the list's arrow?
CUT = """(arrow) => [...document.querySelectorAll("[data-inputs] .field--sheet > select")]
  .filter((list) => list.offsetParent)
  .flatMap((list) => {
    const style = getComputedStyle(list);
    const pen = document.createElement("canvas").getContext("2d");
    pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
    const sides = parseFloat(style.paddingLeft) + parseFloat(style.paddingRight) + arrow;
    const texts = [...list.options].map((one) => one.text);
    return texts.filter((one) => pen.measureText(one).width > list.clientWidth - sides);
  })"""
ARROW = 20  # px
LONG = {"Circuit-breaker with residual current unit", "Sensor, relay and tripping breaker apart"}


@pytest.mark.parametrize("checker", ["readings", "test-plan", "explain"])
def test_a_choice_is_read_whole(phone: Phone, checker: str) -> None:
    """The names of the codes among them; two names of a form are longer than a phone is wide."""
    phone.open(f"checkers/{checker}/")

    assert set(phone.page.evaluate(CUT, ARROW)) <= LONG


# A choice on a button whose longest word is wider than the button breaks within it.
BROKEN = """() => [...document.querySelectorAll("[data-inputs] .button__face > .button__name")]
  .filter((one) => one.offsetParent)
  .flatMap((one) => one.textContent.split(/[\\s-]+/).filter((word) => {
    const pen = document.createElement("canvas").getContext("2d");
    const { fontWeight, fontSize, fontFamily } = getComputedStyle(one);
    pen.font = `${fontWeight} ${fontSize} ${fontFamily}`;
    return pen.measureText(word).width > one.parentElement.clientWidth;
  }))"""
NARROW = 360  # px: a small phone


@pytest.mark.parametrize("checker", ["readings", "type-for-load"])
def test_no_button_breaks_within_a_word(phone: Phone, checker: str) -> None:
    """Each is as wide as the longest word on it."""
    phone.page.set_viewport_size({"width": NARROW, "height": 800})
    phone.open(f"checkers/{checker}/")

    assert phone.page.evaluate(BROKEN) == []
