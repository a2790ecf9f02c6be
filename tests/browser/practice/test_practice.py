"""A case is played through to its marks, by touch and by keyboard, each mark with its reason."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Page, expect

from checkers.domain.causes import CAUSES
from tests.browser.phone import Phone
from tests.browser.practice.practising import Case, Learner

DC_ON_A_BOARD = Case(5, 3)
ONE_READING = Case(1, 4)


@pytest.fixture
def learner(phone: Phone) -> Learner:
    """A learner in front of a case about DC."""
    return Learner(phone, DC_ON_A_BOARD)


def test_a_case_is_played_through_by_touch(learner: Learner, page: Page) -> None:
    """Tests are chosen, limits judged, cause and action named; wrong answers and a hint count."""
    case, done = learner.case, ("dc", "ramp-device")
    learner.opens()
    expect(learner.step("cause")).to_be_hidden()
    learner.does(*done)
    page.locator("[data-hint=test]").tap()
    expect(page.locator("[data-hints=test]")).to_contain_text(case.hint("test", *done))

    learner.answers("limits", case.wrong_limits(*done), "fail")
    expect(learner.marks("limits").first).to_contain_text("Not right")
    learner.answers("limits", case.limits(*done), "pass")
    right = learner.marks("limits").last
    expect(right.locator(".sources")).to_contain_text(case.sources(*done)[0])
    expect(right.get_by_role("img")).to_have_count(0)  # a right answer is no passed reading
    table = right.get_by_role("link").first.evaluate("(link) => link.href")
    assert "/limits/" in table
    assert page.request.get(table).ok

    wrong = next(one for one in CAUSES if case.mark("cause", one, *done) == "fail")
    learner.answers("cause", wrong, "fail")
    expect(learner.marks("cause")).to_contain_text(CAUSES[wrong].name)
    expect(learner.marks("cause")).not_to_contain_text(CAUSES[case.cause].name)
    learner.answers("cause", case.cause, "pass")
    expect(learner.marks("cause").last).to_contain_text(CAUSES[case.cause].means)
    expect(page.locator("[data-doing]")).to_be_hidden()

    learner.answers("action", case.action, "pass")
    expect(learner.end).to_contain_text(f"It was: {CAUSES[case.cause].name}.")
    expect(learner.end).to_contain_text("Limits: right in the end, wrong answers: 1")
    expect(learner.end).to_contain_text("What to do: right at once")
    expect(learner.end).to_contain_text("Hints: 1")
    expect(learner.end.locator(".finding__word")).to_have_text(["Enough"])
    expect(learner.kept).to_contain_text("Level 5: 1 case")


def test_a_case_is_played_through_by_keyboard(learner: Learner, page: Page) -> None:
    """Tab and Enter are enough, and the keyboard is always where the next thing is."""
    case = ONE_READING
    learner.opens(case)
    expect(learner.readings).to_have_count(1)
    expect(page.locator("[data-doing]")).to_be_hidden()

    tab_to(page, f"[data-answer={case.wrong_limits()}]")
    page.keyboard.press("Enter")
    expect(learner.marks("limits")).to_have_count(1)
    page.keyboard.press("Shift+Tab")
    tab_to(page, f"[data-answer={case.limits()}]", "Shift+Tab" if first(case) else "Tab")
    page.keyboard.press("Space")
    expect(learner.marks("limits").last).to_be_focused()
    expect(learner.end).to_be_visible()
    expect(learner.step("cause")).to_be_hidden()

    tab_to(page, "[data-end] button")
    page.keyboard.press("Enter")
    expect(page.locator("[data-scene]")).to_be_focused()
    expect(learner.end).to_be_hidden()


def test_a_mark_is_said_once(learner: Learner, page: Page) -> None:
    """The bar says a wrong answer's reason; the right one takes the focus, and is read there."""
    case = ONE_READING
    learner.opens(case)
    said = page.locator("[data-verdict] [role=status]")

    learner.answers("limits", case.wrong_limits(), "fail")
    expect(said).to_contain_text(case.says("limits", case.wrong_limits()))
    learner.answers("limits", case.limits(), "pass")

    expect(page.locator("*:focus")).to_contain_text(case.says("limits", case.limits()))
    expect(said).to_have_text(re.compile(r"Right\s*The end of this case stands below\."))


def first(case: Case) -> bool:
    """Tell whether the right answer stands before the wrong one that is tried."""
    order = ("pass", "fail", "borderline", "cannot-say")
    return order.index(case.limits()) < order.index(case.wrong_limits())


def tab_to(page: Page, wanted: str, key: str = "Tab") -> None:
    """Press Tab until what is wanted has the focus."""
    for _ in range(60):
        page.keyboard.press(key)
        if page.evaluate("(wanted) => document.activeElement.matches(wanted)", wanted):
            return
    raise AssertionError(f"no way by keyboard to {wanted}")


def test_whoever_does_not_know_is_told_and_the_address_gives_nothing_away(
    learner: Learner, page: Page
) -> None:
    """Each step can be given up, and counts as told; the address holds the case alone."""
    learner.opens()
    learner.does("dc")
    for step in ("limits", "cause", "action"):
        learner.answers(step, "do-not-know", "cannot-say")

    expect(learner.end).to_contain_text("Cause: told")
    expect(learner.kept).to_contain_text("Cause: 1 told; wrong answers: 0")
    parts = dict(one.split("=") for one in page.url.split("#")[1].split("&"))
    assert {key: str(value) for key, value in learner.case.asked.items()} == parts
