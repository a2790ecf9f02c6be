"""A test plan is no verdict: the bar says what it holds, and never looks like a pass."""

from __future__ import annotations

import re

from playwright.sync_api import expect

from tests.browser.phone import Phone


def test_the_bar_says_what_a_plan_holds(phone: Phone) -> None:
    """In the place of an outcome: how many steps, how many required, loads on or off."""
    phone.open("checkers/test-plan/#code=gb&device.type=A&device.rated_residual_current=30+mA")
    phone.waits_for("plan")

    held = re.compile(r"Plan\s*\d+ steps, \d+ of them required here\. \d+ with the loads on")
    expect(phone.verdict).to_contain_text(held)
    expect(phone.verdict).not_to_contain_text("Cannot say")
    expect(phone.page.locator("[data-outcome=pass]")).to_have_count(0)


def test_a_plan_with_a_gap_says_the_gap_first(phone: Phone) -> None:
    """Without a rating no test current can be named: that is what the bar tells."""
    phone.open("checkers/test-plan/#code=gb&device.type=A")
    phone.waits_for("cannot-say")

    expect(phone.verdict).to_contain_text("rated residual current is not given")
    expect(phone.results.locator(".finding[data-outcome=plan]")).to_have_count(1)
