"""What tests measure is a page at rest."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Page

from tests.browser.phone import Phone
from tests.browser.settled import page_width

GROWS = """() => {
  const late = document.createElement("div");
  late.style.cssText = "height: 1px; width: 0; transition: width 400ms";
  document.body.append(late);
  requestAnimationFrame(() => requestAnimationFrame(() => { late.style.width = "2000px"; }));
}"""


def test_a_page_is_measured_once_nothing_moves(phone: Phone, page: Page) -> None:
    """Something that still grows counts with the width it grows to."""
    phone.open("safety/")
    page.evaluate(GROWS)

    assert page_width(page) >= 2000


def test_no_test_measures_a_page_by_itself() -> None:
    """The width of a page is read in one place, which waits before it reads."""
    asked = "document.documentElement." + "scrollWidth"
    files = Path(__file__).parents[1].rglob("*.py")

    assert [x.name for x in files if asked in x.read_text(encoding="utf-8")] == ["settled.py"]
