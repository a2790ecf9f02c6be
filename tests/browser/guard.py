"""What every browser test watches for: requests to elsewhere, broken policy, script errors."""

from __future__ import annotations

import threading
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from typing import Any

from playwright.sync_api import BrowserContext, ConsoleMessage, Page, Request

# What the browser asks for on its own account, whatever page is open.
BROWSERS_OWN = (
    "content-autofill.googleapis.com",
    "accounts.google.com",
    "update.googleapis.com",
    "redirector.gvt1.com",
)

# What a browser says of the page for a wrong address before it has found the site's root.
NOT_ITS_ROOT = ("Failed to load resource", "not a supported stylesheet MIME type")

TELL_VIOLATIONS = """
addEventListener("securitypolicyviolation", (event) => {
  console.error(`POLICY ${event.violatedDirective}: ${event.blockedURI} ${event.sample}`);
});
"""


class Elsewhere:
    """A proxy that the browser is told to use for all other hosts: it notes and refuses."""

    def __init__(self) -> None:
        self.asked: list[str] = []
        asked = self.asked

        class Handler(BaseHTTPRequestHandler):
            def do_GET(self) -> None:
                if not any(host in self.path for host in BROWSERS_OWN):
                    asked.append(self.path)
                self.send_error(502)

            do_POST = do_CONNECT = do_HEAD = do_GET  # noqa: N815  # http.server's own names

            def log_message(self, *_: Any) -> None:
                """Say nothing on the terminal."""

        self.server = ThreadingHTTPServer(("127.0.0.1", 0), Handler)
        threading.Thread(target=self.server.serve_forever, daemon=True).start()

    @property
    def address(self) -> str:
        """The proxy as a browser is told of it."""
        return f"http://127.0.0.1:{self.server.server_port}"


class Guard:
    """Watches one browser context for what must never happen."""

    def __init__(self, origin: str, elsewhere: Elsewhere) -> None:
        self.origin = origin
        self.elsewhere = elsewhere
        self.foreign: list[str] = []
        self.broken: list[str] = []
        self.allowed: tuple[str, ...] = ()
        elsewhere.asked.clear()

    def watch(self, context: BrowserContext) -> None:
        """Begin to watch; every page of the context counts."""
        context.add_init_script(TELL_VIOLATIONS)
        self.listen(context)

    def listen(self, context: BrowserContext) -> None:
        """Begin to watch a context whose pages tell of violations already."""
        context.on("request", self._asked)
        context.on("console", self._said)
        context.on("page", self._opened)

    def leave(self, context: BrowserContext) -> None:
        """Watch it no longer: what its pages do from now on is another test's."""
        context.remove_listener("request", self._asked)
        context.remove_listener("console", self._said)
        context.remove_listener("page", self._opened)

    def allow(self, *words: str) -> None:
        """Let errors with these words pass, for a test that breaks things on purpose."""
        self.allowed = words

    def complaints(self) -> list[str]:
        """Return everything seen that must not be."""
        broken = [one for one in self.broken if not any(word in one for word in self.allowed)]
        return [*self.foreign, *self.elsewhere.asked, *broken]

    def _opened(self, page: Page) -> None:
        page.on("pageerror", lambda error: self.broken.append(f"error: {error}"))

    def _asked(self, request: Request) -> None:
        if not request.url.startswith((self.origin, "data:", "blob:", "about:")):
            self.foreign.append(request.url)

    def _said(self, message: ConsoleMessage) -> None:
        if message.type in {"error", "warning"}:
            self.broken.append(f"{message.type}: {message.text}")
