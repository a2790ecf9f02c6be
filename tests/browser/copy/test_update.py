"""A new build takes over whole, when the reader says so, or not at all."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.copy.second_build import MARK, make_second_build
from tests.browser.guard import Guard
from tests.browser.host import Host
from tests.browser.phone import PATIENCE, Phone

pytestmark = pytest.mark.first_visit

CASE = (
    "checkers/readings/#code=gb&on=2026-11-24&device.type=A&device.rated_residual_current=30+mA"
    "&readings.0.test=trip-time&readings.0.multiple=1&readings.0.waveform=ac&readings.0.value=28"
)
LOADED = "performance.getEntriesByType('resource').map((entry) => entry.name)"


@pytest.fixture(scope="session")
def second(site: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of a second build."""
    return make_second_build(site, tmp_path_factory.mktemp("second") / "site")


def _scripts_of(page: Page) -> set[str]:
    loaded = page.evaluate(LOADED)
    return {url.split("/browser/")[1].split("/")[0] for url in loaded if "/browser/" in url}


def test_a_new_build_waits_and_then_takes_over_whole(
    phone: Phone, page: Page, host: Host, second: Path, guard: Guard
) -> None:
    """The old build serves until the reader takes the new one, which is then all there."""
    (first_scripts,) = (path.name for path in (host.folder / "browser").iterdir())
    phone.open(CASE)
    phone.waits_for("pass")
    expect(page.locator("[data-offline]")).to_contain_text("Works offline", timeout=PATIENCE)

    host.folder = second
    host.asked.clear()
    page.reload()
    phone.waits_for("pass")
    notice = page.locator(".notice")
    expect(notice).to_contain_text(
        "newer build of this site, of 24 December 2031 (second)", timeout=PATIENCE
    )
    expect(notice).to_contain_text("It corrects verdicts.")
    outdated = page.locator("[data-outdated]")
    expect(outdated).to_contain_text(
        "newer build of this site, of 24 December 2031 (second), corrects"
    )
    assert not [path for path in host.asked if path.endswith(".wasm")], (
        "the runtime has not changed"
    )

    page.reload()
    phone.waits_for("pass")
    expect(page.locator("body")).not_to_contain_text(MARK)
    assert _scripts_of(page) == {first_scripts}

    expect(notice).to_be_visible(timeout=PATIENCE)
    host.stop()
    guard.allow("Failed to load resource", "ERR_")
    with page.expect_navigation():
        notice.get_by_role("button", name="Use it now").click()
    phone.waits_for("pass")
    expect(page.locator("body")).to_contain_text(MARK)
    expect(page.locator("[data-offline]")).to_contain_text("24 December 2031", timeout=PATIENCE)
    expect(outdated).to_be_hidden()
    assert _scripts_of(page) == {"secondbuild"}
    caches = page.evaluate("caches.keys()")
    assert [name for name in caches if "second" not in name] == []


@pytest.mark.slow
def test_a_build_that_does_not_arrive_whole_changes_nothing(
    phone: Phone, page: Page, host: Host, second: Path, guard: Guard
) -> None:
    """With a file of the new build missing the old one goes on, and says that it is outdated."""
    phone.open("safety/")
    expect(page.locator("[data-offline]")).to_contain_text("Works offline", timeout=PATIENCE)
    guard.allow("Failed to load resource", "Not Found")

    host.folder = second
    host.missing = "/sources/index.html"
    host.asked.clear()
    page.reload()
    page.wait_for_timeout(3000)

    assert "/service-worker.js" in host.asked
    expect(page.locator(".notice")).to_have_count(0)
    expect(page.locator("body")).not_to_contain_text(MARK)
    phone.open(CASE)
    phone.waits_for("pass")
    expect(page.locator("[data-outdated]")).to_contain_text("corrects verdicts")
    host.stop()
    page.reload()
    phone.waits_for("pass")
    expect(page.locator("[data-outdated]")).to_contain_text("corrects verdicts")
    phone.open("codes/gb/")
    expect(page.locator("h1")).to_contain_text("BS 7671")
    expect(page.locator("body")).not_to_contain_text(MARK)
