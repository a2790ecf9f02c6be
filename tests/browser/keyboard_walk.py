"""A walk through a page with the Tab key, and what a screen reader is told on the way."""

from __future__ import annotations

import re
from typing import Any, NamedTuple

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
  const text = (one) => (one ? one.innerText : "").replace(/\\s+/g, " ").trim();
  const label = (one) => one.labels
    ? [...one.labels].map(text).join(" ") : text(one);
  const found = [...document.querySelectorAll(
    "a[href], button, input, select, textarea, summary, [tabindex]")]
    .filter((one) => one.tabIndex >= 0 && !one.disabled && !one.hidden)
    .filter((one) => shown(one) && reached(one) && !one.closest(".md-search__output"));
  globalThis.walked = found;
  globalThis.faceOf = (one) =>
    [one, one.nextElementSibling, one.closest("label"), one.parentElement].filter(Boolean);
  const lines = (one) => faceOf(one).map((face) => {
    const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(face);
    return `${outlineStyle} ${outlineWidth} ${boxShadow}`;
  });
  globalThis.linesOf = lines;
  globalThis.before = found.map(lines);
  found.forEach((one, number) => { one.dataset.walk = number; });
  return found.map((one) => ({ says: label(one), tag: one.outerHTML.slice(0, 90) }));
}
"""
# Where the focus is: the control's number (-1 where it is none), whether a line shows it, and
# whether anything of it can be seen. The theme's search opens where the focus reaches it, which
# shows where it is; the theme's list of pages waits beside a phone's screen.
LOOK = """
() => {
  const one = document.activeElement;
  const number = walked.indexOf(one);
  if (number < 0) {
    const scrolls = one.closest(".md-search__output") !== null || one !== document.body
      && (one.scrollWidth > one.clientWidth || one.scrollHeight > one.clientHeight);
    return { number: -1, scrolls, tag: one.outerHTML.slice(0, 90) };
  }
  const now = linesOf(one);
  const opens = one.matches(".md-search__input");
  const marked = opens || now.some((line, face) => line !== before[number][face]
    && !(line.startsWith("none") && line.endsWith(" none")));
  const box = faceOf(one).find((face) => face.offsetWidth > 1 && face.offsetHeight > 1) ?? one;
  const { left, right, top, bottom } = box.getBoundingClientRect();
  const points = [0.1, 0.5, 0.9].flatMap((x) => [0.1, 0.5, 0.9].map((y) =>
    document.elementFromPoint(left + x * (right - left), top + y * (bottom - top))));
  const faces = faceOf(one).slice(0, -1);
  const beside = one.closest(".md-sidebar--primary, .md-search") !== null;
  const seen = beside || points.some((at) => faces.some((face) => face.contains(at)));
  return { number, marked, seen };
}
"""
TOO_FAR = 60  # presses beyond one for each control: a day takes four, a list that scrolls one
MOVES = 400  # ms in which what slides or fades has done so


class Stop(NamedTuple):
    """A control that was reached: its number, and whether its focus is marked and in view."""

    number: int
    marked: bool
    seen: bool


def number_controls(page: Page) -> list[dict[str, str]]:
    """Number the controls in the order of the page; return what each says, and its markup."""
    found: list[dict[str, str]] = page.evaluate(NUMBER)
    return found


def walk(page: Page, count: int) -> list[Stop]:
    """Press Tab from the top until the first control comes again; return what was reached.

    Raises AssertionError where the focus lands on something that is neither a control nor scrolls.
    """
    stops: list[Stop] = []
    for _ in range(count + TOO_FAR):
        page.keyboard.press("Tab")
        at = page.evaluate(LOOK)
        if not at.get("seen", True):
            page.wait_for_timeout(MOVES)
            at = page.evaluate(LOOK)
        if at["number"] < 0:
            assert at["scrolls"] or at["tag"].startswith("<body"), at
            continue
        if stops and at["number"] == stops[0].number:
            return stops
        if not stops or stops[-1].number != at["number"]:
            stops.append(Stop(**at))
    return stops


def told(page: Page) -> dict[int, dict[str, Any]]:
    """Return what a screen reader is told of each numbered control: its role, name and more."""
    session = page.context.new_cdp_session(page)
    numbers = dict(_numbers(session.send("DOM.getDocument", {"depth": -1})["root"]))
    nodes = session.send("Accessibility.getFullAXTree")["nodes"]
    session.detach()
    return {
        numbers[node["backendDOMNodeId"]]: _told_of(node)
        for node in nodes
        if node.get("backendDOMNodeId") in numbers and not node.get("ignored")
    }


def _numbers(node: dict[str, Any]) -> list[tuple[int, int]]:
    attributes = node.get("attributes", [])
    named = dict(zip(attributes[::2], attributes[1::2], strict=True))
    own = [(node["backendNodeId"], int(named["data-walk"]))] if "data-walk" in named else []
    return own + [pair for child in node.get("children", []) for pair in _numbers(child)]


def _told_of(node: dict[str, Any]) -> dict[str, Any]:
    properties = {one["name"]: one["value"].get("value") for one in node.get("properties", [])}
    texts = {
        key: plain(str(node.get(key, {}).get("value", "")))
        for key in ("name", "role", "description")
    }
    return {**texts, "properties": properties}


def plain(text: str) -> str:
    """Return a text as it is compared: small letters, single spaces."""
    return re.sub(r"\s+", " ", text).strip().casefold()
