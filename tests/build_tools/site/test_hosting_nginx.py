"""The settings that the hosting page gives for nginx do what it says, word for word."""

from __future__ import annotations

import re
import shutil
import socket
import subprocess
import time
from collections.abc import Iterator
from http.client import HTTPConnection, HTTPResponse
from pathlib import Path
from typing import NamedTuple

import pytest

from build_tools.files import paths
from build_tools.site.build import ensure_site
from build_tools.site.policy import sent_headers

NGINX = shutil.which("nginx") or shutil.which("nginx", path="/usr/sbin")
BROTLI = Path("/usr/lib/nginx/modules/ngx_http_brotli_static_module.so")
PAGE = (paths.ROOT / "docs" / "hosting.md").read_text(encoding="utf-8")
AT_ROOT, UNDER_A_PATH = re.findall(r"```nginx\n(.+?)```", PAGE, re.DOTALL)
REPLACED = 4  # lines of the first text, whose place the second takes
SETTINGS = {
    "/": AT_ROOT,
    "/handbook/rcd/": UNDER_A_PATH + "".join(AT_ROOT.splitlines(keepends=True)[REPLACED:]),
}

pytestmark = pytest.mark.skipif(NGINX is None, reason="no nginx on this machine (Debian: nginx)")


class Place(NamedTuple):
    """A running nginx: its port, and the path that the site lies under."""

    port: int
    path: str

    def asks(self, place: str, accepts: str = "identity") -> tuple[HTTPResponse, bytes]:
        """Ask for a place within the site, as it is or with a leading / from the host's root."""
        connection = HTTPConnection("127.0.0.1", self.port, timeout=30)
        address = place if place.startswith("/") else self.path + place
        connection.request("GET", address, headers={"Accept-Encoding": accepts})
        answer = connection.getresponse()
        body = answer.read()
        connection.close()
        return answer, body


@pytest.fixture(scope="module", params=SETTINGS)
def nginx(
    request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory
) -> Iterator[Place]:
    """An nginx with the settings of the page, each way it gives them."""
    folder = tmp_path_factory.mktemp("nginx")
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    (folder / "nginx.conf").write_text(_settings(request.param, folder, port), encoding="utf-8")
    command = [str(NGINX), "-p", str(folder), "-c", str(folder / "nginx.conf"), "-e", "stderr"]
    running = subprocess.Popen([*command, "-g", "daemon off;"])
    place = Place(port, request.param)
    _wait(place)
    yield place
    running.terminate()
    running.wait(30)


def _settings(path: str, folder: Path, port: int) -> str:
    text = SETTINGS[path].replace("/srv/site", str(ensure_site()))
    if not BROTLI.is_file():
        text = re.sub(r".*brotli_static.*\n", "", text)
    load = f"load_module {BROTLI};\n" if BROTLI.is_file() else ""
    kept = ("client_body", "proxy", "fastcgi", "uwsgi", "scgi")
    temporary = " ".join(f"{name}_temp_path {folder}/{name};" for name in kept)
    return (
        f"{load}user root; pid {folder}/pid; events {{}}\n"
        f"http {{ access_log off; {temporary}\nserver {{ listen 127.0.0.1:{port};\n{text}}} }}\n"
    )


def _wait(place: Place) -> None:
    for _ in range(300):
        try:
            place.asks("")
        except OSError:
            time.sleep(0.1)
        else:
            return
    pytest.fail("nginx does not answer")


def test_a_wrong_address_gets_the_sites_own_page(nginx: Place) -> None:
    """With its status and its policy, at any depth."""
    for wrong in ("nowhere", "checkers/readngs/", "a/b/c/d.html"):
        answer, body = nginx.asks(wrong)

        assert answer.status == 404
        assert b"<h1>There is no page at this address</h1>" in body
        assert answer.headers["Content-Type"] == "text/html"
        for name, value in sent_headers().items():
            assert answer.headers[name] == value


def test_files_have_the_types_that_browsers_ask_for(nginx: Place) -> None:
    """Machine code, modules and archives, which an nginx as it comes does not know."""
    manifest = next((ensure_site() / "runtime").glob("*.whl")).name
    for place, kind in {
        "": "text/html",
        "runtime/pyodide.asm.wasm": "application/wasm",
        "runtime/pyodide.js": "text/javascript",
        "service-worker.js": "text/javascript",
        f"runtime/{manifest}": "application/zip",
        "site.webmanifest": "application/manifest+json",
    }.items():
        answer, _ = nginx.asks(place)
        assert (answer.status, answer.headers["Content-Type"]) == (200, kind), place


@pytest.mark.parametrize(("accepts", "sent"), [("br, gzip", "br"), ("gzip", "gzip")])
def test_squeezed_copies_are_sent(nginx: Place, accepts: str, sent: str) -> None:
    """As the page promises: with its encoding, and the word that it hangs on what was asked."""
    if sent == "br" and not BROTLI.is_file():
        pytest.skip("this nginx has no module for brotli")
    answer, body = nginx.asks("runtime/pyodide.asm.wasm", accepts)

    assert answer.headers["Content-Encoding"] == sent
    assert answer.headers["Vary"] == "Accept-Encoding"
    assert len(body) < 4e6


def test_a_folder_without_its_stroke_is_found(nginx: Place) -> None:
    """Somebody leaves it out: the host leads there."""
    for place, to in {"checkers/readings": f"{nginx.path}checkers/readings/"}.items():
        answer, _ = nginx.asks(place)
        assert answer.status == 301
        assert answer.headers["Location"].endswith(to)
    if nginx.path != "/":
        answer, _ = nginx.asks(nginx.path.removesuffix("/"))
        assert answer.headers["Location"].endswith(nginx.path)
