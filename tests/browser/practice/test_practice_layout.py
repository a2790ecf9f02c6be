"""Every state of the page for practice breaks no rule of axe-core and fits a narrow screen."""

from __future__ import annotations

from typing import Any, Literal

import pytest
from playwright.sync_api import Page, expect

from tests.browser.axe import AXE
from tests.browser.pages.test_layout import WIDTHS
from tests.browser.phone import Phone
from tests.browser.practice.practising import Case, Learner
from tests.browser.settled import page_width, settle
from tests.browser.targets import too_small

CASE = Case(5, 3)
SCHEMES: tuple[Literal["light", "dark"], ...] = ("light", "dark")


@pytest.mark.slow
def test_every_state_is_accessible_and_narrow(phone: Phone, page: Page) -> None:
    """At the start, amid the marks, at the end with all unfolded, and with a sheet."""
    page.set_viewport_size({"width": WIDTHS[0], "height": 915})
    learner = Learner(phone, CASE)
    learner.opens()
    page.evaluate(AXE.read_text(encoding="utf-8"))
    found = _found(page, "start")
    learner.does("dc")
    for about in ("test", "limits"):
        page.locator(f"[data-hint={about}]").tap()
        expect(page.locator(f"[data-hints={about}] > li")).to_have_count(1)
    learner.answers("limits", CASE.wrong_limits("dc"), "fail")
    learner.answers("limits", CASE.limits("dc"), "pass")
    found += _found(page, "marks")
    learner.answers("cause", "do-not-know", "cannot-say")
    learner.answers("action", CASE.action, "pass")
    expect(learner.end).to_be_visible()
    page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })")
    learner.button("Clear it").tap()
    found += _found(page, "end")
    learner.button("Make the sheet").tap()
    expect(page.locator("[data-sheet]")).to_be_visible()
    found += _found(page, "sheet")
    small = too_small(page)

    assert found == []
    assert small == []


def test_a_wide_screen_shows_case_and_steps_side_by_side(phone: Phone, page: Page) -> None:
    """What is done and what is decided stand beside each other, the choice of a case above both."""
    page.set_viewport_size({"width": 1280, "height": 900})
    learner = Learner(phone, CASE)
    learner.opens()
    settle(page)
    boxes = [page.locator(f".practice__{one}").bounding_box() for one in ("which", "case", "steps")]
    which, case, steps = (box for box in boxes if box)

    assert which["y"] + which["height"] <= case["y"]
    assert which["width"] > 1.9 * case["width"]
    assert steps["x"] >= case["x"] + case["width"]
    assert abs(steps["y"] - case["y"]) < 20


def _found(page: Page, state: str) -> list[tuple[Any, ...]]:
    """Return what axe-core finds in both colour schemes, and the width of a page too wide."""
    wide = page_width(page)
    found: list[tuple[Any, ...]] = [(state, "too wide", wide)] if wide > WIDTHS[0] else []
    for scheme in SCHEMES:
        page.emulate_media(color_scheme=scheme)
        report = page.evaluate("axe.run(document, { resultTypes: ['violations'] })")
        found += [
            (state, scheme, one["id"], node["target"], node["failureSummary"])
            for one in report["violations"]
            for node in one["nodes"]
        ]
    return found
