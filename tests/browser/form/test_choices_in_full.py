"""What is chosen can be read whole on a phone, however long its name is."""

from __future__ import annotations

import pytest

from checkers.catalogue import CHECKERS
from checkers.domain.checker import Checker
from tests.browser.axe import UNFOLD
from tests.browser.phone import Phone
from tests.browser.sampling import sampled
from tests.browser.settled import settle
from tests.browser.targets import too_small

WIDTHS = (360, 412)  # px: a small phone, and one of the usual size
WITH_FORM = [checker for checker in CHECKERS if checker.slug != "schedule"]
ARROW = 20  # px that a list's arrow takes

# Chosen in turn: is a word wider than the room beside the arrow, are the lines higher than the box?
CUT = """(arrow) => [...document.querySelectorAll("[data-inputs] select")].flatMap((list) => {
  const style = getComputedStyle(list);
  const pen = document.createElement("canvas").getContext("2d");
  pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
  const room = list.clientWidth - parseFloat(style.paddingInline) * 2 - arrow;
  const isCut = (one) => {
    list.value = one.value;
    const wide = one.text.split(" ").some((word) => pen.measureText(word).width > room);
    return wide || list.scrollHeight > list.clientHeight;
  };
  return [...list.options].filter(isCut).map((one) => one.text);
})"""

# A choice on a button whose longest word is wider than the button breaks within it.
BROKEN = """() => [...document.querySelectorAll("[data-inputs] .button__face > .button__name")]
  .flatMap((one) => one.textContent.split(/[\\s-]+/).filter((word) => {
    const pen = document.createElement("canvas").getContext("2d");
    const { fontWeight, fontSize, fontFamily } = getComputedStyle(one);
    pen.font = `${fontWeight} ${fontSize} ${fontFamily}`;
    return pen.measureText(word).width > one.parentElement.clientWidth;
  }))"""

# Buttons of more lines than a thumb needs of height: the line of a name is the higher one.
TALL = """(most) => [...document.querySelectorAll("[data-inputs] .button__face")].filter((one) => {
  const [name, note] = [...one.children].map((part) => part.getBoundingClientRect().height);
  const line = parseFloat(getComputedStyle(one).lineHeight);
  return name + (note ?? 0) > most * line + 1;
}).map((one) => one.textContent)"""
LINES = 3


@pytest.mark.parametrize("checker", sampled(WITH_FORM, always=1), ids=lambda checker: checker.slug)
def test_a_choice_is_read_whole(phone: Phone, checker: Checker) -> None:
    """A list shows all of what is chosen, and a button breaks no word and grows no column."""
    for width in WIDTHS:
        phone.page.set_viewport_size({"width": width, "height": 800})
        phone.open(f"checkers/{checker.slug}/")
        phone.waits_until_running()  # its entries have come, and can be unfolded
        phone.page.evaluate(UNFOLD)
        settle(phone.page)

        assert phone.page.evaluate(CUT, ARROW) == []
        assert phone.page.evaluate(BROKEN) == []
        assert phone.page.evaluate(TALL, LINES) == []
        assert too_small(phone.page) == []


def test_a_list_is_no_higher_for_a_long_choice(phone: Phone) -> None:
    """In an entry as anywhere: two lines fit in the height that a thumb needs."""
    phone.open("checkers/leakage-budget/")
    settle(phone.page)
    lists = phone.page.locator("[data-inputs] select")

    assert {box["height"] for one in lists.all() if (box := one.bounding_box())} == {48}
