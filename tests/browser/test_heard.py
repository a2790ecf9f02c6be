"""What is heard one by one, without what stands around it, still tells what it is."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Page, expect

from build_tools.checker_shows import fragment
from checkers.catalogue import checker_for
from tests.browser.phone import Phone
from tests.browser.shown import shown


def _judged(phone: Phone, slug: str) -> Page:
    checker = checker_for(slug)
    example = checker.examples[0]
    phone.open(f"checkers/{slug}/#{fragment(example.request)}")
    phone.waits_for(shown(checker, example)[0])
    return phone.page


def test_a_figure_is_asked_for_with_its_unit(phone: Phone) -> None:
    """The unit beside a field is told with it, and the sign beside a heading is not."""
    page = _judged(phone, "readings")

    field = phone.field("circuit", "standing_leakage").locator("input")
    expect(field).to_have_accessible_description(re.compile("^mA The residual current"))
    expect(page.locator("h1")).to_have_accessible_name("Judge readings")


@pytest.mark.parametrize(
    ("slug", "lists"), [("test-plan", ".steps"), ("schedule", "[data-schedule] .findings")]
)
def test_what_every_line_has_tells_whose_it_is(phone: Phone, slug: str, lists: str) -> None:
    """No two headings and no two lines that unfold have the same name in one list."""
    page = _judged(phone, slug)

    told = [one.locator("h3, summary").all_inner_texts() for one in page.locator(lists).all()]

    assert any(told)
    assert [names for names in told if len(set(names)) < len(names)] == []
