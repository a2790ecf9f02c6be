"""What the theme's own HTML lacks for someone who cannot see it."""

from __future__ import annotations

from build_tools.theme.changes import changed

SEARCH = '<div class="md-search" data-md-component="search" role="dialog"'
FOUND = '<div class="md-search-result__meta">'
# The theme names a choice of colours after the other one, which its button leads to.
COLOURS = (
    'data-md-color-scheme="{}" data-md-color-{}="custom" data-md-color-{}="custom"  aria-label='
)
LIGHT, DARK = (COLOURS.format(scheme, "primary", "accent") for scheme in ("default", "slate"))
REPAIRS = {
    SEARCH: f'{SEARCH} aria-label="Search"',
    FOUND: f'{FOUND[:-1]} role="status">',
    f'{LIGHT}"Dark colours"': f'{LIGHT}"Light colours"',
    f'{DARK}"Light colours"': f'{DARK}"Dark colours"',
}
# The sign beside a heading would be read as part of it; the table of contents leads to the same.
SIGN = 'class="headerlink"'
UNHEARD_SIGN = f'{SIGN} aria-hidden="true" tabindex="-1"'


def repaired(page: str) -> str:
    """Return a page whose search, colours and headings tell what they are. Raises ValueError."""
    return changed(page, REPAIRS, __name__).replace(SIGN, UNHEARD_SIGN)
