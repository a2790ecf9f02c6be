"""Where no script runs, every kind of page is still read on the narrowest phone."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.host import Host
from tests.browser.settled import page_width

NARROWEST = 320  # px
LEAST_LETTER = 11  # px: what a caption in a picture or a footnote may come down to
ONE_OF_EACH_KIND = [
    "",
    "device-types/a/",
    "dc-sources/ev-charge-point/",
    "tests/trip-time/",
    "limits/iec-61008-1/",
    "codes/gb/",
    "glossary/",
    "troubleshooting/",
]
WITH_A_CHECKER = ["checkers/readings/", "checkers/schedule/", "lessons/why-dc-blinds/"]
# Words of the article whose letters are too small.
UNREADABLE = """(least) => {
  const words = document.createTreeWalker(document.querySelector("article"), NodeFilter.SHOW_TEXT);
  const bad = [];
  for (let one = words.nextNode(); one; one = words.nextNode()) {
    const box = one.parentElement;
    const seen = one.data.trim() && box.checkVisibility() && !box.closest("svg, .unseen");
    if (seen && parseFloat(getComputedStyle(box).fontSize) < least) {
      bad.push(one.data.trim());
    }
  }
  return bad;
}"""


@pytest.fixture
def plain(browser: Browser) -> Iterator[Page]:
    """A page as narrow as they come, in a browser that runs no script."""
    context = browser.new_context(
        viewport={"width": NARROWEST, "height": 700}, is_mobile=True, java_script_enabled=False
    )
    yield context.new_page()
    context.close()


@pytest.mark.parametrize("place", [*ONE_OF_EACH_KIND, *WITH_A_CHECKER])
def test_a_page_is_read_without_scripts(plain: Page, lasting_host: Host, place: str) -> None:
    """Nothing reaches over the edge, its heading is seen, and no letter is too small."""
    plain.goto(lasting_host.address + place)

    assert page_width(plain, scripts=False) <= NARROWEST
    assert plain.evaluate(UNREADABLE, LEAST_LETTER) == []
    expect(plain.get_by_role("heading", level=1)).to_be_visible()


@pytest.mark.parametrize("place", WITH_A_CHECKER)
def test_a_checker_says_that_it_needs_scripts(plain: Page, lasting_host: Host, place: str) -> None:
    """In plain words where its verdict would stand, with the way to the tables."""
    plain.goto(lasting_host.address + place)
    said = plain.locator("[data-verdict] noscript").first

    expect(said.locator("strong")).to_have_text(
        "This checker needs scripts, and this browser runs none."
    )
    expect(said.locator("strong")).to_be_visible()
    expect(said.locator("a")).to_be_visible()
    expect(plain.get_by_text("Type meanwhile").first).to_be_hidden()
