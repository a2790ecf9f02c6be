"""No state of any checker breaks a rule of axe-core, in light or in dark."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page, expect

from build_tools.pages.macros.checkers import fragment
from checkers.catalogue import CHECKERS
from checkers.domain.checker import Checker
from tests.browser.axe import UNFOLD, bring_axe, broken_in_either_colours
from tests.browser.phone import PATIENCE, Phone
from tests.browser.sampling import sampled
from tests.browser.shown import shown


@pytest.mark.parametrize("checker", sampled(CHECKERS, always=1), ids=lambda checker: checker.slug)
def test_axe_finds_nothing_in_any_state(phone: Phone, page: Page, checker: Checker) -> None:
    """The empty form, every example with all that was found, and a field that reads wrong."""
    phone.open(f"checkers/{checker.slug}/")
    phone.waits_until_running()
    bring_axe(page)
    found = broken_in_either_colours(page, "empty")
    for example in checker.examples:
        page.evaluate("(address) => { location.hash = address; }", fragment(example.request))
        if checker.slug == "practice":  # its learner judges, step by step
            expect(page.locator("[data-readings] > li").first).to_be_visible(timeout=PATIENCE)
        else:
            phone.waits_for(shown(checker, example)[0])
        page.evaluate(UNFOLD)
        found += broken_in_either_colours(page, example.title)
    box = phone.types_nonsense()
    expect(box).to_have_attribute("aria-invalid", "true", timeout=PATIENCE)
    found += broken_in_either_colours(page, "a field that reads wrong")

    assert found == []
