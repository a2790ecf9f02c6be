"""Serve the built site on this machine alone, as a web host would."""

from __future__ import annotations

import errno
import os
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http import HTTPStatus
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

from build_tools.files.media_types import media_type
from build_tools.machine.problems import Problem
from build_tools.site.policy import sent_headers

HOST = "127.0.0.1"
PORT = 8000

SENT = sent_headers()
ENCODINGS = {"br": ".br", "gzip": ".gz"}  # the smaller first


class Handler(SimpleHTTPRequestHandler):
    """Answers with the right type, and with the compressed copy where the browser takes one."""

    protocol_version = "HTTP/1.1"
    _encoding = ""

    def translate_path(self, path: str) -> str:
        """Find the file for an address: a folder's index page, and its smallest accepted copy."""
        file = super().translate_path(path)
        index = Path(file, "index.html")
        if path.partition("?")[0].endswith("/") and index.is_file():
            file = str(index)
        accepted = accepted_encodings(self.headers.get("Accept-Encoding", ""))
        fitting = (x for x in ENCODINGS if x in accepted and Path(file + ENCODINGS[x]).is_file())
        self._encoding = next(fitting, "")
        return file + ENCODINGS.get(self._encoding, "")

    def guess_type(self, path: str | os.PathLike[str]) -> str:
        """Give the type of a file's contents, compressed or not."""
        name = str(path).removesuffix(ENCODINGS.get(self._encoding, ""))
        return media_type(name)

    def end_headers(self) -> None:
        """Add what every answer carries: the policy, and to ask again, for a rebuilt page."""
        if self._encoding:
            self.send_header("Content-Encoding", self._encoding)
        self.send_header("Vary", "Accept-Encoding")
        self.send_header("Cache-Control", "no-cache")
        for name, value in SENT.items():
            self.send_header(name, value)
        super().end_headers()

    def send_error(self, code: int, message: str | None = None, explain: str | None = None) -> None:
        """Answer a wrong address with the site's own page for it."""
        self._encoding = ""
        page = Path(self.directory, "404.html")
        if code != HTTPStatus.NOT_FOUND or not page.is_file():
            super().send_error(code, message, explain)
            return
        body = page.read_bytes()
        self.send_response(code)
        self.send_header("Content-Type", self.guess_type(page))
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(body)

    def log_request(self, code: int | str = "-", size: int | str = "-") -> None:
        """Keep the terminal for what matters."""


class Server(ThreadingHTTPServer):
    """One that tells a busy port, on Windows too, where two programs could share one."""

    allow_reuse_address = os.name == "posix"

    def serve_forever(self, poll_interval: float = 0.05) -> None:
        """Answer until told to stop, and look often whether that was told [s]."""
        super().serve_forever(poll_interval)


def accepted_encodings(header: str) -> set[str]:
    """Read which compressed copies a browser takes from its Accept-Encoding header."""
    options = (part.replace(" ", "").split(";") for part in header.split(","))
    return {name for name, *weight in options if not set(weight) & {"q=0", "q=0.0", "q=0.000"}}


def make_server(folder: Path, port: int) -> Server:
    """Take a port of this machine for a folder; `serve_forever` then answers.

    Args:
        folder: the built site.
        port: the port, or 0 for any free one.

    Returns:
        The server; its `server_port` is the port taken.

    Raises:
        Problem: the port is taken by another program, or may not be taken.
    """
    try:
        return Server((HOST, port), partial(Handler, directory=str(folder)))
    except OSError as error:
        busy = error.errno == errno.EADDRINUSE
        reason = "is used by another program" if busy else f"cannot be taken ({error.strerror})"
        raise Problem(
            f"Port {port} {reason}.",
            f"stop it, or take another: python3 -m build_tools serve --port {port + 1}",
        ) from error


@contextmanager
def served(folder: Path) -> Iterator[str]:
    """Serve a folder on any free port; gives the origin."""
    with make_server(folder, 0) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        try:
            yield f"http://{HOST}:{server.server_port}"
        finally:
            server.shutdown()
