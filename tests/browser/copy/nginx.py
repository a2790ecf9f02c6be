"""The settings for nginx as the page on hosting tells them, word for word, in a running nginx."""

from __future__ import annotations

import os
import re
import shutil
import socket
import subprocess
import time
from pathlib import Path

from build_tools.files import paths

PROGRAM = shutil.which("nginx", path="/usr/sbin:/usr/bin:/usr/local/sbin:/usr/local/bin")
MODULES = Path("/usr/lib/nginx/modules")
BROTLI = MODULES / "ngx_http_brotli_static_module.so"
LACKING = (
    ""
    if PROGRAM and BROTLI.is_file()
    else "nginx with its module for brotli is not on this machine"
)
TOLD = "/srv/site"
AROUND = """
daemon off;
{user}
pid {folder}/nginx.pid;
error_log stderr;
load_module {brotli};
events {{}}
http {{
    access_log off;
    client_body_temp_path {folder}/body;
    proxy_temp_path {folder}/proxy;
    fastcgi_temp_path {folder}/fastcgi;
    uwsgi_temp_path {folder}/uwsgi;
    scgi_temp_path {folder}/scgi;
    server {{
        listen 127.0.0.1:{port};
{told}
    }}
}}
"""


def told_settings() -> str:
    """Return what stands between the lines of its block on the page."""
    page = (paths.ROOT / "docs" / "hosting.md").read_text(encoding="utf-8")
    whole, *_ = re.findall(r"```nginx\n(.*?)```", page, re.DOTALL)  # then what a sub-path changes
    return str(whole)


class Nginx:
    """Serves a site, and scripts of a test's own beside it, from a folder of links."""

    def __init__(self, site: Path, folder: Path, scripts: dict[str, str]) -> None:
        root = folder / "site"
        root.mkdir()
        for entry in site.iterdir():
            (root / entry.name).symlink_to(entry)
        for name, text in scripts.items():
            (root / name).write_text(text, encoding="utf-8")
        with socket.socket() as free:
            free.bind(("127.0.0.1", 0))
            self.port = free.getsockname()[1]
        told = told_settings()
        assert TOLD in told
        settings = folder / "nginx.conf"
        settings.write_text(
            AROUND.format(
                user="user root;" if os.geteuid() == 0 else "",
                folder=folder,
                port=self.port,
                brotli=BROTLI,
                told=told.replace(TOLD, str(root)),
            )
        )
        self.process = subprocess.Popen([str(PROGRAM), "-c", str(settings), "-p", str(folder)])
        self._wait()

    @property
    def address(self) -> str:
        """The address of the front page."""
        return f"http://127.0.0.1:{self.port}/"

    def stop(self) -> None:
        """End it."""
        self.process.terminate()
        self.process.wait(timeout=10)

    def _wait(self) -> None:
        for _ in range(100):
            with socket.socket() as tried:
                if tried.connect_ex(("127.0.0.1", self.port)) == 0:
                    return
            assert self.process.poll() is None, "nginx refuses the settings that the page tells"
            time.sleep(0.1)
        raise AssertionError("nginx does not answer")
