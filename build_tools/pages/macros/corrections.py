"""What was wrong with earlier verdicts."""

from __future__ import annotations

from build_tools.pages.rendering import html
from build_tools.site.corrections import corrections


def corrections_macro(_: str, root: str) -> str:
    """Show what was wrong with earlier verdicts, by day."""
    del root
    return html("macros/corrections.html", corrections=corrections())
