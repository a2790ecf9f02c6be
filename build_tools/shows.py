"""What a page shows besides its text: `<!-- show KIND ... -->` in Markdown stands for it."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

Show = Callable[[str, str], str]
"""From the words after the kind, and the way from the page to the site's root, to HTML."""

MARK = re.compile(r"<!--\s*show\s+(?P<kind>[a-z-]+)(?P<rest>.*?)-->", re.DOTALL)


class UnknownShowError(ValueError):
    """Raised where a page asks for what there is not; its message names what there is."""


def fill_in(html: str, shows: Mapping[str, Show], root: str) -> str:
    """Replace each mark of a page by what it stands for.

    Inputs: the page; what there is to show, by kind; the way from the page to the site's root.
    Raises UnknownShowError.
    """

    def shown(mark: re.Match[str]) -> str:
        show = shows.get(mark["kind"])
        if show is None:
            known = ", ".join(sorted(shows))
            raise UnknownShowError(f"{mark[0]}: there is {known}, but no {mark['kind']!r}")
        return show(mark["rest"].strip(), root)

    return MARK.sub(shown, html)
