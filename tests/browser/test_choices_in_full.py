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
