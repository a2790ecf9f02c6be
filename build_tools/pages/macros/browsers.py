"""Which browsers run the checkers, as a table."""

from __future__ import annotations

from build_tools.pages.rendering import html
from build_tools.site.browser_needs import needs, old_enough


def browsers_macro(_: str, root: str) -> str:
    """Show each need with its versions, and what follows from all of them."""
    del root
    return html(
        "macros/browsers.html",
        needs=needs().values(),
        runs=old_enough("checkers"),
        looks=old_enough("checkers", "looks"),
    )
