"""What the theme's own HTML lacks for someone who cannot see it."""

from __future__ import annotations

SEARCH = '<div class="md-search" data-md-component="search" role="dialog"'
NAMED_SEARCH = f'{SEARCH} aria-label="Search"'


def repaired(page: str) -> str:
    """Return a page whose search dialog has a name. Raises ValueError where it has none to name."""
    if page.count(SEARCH) != 1:
        raise ValueError("the theme writes its search in another way now: look at theme_repairs")
    return page.replace(SEARCH, NAMED_SEARCH)
