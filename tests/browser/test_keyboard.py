"""Every checker is used with the keyboard alone, and a screen reader is told what is seen."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page, expect

from build_tools.checker_shows import fragment
from checkers.catalogue import CHECKERS
from checkers.domain.checker import Checker
from checkers.printing import HEADLINES
from tests.browser.axe import UNFOLD
from tests.browser.keyboard_walk import number_controls, plain, told, walk
from tests.browser.phone import PATIENCE, Phone
from tests.browser.test_layout import LEAST

# What is tapped in a checker, by the box that takes the tap; links in running text may be small.
SMALL = """
() => [...document.querySelectorAll(
  ":is([data-checker], [data-schedule], [data-practice]) :is("
  + "button, select, summary, textarea, input, a[href])")]
  .filter((one) => one.checkVisibility({ visibilityProperty: true }))
  .filter((one) => !(one.tagName === "A" && getComputedStyle(one).display === "inline"))
  .map((one) => {
    const { width, height } = (one.closest("label") ?? one).getBoundingClientRect();
    return [one.outerHTML.slice(0, 120), width, height];
  })
"""
EVERY = pytest.mark.parametrize("checker", CHECKERS, ids=lambda checker: checker.slug)


def _judged(phone: Phone, checker: Checker) -> None:
    if checker.slug == "practice":  # its learner judges, step by step
        readings = phone.page.locator("[data-readings] > li").first
        expect(readings).to_be_visible(timeout=PATIENCE)
        return
    outcome = checker.examples[0].outcome
    phone.waits_for(outcome)
    told_aloud = phone.verdict.locator("[role=status]")
    expect(told_aloud).to_contain_text(HEADLINES[outcome], ignore_case=True)
    expect(told_aloud).to_have_attribute("aria-live", "polite")


@EVERY
def test_the_tab_key_leads_through_the_whole_checker(
    phone: Phone, page: Page, checker: Checker
) -> None:
    """Each control once, in order, in view, marked and named; an example is judged by Enter."""
    phone.open(f"checkers/{checker.slug}/")
    phone.waits_until_running()
    controls = number_controls(page)
    names = told(page)

    stops = walk(page, len(controls))

    reached = [stop.number for stop in stops]
    assert [controls[one] for one in range(len(controls)) if one not in reached] == []
    assert reached == sorted(set(reached))
    assert [controls[stop.number] for stop in stops if not stop.marked] == [], "focus not marked"
    assert [controls[stop.number] for stop in stops if not stop.seen] == [], "focus out of view"
    nameless = [controls[one] for one in reached if not names[one]["name"]]
    assert nameless == []
    other = [
        (controls[one]["says"], names[one]["name"])
        for one in reached
        if plain(controls[one]["says"]) not in names[one]["name"]
    ]
    assert other == [], "the name is not what is seen"

    if checker.slug == "practice":  # it leads from case to case itself
        return
    example = page.locator(".examples a").first
    for _ in range(len(controls)):
        page.keyboard.press("Shift+Tab")
        if example.evaluate("(link) => link === document.activeElement"):
            break
    page.keyboard.press("Enter")
    _judged(phone, checker)


@EVERY
def test_what_is_wrong_is_told_and_what_is_tapped_is_large(
    phone: Phone, page: Page, checker: Checker
) -> None:
    """A field that reads wrong is told with its reason; each target of a case is 48 pixels."""
    phone.open(f"checkers/{checker.slug}/")
    phone.waits_until_running()
    page.evaluate(
        "(address) => { location.hash = address; }", fragment(checker.examples[0].request)
    )
    _judged(phone, checker)
    page.evaluate(UNFOLD)
    sizes = page.evaluate(SMALL)
    box = phone.types_nonsense()
    expect(box).to_have_attribute("aria-invalid", "true", timeout=PATIENCE)
    number_controls(page)
    heard = told(page)[int(box.get_attribute("data-walk") or -1)]
    problem = box.evaluate(
        "(box) => box.closest('[data-field]').querySelector('[data-problem]').innerText"
    )

    assert sizes
    assert [one for one in sizes if min(one[1:]) < LEAST] == []
    assert problem
    assert plain(problem) in heard["description"]
    assert heard["properties"]["invalid"] == "true"
