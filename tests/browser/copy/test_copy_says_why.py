"""A copy that cannot be finished says which file is missing, what came instead, and what to do."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.copy.changed_site import change_file
from tests.browser.copy.copy_on_phone import state, wait_for_copy
from tests.browser.copy.second_build import make_second_build
from tests.browser.guard import Guard
from tests.browser.host import Host
from tests.browser.phone import PATIENCE, Phone

pytestmark = pytest.mark.first_visit

FILE = "sources/index.html"
PICTURE = "assets/icon-512.png"
Change = Callable[..., None]
SIGN_IN = b"<!doctype html><title>Sign in to this network</title>"


@pytest.fixture
def change(host: Host, site: Path, tmp_path: Path) -> Change:
    """Changes one file of the site, to a harmless addition or to other contents."""

    def changing(name: str, content: bytes | None = None) -> None:
        host.folder = change_file(site, tmp_path / "changed", name, content)

    return changing


@pytest.fixture
def second(site: Path, tmp_path: Path) -> Path:
    """The folder of a second build."""
    return make_second_build(site, tmp_path / "second")


def _opened(phone: Phone, guard: Guard) -> None:
    guard.allow("Failed to load resource", "Forbidden", "integrity")
    phone.open("safety/")


def test_a_refused_file_is_named(phone: Phone, page: Page, host: Host, guard: Guard) -> None:
    """With the answer that the host gave."""
    host.refused = {f"/{FILE}": 403}
    _opened(phone, guard)

    expect(state(page)).to_contain_text(f"{FILE} was refused (403)", timeout=PATIENCE)
    expect(state(page)).to_contain_text("could not be finished")
    assert page.evaluate("navigator.serviceWorker.controller") is None


def test_a_changed_file_is_named(phone: Phone, page: Page, guard: Guard, change: Change) -> None:
    """As where a proxy writes into pages."""
    change(FILE)
    _opened(phone, guard)

    expect(state(page)).to_contain_text(
        f"{FILE} does not match its hash: something between the host and this device changes files",
        timeout=PATIENCE,
    )


@pytest.mark.slow
def test_another_page_in_place_of_a_file_is_named(
    phone: Phone, page: Page, host: Host, guard: Guard, change: Change
) -> None:
    """As a network does that asks for a sign-in first."""
    change(PICTURE, SIGN_IN)
    host.types = {".png": "text/html"}
    _opened(phone, guard)

    expect(state(page)).to_contain_text(f"{PICTURE} came as text/html", timeout=PATIENCE)
    expect(state(page)).to_contain_text("Sign in or use another network")


def test_no_room_is_said(phone: Phone, page: Page, host: Host, guard: Guard) -> None:
    """The device may be full."""
    session = page.context.new_cdp_session(page)
    session.send("Storage.overrideQuotaForOrigin", {"origin": host.origin, "quotaSize": 3_000_000})
    _opened(phone, guard)

    expect(state(page)).to_contain_text("there is no room for it", timeout=PATIENCE)


def test_a_worker_of_a_wrong_type_is_named(
    phone: Phone, page: Page, host: Host, guard: Guard
) -> None:
    """No browser keeps a copy by a script of another type."""
    guard.allow("MIME", "Failed", "SecurityError")
    phone.open("safety/")
    host.types = {".js": "text/plain"}
    page.evaluate("navigator.serviceWorker.getRegistrations()")

    expect(state(page)).to_contain_text("service-worker.js came as text/plain", timeout=PATIENCE)


@pytest.mark.slow
def test_a_newer_build_that_cannot_be_had_says_why(
    phone: Phone, page: Page, host: Host, guard: Guard, second: Path
) -> None:
    """The copy that is there goes on working, and both is said."""
    guard.allow("Failed to load resource", "Forbidden")
    phone.open("safety/")
    wait_for_copy(page)
    host.folder = second
    host.refused = {f"/{FILE}": 403}

    page.reload()

    expect(state(page)).to_contain_text(
        f"A newer build could not be fetched: {FILE} was refused (403)", timeout=PATIENCE
    )
    expect(state(page)).to_contain_text("Works offline")
