"""The documents behind the numbers, and the words for how far each number can be trusted."""

from __future__ import annotations

from build_tools.pages.limits import documents
from build_tools.pages.rendering import html
from checkers.domain.sources.documents import SOURCES, Evidence

KINDS = {
    "product-standard": "Product standards",
    "installation-code": "Installation rules",
    "instrument-standard": "Instrument standards",
    "guide": "Guides",
    "statute": "Law",
    "science": "Science",
    "trade": "Practice of the trade",
}


def sources_macro(_: str, root: str) -> str:
    """Show every document, by kind."""
    groups = {
        title: [source for source in SOURCES.values() if source.kind == kind]
        for kind, title in KINDS.items()
    }
    return html("macros/sources.html", groups=groups, with_tables=set(documents()), root=root)


def evidence_macro(_: str, root: str) -> str:
    """Show the words for how a number is known."""
    del root
    return html("macros/evidence.html", words=list(Evidence))
