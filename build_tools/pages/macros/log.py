"""The job log's place on its page; what it holds is put there by the page's scripts."""

from __future__ import annotations

from build_tools.pages.rendering import html


def log_macro(_: str, root: str) -> str:
    """Show the job log of the reader's own device."""
    del root
    return html("macros/log.html")
