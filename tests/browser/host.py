"""A web host for the tests: the built site under a sub-path, which can go away or change."""

from __future__ import annotations

import os
import socket
import tempfile
import threading
from contextlib import suppress
from functools import cache, partial
from http.server import ThreadingHTTPServer
from pathlib import Path

from build_tools.site.browser_files import browser_files, sources
from build_tools.site.bundling import bundle
from build_tools.site.server import HOST, Handler, Server

PATH = "some/where"  # the site has to work under any path
SOURCES = "sources"  # the folder, beside that of a build, of scripts that a test asks alone


class Host:
    """Serves a folder, counts what is asked for, and can be taken off the network."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.asked: list[str] = []
        self.missing = ""
        self.types: dict[str, str] = {}  # sent by the end of a name, in place of the right ones
        self.refused: dict[str, int] = {}  # status by path
        self.connections: list[socket.socket] = []
        self.port = 0
        self.server: ThreadingHTTPServer | None = None
        self.start()

    @property
    def origin(self) -> str:
        """The origin of the site's addresses."""
        return f"http://{HOST}:{self.port}"

    @property
    def address(self) -> str:
        """The address of the front page."""
        return f"{self.origin}/{PATH}/"

    def start(self) -> None:
        """Answer, on the same port as before if there was one."""
        self.server = Server((HOST, self.port), partial(_Noting, self))
        self.port = self.server.server_port
        threading.Thread(target=self.server.serve_forever, daemon=True).start()

    def stop(self) -> None:
        """Answer no more: what a browser still gets, it has itself."""
        if self.server:
            self.server.shutdown()
            self.server.server_close()
            self.server = None
        for connection in self.connections:
            with suppress(OSError):
                connection.shutdown(socket.SHUT_RDWR)  # a browser keeps its connections open
        self.connections.clear()


@cache
def source_folder() -> Path:
    """Make a folder for scripts that tests ask alone, with those that every page runs."""
    folder = Path(tempfile.mkdtemp(prefix="sources-"))
    for name, content in browser_files().items():
        (folder / name).write_bytes(content)
    return folder


@cache
def source_of(place: str) -> str:
    """Put one script together for a test that asks it alone; give back its address on a host."""
    name = place.replace("/", "-")
    made = bundle(sources(), place)
    own = made.pop(Path(place).name)
    for other, content in {**made, name: own}.items():
        (source_folder() / other).write_bytes(content)
    return f"/{PATH}/browser/{SOURCES}/{name}"


class _Noting(Handler):
    """Answers below the sub-path from the host's folder of the moment."""

    def __init__(self, host: Host, *rest: object) -> None:
        self.host = host
        super().__init__(*rest, directory=str(host.folder))  # type: ignore[arg-type]

    def translate_path(self, path: str) -> str:
        if path.startswith(f"/{PATH}/browser/{SOURCES}/"):
            self._encoding = ""  # of the answer before, on the same connection
            return str(source_folder() / path.rpartition("/")[2])
        self.host.asked.append(path.removeprefix(f"/{PATH}"))
        self.directory = str(self.host.folder)  # a connection may outlive a change of folder
        below = path.startswith(f"/{PATH}/") and path != f"/{PATH}{self.host.missing}"
        return super().translate_path(path.removeprefix(f"/{PATH}") if below else "/nothing-here")

    def guess_type(self, path: str | os.PathLike[str]) -> str:
        right = super().guess_type(path)
        name = str(path).removesuffix(".br").removesuffix(".gz")
        return self.host.types.get(Path(name).suffix, right)

    def do_GET(self) -> None:  # noqa: N802  # the standard library's own name
        status = self.host.refused.get(self.path.partition("?")[0].removeprefix(f"/{PATH}"))
        if status:
            self.send_error(status)
        else:
            super().do_GET()

    def setup(self) -> None:
        super().setup()
        self.host.connections.append(self.connection)

    def handle(self) -> None:
        """A browser that closes its connection early is no news."""
        try:
            super().handle()
        except (ConnectionError, TimeoutError):
            self.close_connection = True
