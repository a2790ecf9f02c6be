"""Which browsers run the checkers, as a table."""

from __future__ import annotations

from build_tools.browsers import needs, old_enough
from build_tools.rendering import html


def browsers_show(_: str, root: str) -> str:
    """Show each need with its versions, and what follows from all of them."""
    del root
    return html(
        "shows/browsers.html",
        needs=needs().values(),
        runs=old_enough("checkers"),
        looks=old_enough("checkers", "looks"),
    )
