"""Whoever follows the page on hosting to nginx gets the policy, the types and running checkers."""

from __future__ import annotations

import urllib.error
import urllib.request
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, expect

from build_tools.files.media_types import TYPES
from build_tools.site.policy import sent_headers
from tests.browser.copy.nginx import LACKING, Nginx
from tests.browser.guard import Elsewhere
from tests.browser.phone import PATIENCE, PHONE
from tests.browser.tells import ASK_WORKER, BLOCKED, TELLS

pytestmark = pytest.mark.skipif(LACKING != "", reason=LACKING)

CASE = "checkers/demonstration/"
LEFT_OUT = {".br", ".gz", ".py", ".map"}  # copies, and what serves nobody


@pytest.fixture
def nginx(site: Path, tmp_path: Path) -> Iterator[Nginx]:
    """One that serves the site as told, with a script of ours."""
    made = Nginx(site, tmp_path, {"tells.js": TELLS})
    yield made
    made.stop()


def _headers(url: str) -> dict[str, str]:
    try:
        with urllib.request.urlopen(url) as answer:  # noqa: S310  # our own machine
            return dict(answer.headers)
    except urllib.error.HTTPError as error:
        return dict(error.headers)


def test_every_kind_of_file_has_its_type_and_the_policy(nginx: Nginx, site: Path) -> None:
    """One of each, and an address where nothing is."""
    names = [path.relative_to(site) for path in site.rglob("*") if path.is_file()]
    of_each = {name.suffix: name for name in names if name.suffix not in LEFT_OUT}
    assert len(of_each) > 8

    for suffix, name in of_each.items():
        headers = _headers(f"{nginx.address}{name.as_posix()}")
        assert headers["Content-Type"].partition(";")[0] == TYPES[suffix], name
        assert sent_headers().items() <= headers.items(), name
    assert sent_headers().items() <= _headers(f"{nginx.address}nothing/here").items()


def test_a_worker_is_held_to_the_policy(
    nginx: Nginx, browser: Browser, elsewhere: Elsewhere
) -> None:
    """It can tell another host nothing; the checkers run."""
    elsewhere.asked.clear()
    context = browser.new_context(**PHONE)
    page = context.new_page()
    page.goto(nginx.address + CASE)
    outcome = page.locator("[data-verdict]:not([data-outcome=waiting])")
    expect(outcome).to_be_visible(timeout=PATIENCE)

    said = page.evaluate(
        ASK_WORKER, [f"{nginx.address}tells.js", "http://elsewhere.invalid/from-worker"]
    )
    context.close()

    assert said == BLOCKED
    assert elsewhere.asked == []
