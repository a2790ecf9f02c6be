"""A walk through a page with the Tab key: what is reached, whether it is seen and marked."""

from __future__ import annotations

from typing import NamedTuple

from playwright.sync_api import Page

# Every control that the Tab key should reach, in the order of the page, each given its number.
# Of the buttons of one choice the chosen one is reached, or the first; arrows lead to the others.
NUMBER = """
() => {
  const shown = (one) => one.checkVisibility({ visibilityProperty: true });
  const reached = (one) => {
    if (one.type !== "radio") { return true; }
    const all = [...document.querySelectorAll(`input[name="${one.name}"]`)].filter(shown);
    return one === (all.find((other) => other.checked) ?? all[0]);
  };
  const read = ({ parentElement: within }) =>
    within.checkVisibility() && !within.closest("[aria-hidden=true]");
  const text = (one) => {
    const parts = document.createTreeWalker(one, NodeFilter.SHOW_TEXT);
    const said = [];
    while (parts.nextNode()) { said.push(read(parts.currentNode) ? parts.currentNode.data : ""); }
    return said.join("").replace(/\\s+/g, " ").trim();
  };
  const label = (one) => one.labels ? [...one.labels].map(text).join(" ") : text(one);
  const found = [...document.querySelectorAll(
    "a[href], button, input, select, textarea, summary, [tabindex]")]
    .filter((one) => one.tabIndex >= 0 && !one.disabled && !one.hidden)
    .filter((one) => shown(one) && reached(one));
  const faces = (one) => [one, one.nextElementSibling, one.closest("label")].filter(Boolean);
  const lines = (one) => faces(one).map((face) => {
    const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(face);
    return `${outlineStyle} ${outlineWidth} ${boxShadow}`;
  });
  globalThis.walk = { found, faces, lines, before: found.map(lines) };
  document.querySelectorAll("[data-walk]").forEach((one) => { delete one.dataset.walk; });
  found.forEach((one, number) => { one.dataset.walk = number; });
  return found.map((one) => ({ says: label(one), tag: one.outerHTML.slice(0, 90) }));
}
"""
# Where the focus is: the control's number (-1 where it is none, and then whether it scrolls),
# whether a line shows it, and whether it can be seen at its top, its middle and its bottom.
# The theme opens its search over the screen, a moment after the focus has come to it.
LOOK = """
async () => {
  const { found, faces, lines, before } = globalThis.walk;
  const one = document.activeElement;
  const searches = one.matches(".md-search__input");
  while (searches && !document.getElementById("__search").checked) {
    await new Promise((done) => setTimeout(done));
  }
  const number = found.indexOf(one);
  if (number < 0) {
    const scrolls = one === document.body
      || one.scrollWidth > one.clientWidth || one.scrollHeight > one.clientHeight;
    return { number, scrolls, tag: one.outerHTML.slice(0, 90) };
  }
  const marked = searches || lines(one).some((line, face) =>
    line !== before[number][face] && !(line.startsWith("none") && line.endsWith(" none")));
  const box = faces(one).find((face) => face.offsetWidth > 1 && face.offsetHeight > 1) ?? one;
  const { left, right, top, bottom } = box.getClientRects()[0];
  const hit = (x, y) => {
    const at = document.elementFromPoint(left + x * (right - left), top + y * (bottom - top));
    return faces(one).some((face) => face.contains(at));
  };
  const seen = [0.1, 0.5, 0.9].every((y) => [0.1, 0.5, 0.9].some((x) => hit(x, y)));
  return { number, marked, seen };
}
"""
TOO_FAR = 60  # presses beyond one for each control: a day takes four, a list that scrolls one


class Stop(NamedTuple):
    """A control that was reached: its number, and whether its focus is marked and in view."""

    number: int
    marked: bool
    seen: bool


def number_controls(page: Page) -> list[dict[str, str]]:
    """Number the controls in the order of the page; return what each says, and its markup."""
    found: list[dict[str, str]] = page.evaluate(NUMBER)
    return found


def walk(page: Page, count: int, key: str = "Tab") -> list[Stop]:
    """Press a key until the focus comes round again; return what was reached on the way.

    Raises AssertionError where the focus lands on something that is neither a control nor scrolls.
    """
    stops: list[Stop] = []
    for _ in range(count + TOO_FAR):
        page.keyboard.press(key)
        at = page.evaluate(LOOK)
        if at["number"] < 0:
            assert at["scrolls"], at
        elif stops and at["number"] == stops[0].number != stops[-1].number:
            return stops
        elif not stops or stops[-1].number != at["number"]:
            stops.append(Stop(**at))
    return stops


def press_until(page: Page, key: str, selector: str, count: int) -> None:
    """Press a key until the focus is on what a selector finds; count presses are the most."""
    for _ in range(count):
        page.keyboard.press(key)
        if page.evaluate("(selector) => document.activeElement.matches(selector)", selector):
            return
    raise AssertionError(f"{key} never led to {selector}")
