"""What is heard one by one, without what stands around it, still tells what it is."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Page, expect

from build_tools.pages.macros.checkers import fragment
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


def test_an_entry_is_told_by_its_own_name(phone: Phone) -> None:
    """A device in a row of them: which one it is, and which one the button would remove."""
    page = _judged(phone, "series")
    entry = phone.field("devices", "1")

    expect(entry).to_have_accessible_name("Device 2: left")
    phone.types("garage", "devices", "1", "id")
    expect(entry).to_have_accessible_name("Device 2: garage")
    expect(page.get_by_role("button", name="Remove Device 2: garage")).to_have_count(1)


def test_a_row_of_results_is_headed_by_what_it_is_about(phone: Phone) -> None:
    """The figures of each device are heard with the device that they belong to."""
    page = _judged(phone, "series")
    rows = page.get_by_role("region", name="Devices").get_by_role("rowheader")

    expect(rows).to_have_text(["main", "left", "right"])


def test_a_current_is_told_in_one_unit(phone: Phone) -> None:
    """The same current is not 5 A in a sentence and 5000 mA in the figures."""
    _judged(phone, "series")

    expect(phone.results).to_contain_text("5 A")
    expect(phone.results).not_to_contain_text("5000")


def test_a_finding_begins_as_a_sentence_and_leaves_names_as_they_are(phone: Phone) -> None:
    """What it is about begins with a capital, but not where a device's own name begins it."""
    _judged(phone, "series")
    heads = phone.results.locator(".finding__about").all_inner_texts()

    assert "Smooth DC through main" in heads
    assert "left before main" in heads


def test_a_result_is_called_by_its_name(phone: Phone) -> None:
    """A circuit, a supply and a figure are told in words, not by the key they have in data."""
    _judged(phone, "type-for-load")
    expect(phone.results).to_contain_text("Inverter fed line to neutral")
    expect(phone.results).to_contain_text("Single-phase: line and neutral")


def test_a_share_is_told_in_per_cent(phone: Phone) -> None:
    """The reply has 7.5 of 9 mA as a fraction, rounded to the safe side in its fifth digit."""
    _judged(phone, "leakage-budget")

    told = phone.results.locator("dl > div", has_text="Used of the budget")
    expect(told.locator("dd")).to_have_text("83.33 %")
