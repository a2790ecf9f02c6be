"""Macros of pages: `<!-- show KIND ... -->` in Markdown stands for what a macro makes."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

Macro = Callable[[str, str], str]
"""From the words after the kind, and the way from the page to the site's root, to HTML."""

MARK = re.compile(r"<!--\s*show\s+(?P<kind>[a-z-]+)(?P<rest>.*?)-->", re.DOTALL)


class UnknownMacroError(ValueError):
    """Raised where a page asks for what there is not; its message names what there is."""


def fill_in(html: str, macros: Mapping[str, Macro], root: str) -> str:
    """Replace each mark of a page by what it stands for.

    Inputs: the page; the macros, by kind; the way from the page to the site's root.
    Raises UnknownMacroError.
    """

    def shown(mark: re.Match[str]) -> str:
        macro = macros.get(mark["kind"])
        if macro is None:
            known = ", ".join(sorted(macros))
            raise UnknownMacroError(f"{mark[0]}: there is {known}, but no {mark['kind']!r}")
        return macro(mark["rest"].strip(), root)

    return MARK.sub(shown, html)
