"""Every checker is used with the keyboard alone, and a screen reader is told what is seen."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Page, expect

from checkers.catalogue import CHECKERS
from checkers.domain.checker import Checker
from tests.browser.axe import UNFOLD
from tests.browser.pages.keyboard_walk import number_controls, press_until, walk
from tests.browser.phone import PATIENCE, Phone
from tests.browser.reply.heard import plain, told
from tests.browser.sampling import sampled
from tests.browser.shown import shown
from tests.browser.targets import too_small

EVERY = pytest.mark.parametrize(
    "checker", sampled(CHECKERS, always=1), ids=lambda checker: checker.slug
)


@pytest.fixture
def still(phone: Phone) -> Phone:
    """A phone set to little motion: what opens or slides is there at once."""
    phone.page.emulate_media(reduced_motion="reduce")
    return phone


@EVERY
def test_keys_alone_lead_to_a_verdict_and_ears_follow(
    still: Phone, page: Page, checker: Checker
) -> None:
    """The whole way of a reader who neither points nor sees."""
    still.open(f"checkers/{checker.slug}/")
    still.waits_until_running()
    controls = number_controls(page)

    _each_control_is_named_as_it_reads(page, controls)
    _each_control_is_reached_and_seen(page, controls)
    _a_key_brings_a_verdict_that_is_told(still, checker, len(controls))
    page.evaluate(UNFOLD)
    assert too_small(page) == []
    _what_is_wrong_is_told_with_its_reason(still)


def _each_control_is_named_as_it_reads(page: Page, controls: list[dict[str, str]]) -> None:
    names = [one["name"] for _, one in sorted(told(page).items())]
    pairs = list(zip(controls, names, strict=True))

    assert [one for one, name in pairs if not name] == [], "no name"
    assert [(one, name) for one, name in pairs if plain(one["says"]) not in plain(name)] == [], (
        "other name"
    )


def _each_control_is_reached_and_seen(page: Page, controls: list[dict[str, str]]) -> None:
    """Each once and in order, there and back."""
    everything = list(range(len(controls)))
    there, back = (walk(page, len(controls), key) for key in ("Tab", "Shift+Tab"))
    stops = there + back

    assert [stop.number for stop in there] == everything
    assert sorted(stop.number for stop in back) == everything
    assert [controls[stop.number] for stop in stops if not stop.marked] == [], "not marked"
    assert [controls[stop.number] for stop in stops if not stop.seen] == [], "not in view"


def _a_key_brings_a_verdict_that_is_told(phone: Phone, checker: Checker, count: int) -> None:
    is_case = checker.slug == "practice"  # its learner judges, and is marked
    press_until(
        phone.page, "Shift+Tab", "[data-answer]" if is_case else ".examples li:first-child a", count
    )
    phone.page.keyboard.press("Enter")
    bar = phone.verdict.locator("[role=status][aria-live=polite]")
    outcome, word = shown(checker, checker.examples[0])
    said = re.compile("Right|Not right|Told") if is_case else word

    expect(bar).to_contain_text(said, ignore_case=True, timeout=PATIENCE)
    if not is_case:
        phone.waits_for(outcome)


def _what_is_wrong_is_told_with_its_reason(phone: Phone) -> None:
    box = phone.types_nonsense()
    expect(box).to_have_attribute("aria-invalid", "true", timeout=PATIENCE)
    number_controls(phone.page)
    heard = told(phone.page)[int(box.get_attribute("data-walk") or -1)]
    problem = box.evaluate(
        "(box) => box.closest('[data-field]').querySelector('[data-problem]').innerText"
    )

    assert problem
    assert plain(problem) in plain(heard["description"])
    assert heard["properties"]["invalid"] == "true"
