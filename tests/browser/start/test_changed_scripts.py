"""No verdict comes from a file that was changed on its way, from the first visit on."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.copy.changed_site import change_file
from tests.browser.guard import Guard
from tests.browser.host import Host
from tests.browser.phone import NO_COPY, PATIENCE, Phone
from tests.browser.sampling import sampled
from tests.browser.starts import CASE

pytestmark = pytest.mark.first_visit

STARTED = (
    "browser/*/worker.js",
    "runtime/pyodide.js",
    "runtime/pyodide.asm.js",
    "runtime/pyodide.asm.wasm",
    "runtime/*.whl",
    "runtime/*.zip",
)
LATER = {
    "log-page": "log/",
    "log-store": "log/",
    "log-entry-words": "log/",
    "schedule-page": "checkers/schedule/",
    "practice-page": "checkers/practice/",
}


Change = Callable[[str], str]


@pytest.fixture
def told(page: Page) -> list[str]:
    """What the console was told, on a phone that keeps no copy."""
    heard: list[str] = []
    page.on("console", lambda message: heard.append(message.text))
    page.add_init_script(NO_COPY)
    return heard


@pytest.fixture
def change(host: Host, guard: Guard, site: Path, tmp_path: Path) -> Change:
    """Changes the one file whose place is of this pattern; gives its name."""
    guard.allow("could not start", "integrity", "Failed", "error:", "did not come")

    def changing(pattern: str) -> str:
        (file,) = site.glob(pattern)
        host.folder = change_file(site, tmp_path / "changed", file.relative_to(site).as_posix())
        return file.name

    return changing


@pytest.mark.parametrize("pattern", sampled(STARTED, always=2))
def test_no_verdict_comes_from_a_changed_file(
    phone: Phone, change: Change, told: list[str], pattern: str
) -> None:
    """Of what starts the checkers, each in turn; it is named."""
    name = change(pattern)
    phone.open(CASE)

    expect(phone.verdict).to_contain_text("could not start", timeout=PATIENCE)
    assert [text for text in told if "could not start" in text]
    assert name.endswith((".whl", ".zip")) or [text for text in told if name in text], told
    assert phone.verdict.get_attribute("data-outcome") == "unfinished"


@pytest.mark.usefixtures("told")
def test_a_changed_page_script_is_named(phone: Phone, page: Page, change: Change) -> None:
    """It does not run; the text that stands there says why, and where the limits are."""
    change("browser/*/page.js")
    phone.open(CASE)

    expect(phone.verdict).to_contain_text("page.js was changed on its way", timeout=PATIENCE)
    expect(phone.verdict).to_contain_text("Not running")
    expect(phone.verdict).not_to_contain_text("this browser cannot run the checkers")
    phone.verdict.get_by_role("link", name="limit tables").click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("Limit tables")


@pytest.mark.usefixtures("told")
def test_a_page_script_of_a_wrong_type_is_named(phone: Phone, host: Host, guard: Guard) -> None:
    """No browser runs it, and the text that stands there says as what it came."""
    guard.allow("MIME")
    host.types = {".js": "text/plain"}
    phone.open(CASE)

    expect(phone.verdict).to_contain_text("page.js came as text/plain", timeout=PATIENCE)


@pytest.mark.parametrize("name", sampled(LATER, always=1))
def test_a_changed_script_that_comes_later_is_told(
    phone: Phone, page: Page, change: Change, told: list[str], name: str
) -> None:
    """Log, schedule and practice are not there then, and say so."""
    change(f"browser/*/{name}-????????.js")  # the build adds a hash of eight signs
    phone.open(LATER[name])

    expect(page.locator("[data-log], [data-schedule], [data-practice]").first).to_contain_text(
        "did not arrive as it was built", timeout=PATIENCE
    )
    assert [text for text in told if f"{name}-" in text and "integrity" in text], told


@pytest.mark.usefixtures("told")
def test_a_changed_theme_does_not_run(phone: Phone, page: Page, change: Change) -> None:
    """The verdict comes without it."""
    change("assets/javascripts/bundle.*.js")
    phone.open(CASE)
    phone.waits_for("pass")
    page.locator("h1").click()
    page.wait_for_timeout(500)

    assert page.evaluate("globalThis.location$ === undefined")
    expect(phone.verdict).not_to_contain_text("does not run")
