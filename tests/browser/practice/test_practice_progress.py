"""Progress stays on the device: over a reload, until it is cleared, or said to be lost."""

from __future__ import annotations

import json

import pytest
from playwright.sync_api import Page, expect

from tests.browser.guard import Guard
from tests.browser.phone import Phone
from tests.browser.practice.practising import Case, Learner

HALF_DONE = Case(4, 11)
SHORT = Case(1, 4)
STORED = """(change) => {
  const key = Object.keys(localStorage).find((one) => one.endsWith(" practice"));
  const kept = JSON.parse(localStorage.getItem(key));
  return change ? localStorage.setItem(key, JSON.stringify({ ...kept, ...change })) : kept;
}"""
REFUSES = (
    "Object.defineProperty(window, 'localStorage',"
    " { get() { throw new DOMException('storage refused', 'SecurityError'); } });"
)


@pytest.fixture
def learner(phone: Phone) -> Learner:
    """A learner in the middle of a case."""
    return Learner(phone, HALF_DONE)


@pytest.mark.slow
def test_a_case_waits_half_done_and_an_ended_one_counts_once(learner: Learner, page: Page) -> None:
    """After a reload readings, marks and hints stand as before; the same case counts once."""
    learner.opens()
    learner.does("ramp")
    learner.answers("limits", learner.case.wrong_limits("ramp"), "fail")
    page.locator("[data-hint=limits]").tap()
    expect(page.locator("[data-hints=limits] > li")).to_have_count(1)

    page.reload()
    learner.sees("ramp")
    expect(learner.marks("limits")).to_have_count(1)
    expect(page.locator("[data-hints=limits] > li")).to_have_count(1)

    for _ in range(2):
        learner.opens(SHORT)
        learner.answers("limits", SHORT.limits(), "pass")
        expect(learner.kept).to_contain_text("Level 1: 1 case")
    page.goto("about:blank")
    learner.phone.open("checkers/practice/")  # without a case: the half-done one goes on
    learner.case = HALF_DONE
    learner.sees("ramp")
    expect(learner.kept).to_contain_text("Level 1: 1 case")
    page.get_by_role("link", name="One reading and its limit").tap()
    expect(learner.readings).to_have_count(1)
    expect(page.locator("[data-doing]")).to_be_hidden()


def test_progress_is_taken_along_and_cleared(learner: Learner, page: Page) -> None:
    """A file holds all of it; clearing asks first, and leaves nothing."""
    learner.opens(SHORT)
    learner.answers("limits", SHORT.wrong_limits(), "fail")
    learner.answers("limits", SHORT.limits(), "pass")
    with page.expect_download() as waiting:
        learner.button("Save it as a file").tap()
    saved = json.loads(waiting.value.path().read_text(encoding="utf-8"))
    assert [(one["wrong"]["limits"], one["steps"]) for one in saved["ended"]] == [
        (1, {"limits": "later"})
    ]

    learner.button("Clear it").tap()
    expect(learner.kept).to_contain_text("Level 1")
    learner.button("Yes, clear it all").tap()
    expect(learner.kept).to_contain_text("No case has ended yet")
    page.reload()
    learner.sees()
    expect(learner.kept).to_contain_text("No case has ended yet")


def test_where_storage_is_refused_all_works_but_the_keeping(
    learner: Learner, page: Page, guard: Guard
) -> None:
    """The page says so first, counts what is done while it is open, and loses it with the page."""
    guard.allow("storage refused")  # the theme complains
    page.add_init_script(REFUSES)
    learner.opens(SHORT)
    expect(page.locator("[data-practice] [data-warning]")).to_contain_text("keeps nothing")
    learner.answers("limits", SHORT.limits(), "pass")
    expect(learner.kept).to_contain_text("Level 1: 1 case")

    page.reload()
    learner.sees()
    expect(learner.kept).to_contain_text("No case has ended yet")


def test_progress_of_another_build_is_not_harmed(learner: Learner, page: Page) -> None:
    """A case that is drawn otherwise now begins anew; a newer form is left as it is, and told."""
    learner.opens()
    learner.does("ramp")
    waiting = page.evaluate(STORED)["halfDone"]
    waiting[0]["shown"][0] = "Trip time at ×1, 0°, loads on: 7 s"
    page.evaluate(STORED, {"halfDone": waiting})
    page.reload()
    learner.sees()

    page.evaluate(STORED, {"version": 99})
    page.reload()
    expect(page.locator("[data-practice] [data-warning]")).to_contain_text("newer build")
    assert page.evaluate(STORED)["version"] == 99
