"""The camera that takes the pictures of the site refuses what would show nothing worth seeing."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from build_tools.screenshots.camera import Camera
from build_tools.screenshots.views import View, Views
from build_tools.site.server import served

PALETTES = "".join(
    f"<input type=radio name=__palette data-md-color-scheme={name}>"
    for name in ("default", "slate")
)
HEAD = (
    "<!doctype html><meta name=viewport content=width=device-width><title>A page</title>"
    "<meta http-equiv=Content-Security-Policy content=\"script-src 'self'\">"  # as every page has
    f"<body>{PALETTES}"
)
BAR = "<div data-verdict data-outcome={outcome}><b data-word>{word}</b></div><p>A page."


def faults(browser: Browser, folder: Path, body: str, outcome: str = "") -> list[str]:
    """Return what the camera says of a page with this body."""
    (folder / "site").mkdir()
    (folder / "site" / "index.html").write_text(HEAD + body)
    view = View("one", "", outcome, ())
    with served(folder / "site") as origin:
        taken, found = Camera(
            browser, origin, folder, Views((412,), 320, ("light",), (view,))
        ).take(view)
    assert bool(taken) or found
    return [one.says for one in found]


def test_a_page_that_says_something_is_taken(browser: Browser, tmp_path: Path) -> None:
    """On the screen and on paper, without a word of complaint."""
    body = BAR.format(outcome="fail", word="Fail") + "<p>A page." * 12

    assert faults(browser, tmp_path, body, "fail") == []


def test_an_empty_page_is_refused(browser: Browser, tmp_path: Path) -> None:
    """A heading with nothing under it is as empty as no heading."""
    found = faults(browser, tmp_path, "<h1>A page</h1>")

    assert found == ["412 light: empty", "print light: empty"]


def test_a_page_too_wide_is_told_of(browser: Browser, tmp_path: Path) -> None:
    """With what makes it so."""
    body = '<table class="wide" width="500"><td>A page.</table>' + "<p>A page." * 12

    (told,) = faults(browser, tmp_path, body)

    assert told.startswith("508 px wide on a screen of 320 px: table.wide")


@pytest.mark.parametrize(
    ("body", "outcome"),
    [
        (BAR.format(outcome="unfinished", word="'Not judged yet'"), "pass"),
        (BAR.format(outcome="fail", word="Fail"), "pass"),
        (BAR.format(outcome="unfinished", word="Not running"), ""),
        (BAR.format(outcome="cannot-say", word="Not judged"), "cannot-say"),
        (f"<section data-given>{BAR.format(outcome='unfinished', word='Not judged yet')}", ""),
    ],
)
def test_a_checker_that_has_not_judged_is_refused(
    browser: Browser, tmp_path: Path, body: str, outcome: str
) -> None:
    """Not at all, not as its example ends, not running, crashed, or with fields that are filled."""
    (found,) = faults(browser, tmp_path, body, outcome)

    assert found.startswith("a checker has not judged as it should")
