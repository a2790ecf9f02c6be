"""`serve`: build the site and serve it on this machine."""

from __future__ import annotations

import argparse
from collections.abc import Sequence

from build_tools.files import paths
from build_tools.machine.progress import say
from build_tools.site.build import ensure_site
from build_tools.site.server import HOST, PORT, make_server


def run(arguments: Sequence[str]) -> int:
    """Take the port first, so that a busy one is known before the build; then serve."""
    parser = argparse.ArgumentParser(prog="python3 -m build_tools serve")
    parser.add_argument("--port", type=int, default=PORT, help=f"the port, {PORT} if not given")
    options = parser.parse_args(arguments)
    with make_server(paths.SITE, options.port) as server:
        ensure_site()
        say(f"Serving at http://{HOST}:{server.server_port}/ (stop with Ctrl+C)")
        server.serve_forever()
    return 0
