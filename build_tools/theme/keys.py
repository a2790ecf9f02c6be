"""The theme's keys of one letter, turned off: speech input or a glove would press them unasked.

WCAG 2.1, success criterion 2.1.4: a shortcut of one character can be turned off, or acts only on
what has the focus. The search is opened by its button; the keys that move within it stay.
"""

from __future__ import annotations

from pathlib import Path

from build_tools.theme.changes import SCRIPT, change_file

LETTERS = (
    'case"f":case"s":case"/":i.focus(),i.select(),c.claim();break',
    'case"p":case",":let t=ue("link[rel=prev]");typeof t!="undefined"&&st(t);break;',
    'case"n":case".":let r=ue("link[rel=next]");typeof r!="undefined"&&st(r);break;',
)


def mend_keys(site: Path) -> None:
    """Take the letters from the script of a built site; raises ValueError where it has others."""
    change_file(site, SCRIPT, dict.fromkeys(LETTERS, ""), __name__)
