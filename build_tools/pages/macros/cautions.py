"""Cautions and the note on local codes, from the one place that holds them."""

from __future__ import annotations

from build_tools.pages.rendering import html
from checkers.domain.codes.registry import CODES, Code
from checkers.domain.question import DEFAULT_CODE
from checkers.domain.sources.cautions import CAUTIONS


def cautions_macro(_: str, root: str) -> str:
    """Show every caution in full."""
    return html("macros/cautions.html", cautions=CAUTIONS, root=root)


def local_note_for(code: Code | None) -> str:
    """Return a code's note that local rules decide; without a code, the general one."""
    return (code or CODES[DEFAULT_CODE]).local_note
