"""A plain nginx, with the list of types that Debian gives it, serves the site as it is."""

from __future__ import annotations

import os
import re
import shutil
import socket
import subprocess
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.copy.copy_on_phone import wait_for_copy, wrong_entries
from tests.browser.copy.second_build import MARK, make_second_build
from tests.browser.phone import PATIENCE, PHONE
from tests.browser.starts import CASE, LENGTH

PROGRAM = shutil.which("nginx", path="/usr/sbin:/usr/bin:/usr/local/sbin:/usr/local/bin")
LIST = Path("/etc/nginx/mime.types")
pytestmark = pytest.mark.skipif(
    not (PROGRAM and LIST.is_file()) and "EVERY_ENGINE" not in os.environ,
    reason="nginx is not on this machine",
)

# As Debian's own settings have it; without any list nginx sends every file but pages as text/plain.
DEBIANS = f"include {LIST}; default_type application/octet-stream;"
SETTINGS = """
daemon off; pid {folder}/pid; error_log stderr; events {{}}
http {{
    access_log off; {types}
    client_body_temp_path {folder}/a; proxy_temp_path {folder}/b; fastcgi_temp_path {folder}/c;
    uwsgi_temp_path {folder}/d; scgi_temp_path {folder}/e;
    server {{ listen 127.0.0.1:{port}; location / {{ root {folder}/site; index index.html; }} }}
}}
"""
# Every kind of file that common lists know (nginx, conf/mime.types; Apache, mime.types), and those
# that are read as bytes, whatever their type: an archive, and what a browser reads by its link.
COMMON = {".css", ".html", ".js", ".json", ".png", ".svg", ".txt", ".wasm", ".xml", ".zip"}
NEEDS_NONE = {".whl", ".webmanifest"}
FOR_OTHERS = {".map"}  # for other programs: no page asks for one
TYPE = re.compile(r"^\s+[\w/+.-]+\s+([\w\s]+);", re.MULTILINE)


class Plain:
    """An nginx that serves a folder, which can be put in another's place."""

    def __init__(self, site: Path, folder: Path, types: str) -> None:
        self.folder = folder
        self.put(site)
        with socket.socket() as free:
            free.bind(("127.0.0.1", 0))
            self.port = free.getsockname()[1]
        settings = folder / "nginx.conf"
        settings.write_text(SETTINGS.format(folder=folder, types=types, port=self.port))
        self.process = subprocess.Popen(
            [str(PROGRAM), "-p", str(folder), "-c", str(settings), "-g", "user root;"]
        )
        for _ in range(100):
            with socket.socket() as tried:
                if tried.connect_ex(("127.0.0.1", self.port)) == 0:
                    return
            time.sleep(0.1)
        raise AssertionError("nginx does not answer")

    def put(self, site: Path) -> None:
        """Serve this folder from now on."""
        (self.folder / "site").unlink(missing_ok=True)
        (self.folder / "site").symlink_to(site)

    def stop(self) -> None:
        """End it."""
        self.process.terminate()
        self.process.wait(timeout=10)


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A page on a phone that has never seen the site."""
    context = browser.new_context(**PHONE)
    yield context.new_page()
    context.close()


def _verdict(page: Page, outcome: str) -> None:
    page.locator(f'[data-verdict][data-outcome="{outcome}"]').wait_for(timeout=PATIENCE)


@pytest.mark.slow
def test_debians_own_list_of_types_is_enough(page: Page, site: Path, tmp_path: Path) -> None:
    """First visit, without the host, and an update: each gives its verdict."""
    second = make_second_build(site, tmp_path / "second")
    host = Plain(site, tmp_path, DEBIANS)
    try:
        address = f"http://127.0.0.1:{host.port}/{CASE}"
        page.goto(address)
        _verdict(page, "pass")
        wait_for_copy(page)
        assert wrong_entries(page) == []
        host.put(second)
        page.reload()
        page.get_by_role("button", name="Use it now").click(timeout=PATIENCE)
        expect(page.locator("body")).to_contain_text(MARK, timeout=PATIENCE)
        _verdict(page, "pass")
        wait_for_copy(page)
        assert wrong_entries(page) == []
    finally:
        host.stop()
    page.evaluate(f"localStorage.removeItem('{LENGTH.replace('/some/where', '')}')")
    page.reload()
    _verdict(page, "pass")


def test_without_any_list_the_reason_is_said(page: Page, site: Path, tmp_path: Path) -> None:
    """Pages can be read; that no script runs is told, with the type that the host sent."""
    host = Plain(site, tmp_path, "")
    try:
        page.goto(f"http://127.0.0.1:{host.port}/{CASE}")
        told = page.locator("[data-verdict]")
        expect(told).to_contain_text("page.js came as text/plain", timeout=PATIENCE)
        expect(told.get_by_role("link", name="limit tables")).to_be_visible()
    finally:
        host.stop()


def test_every_kind_of_file_is_one_that_hosts_know(site_names: set[str]) -> None:
    """A kind that common lists lack would come with a type that no browser runs."""
    listed = {f".{end}" for ends in TYPE.findall(LIST.read_text()) for end in ends.split()}

    assert listed >= COMMON
    assert {Path(name).suffix for name in site_names} - FOR_OTHERS <= COMMON | NEEDS_NONE
