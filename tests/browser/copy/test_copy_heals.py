"""A copy that is not as its build made it puts itself right, and loses nothing on the way."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.copy.copy_on_phone import damage, state, wait_for_copy, wrong_entries
from tests.browser.copy.second_build import MARK, make_second_build
from tests.browser.guard import Guard
from tests.browser.host import Host
from tests.browser.phone import PATIENCE, Phone
from tests.browser.sampling import sampled
from tests.browser.starts import CASE, LENGTH

pytestmark = pytest.mark.first_visit

DAMAGED = [
    ("pyodide.asm.wasm", "half of it"),
    (".whl", "one byte of it"),
    ("pyodide.asm.js", "one byte of it"),
    ("/worker.js", "half of it"),
    ("/page.js", "half of it"),
    ("pyodide.asm.wasm", "its type"),
    ("pyodide.js", "its type"),
    ("python_stdlib.zip", "all of it"),
]


@pytest.fixture
def second(site: Path, tmp_path: Path) -> Path:
    """The folder of a second build."""
    return make_second_build(site, tmp_path / "second")


@pytest.mark.parametrize(("ending", "way"), sampled(DAMAGED, always=1))
def test_a_damaged_entry_is_fetched_anew(
    phone: Phone, page: Page, guard: Guard, ending: str, way: str
) -> None:
    """The next start gives its verdict without being told to, and the copy is right again."""
    guard.allow("could not start", "integrity", "Failed", "error:", "MIME", "compil", "wasm")
    phone.open(CASE)
    phone.waits_for("pass")
    wait_for_copy(page)
    damage(page, ending, way)

    page.reload()

    phone.waits_for("pass")
    wait_for_copy(page)
    assert wrong_entries(page) == []


@pytest.mark.slow
def test_a_wrong_type_from_the_host_is_not_kept(
    phone: Phone, page: Page, host: Host, guard: Guard
) -> None:
    """Machine code of another type fails the first start; the copy's own types let it run."""
    guard.allow("could not start", "MIME", "Failed", "ERR_")
    host.types = {".wasm": "application/octet-stream"}
    phone.open(CASE)

    phone.waits_for("pass")
    wait_for_copy(page)
    assert wrong_entries(page) == []
    host.stop()
    page.evaluate(f"localStorage.removeItem('{LENGTH}')")
    page.reload()
    phone.waits_for("pass")


@pytest.mark.slow
def test_an_update_carries_nothing_wrong_along(
    phone: Phone, page: Page, host: Host, guard: Guard, second: Path
) -> None:
    """What an earlier build's copy holds is compared again before it is taken over."""
    guard.allow("Failed", "ERR_")
    phone.open("safety/")
    wait_for_copy(page)
    for ending, way in (
        ("/pyodide.asm.js", "one byte of it"),
        ("/pyodide.asm.wasm", "its type"),
        ("icon-192.png", "half of it"),
    ):
        damage(page, ending, way)
    assert len(wrong_entries(page)) == 3

    host.folder = second
    page.reload()
    notice = page.locator(".notice")
    notice.get_by_role("button", name="Use it now").click(timeout=PATIENCE)
    expect(page.locator("body")).to_contain_text(MARK, timeout=PATIENCE)
    wait_for_copy(page)

    assert wrong_entries(page) == []
    host.stop()
    phone.open(CASE)
    phone.waits_for("pass")
    expect(page.locator("body")).to_contain_text(MARK)


@pytest.mark.slow
def test_try_again_passes_the_copy_by(phone: Phone, page: Page, host: Host, guard: Guard) -> None:
    """Where nothing could be put right without a network, it says so; then all is asked for."""
    guard.allow("could not start", "integrity", "Failed", "ERR_")
    phone.open(CASE)
    phone.waits_for("pass")
    wait_for_copy(page)
    damage(page, ".whl", "one byte of it")
    page.context.new_cdp_session(page).send("Network.clearBrowserCache")
    host.stop()

    page.reload()

    expect(phone.verdict).to_contain_text("could not start", timeout=PATIENCE)
    expect(state(page)).to_contain_text(".whl did not arrive", timeout=PATIENCE)
    host.start()
    host.asked.clear()
    page.get_by_role("button", name="Try again").click()
    phone.waits_for("pass")
    asked = [path.partition("?")[0].rpartition("/")[2] for path in host.asked]
    assert {"worker.js", "pyodide.js", "pyodide.asm.js", "pyodide.asm.wasm"} <= set(asked)
    assert wrong_entries(page) == []
