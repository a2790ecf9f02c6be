"""The site is served with the right types, compressed where the browser takes it."""

from __future__ import annotations

import gzip
import http.client
import threading
from collections.abc import Iterator
from pathlib import Path

import brotli
import pytest

from build_tools.files.media_types import TYPES
from build_tools.machine.problems import Problem
from build_tools.site.server import HOST, accepted_encodings, make_server

PAGE = b"<p>page</p>"


@pytest.fixture
def port(tmp_path: Path) -> Iterator[int]:
    """Serve a small site on any free port."""
    site = tmp_path / "site"
    (site / "guide").mkdir(parents=True)
    (tmp_path / "secret.txt").write_text("not served")
    for suffix in TYPES:
        (site / f"file{suffix}").write_bytes(b"x")
    (site / "guide" / "index.html").write_bytes(PAGE)
    (site / "guide" / "index.html.br").write_bytes(brotli.compress(PAGE))
    (site / "guide" / "index.html.gz").write_bytes(gzip.compress(PAGE))
    (site / "404.html").write_bytes(b"no such page")
    with make_server(site, 0) as server:
        thread = threading.Thread(target=server.serve_forever)
        thread.start()
        yield server.server_port
        server.shutdown()
        thread.join()


def ask(
    port: int, path: str, method: str = "GET", **headers: str
) -> tuple[int, http.client.HTTPMessage, bytes]:
    """Ask for a path just as it is written; a word in a header's name stands after `_`."""
    connection = http.client.HTTPConnection(HOST, port, timeout=10)
    named = {name.replace("_", "-"): value for name, value in headers.items()}
    connection.request(method, path, headers={"Accept-Encoding": "identity", **named})
    answer = connection.getresponse()
    body = answer.read()
    connection.close()
    return answer.status, answer.headers, body


@pytest.mark.parametrize(
    ("suffix", "kind"),
    [
        # WebAssembly is compiled while it arrives, and module scripts run, only with these types
        # (WebAssembly Web API; HTML standard, module scripts).
        (".wasm", "application/wasm"),
        (".js", "text/javascript; charset=utf-8"),
        (".json", "application/json"),
        (".webmanifest", "application/manifest+json"),
        (".toml", "application/toml"),
        (".whl", "application/zip"),
        (".zip", "application/zip"),
        (".css", "text/css; charset=utf-8"),
        (".html", "text/html; charset=utf-8"),
    ],
)
def test_each_file_has_its_type(suffix: str, kind: str, port: int) -> None:
    """Whatever this machine's own list of types says."""
    status, headers, _ = ask(port, f"/file{suffix}")

    assert status == 200
    assert headers["Content-Type"] == kind
    assert headers["Cache-Control"] == "no-cache"


@pytest.mark.parametrize(
    ("accepts", "encoding"),
    [("gzip, deflate, br", "br"), ("gzip", "gzip"), ("br;q=0, gzip", "gzip"), ("identity", None)],
)
def test_the_smallest_copy_that_the_browser_takes_is_sent(
    accepts: str, encoding: str | None, port: int
) -> None:
    """The type stays that of the page, and the contents come out the same."""
    unpack = {"br": brotli.decompress, "gzip": gzip.decompress, None: bytes}

    status, headers, body = ask(port, "/guide/?from=here", Accept_Encoding=accepts)

    assert status == 200
    assert headers["Content-Encoding"] == encoding
    assert headers["Content-Type"] == "text/html; charset=utf-8"
    assert headers["Vary"] == "Accept-Encoding"
    assert unpack[encoding](body) == PAGE


def test_a_wrong_address_gets_the_sites_own_page(port: int) -> None:
    """With the status that says so."""
    status, headers, body = ask(port, "/nothing/here")

    assert (status, body) == (404, b"no such page")
    assert headers["Content-Type"] == "text/html; charset=utf-8"


@pytest.mark.parametrize("path", ["/file.js", "/file.wasm", "/guide/", "/nothing/here"])
def test_every_answer_carries_the_policy(path: str, port: int) -> None:
    """A worker stands under the policy of its own file (CSP Level 3, 4.2.2), a page under both."""
    _, headers, _ = ask(port, path)

    policy = headers["Content-Security-Policy"].split("; ")
    assert "connect-src 'self'" in policy
    assert "default-src 'none'" in policy
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["Referrer-Policy"] == "no-referrer"


def test_asking_for_the_headers_sends_no_body(port: int) -> None:
    """Neither of a page nor of a wrong address."""
    assert [ask(port, path, "HEAD")[::2] for path in ("/guide/", "/no")] == [(200, b""), (404, b"")]


@pytest.mark.parametrize(
    "path", ["/../secret.txt", "/%2e%2e/secret.txt", "/guide/../../secret.txt"]
)
def test_nothing_outside_the_folder_is_served(path: str, port: int) -> None:
    """However the address is written."""
    assert ask(port, path)[0] == 404


def test_a_busy_port_is_one_line_with_another_to_take(port: int, tmp_path: Path) -> None:
    """Nothing is served, and nothing of the other program is touched."""
    with pytest.raises(Problem) as busy:
        make_server(tmp_path, port)

    assert f"Port {port} is used by another program." in str(busy.value)
    assert f"--port {port + 1}" in str(busy.value)
    assert "\n" not in str(busy.value)


def test_a_refused_encoding_is_not_accepted() -> None:
    """A weight of nought refuses (RFC 9110, 12.4.2)."""
    assert accepted_encodings("br;q=0, gzip;q=0.5, zstd") == {"gzip", "zstd"}
