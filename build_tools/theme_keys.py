"""The theme's keys of one letter, turned off: speech input or a glove would press them unasked.

WCAG 2.1, success criterion 2.1.4: a shortcut of one character can be turned off, or acts only on
what has the focus. The search is opened by its button; the keys that move within it stay.
"""

from __future__ import annotations

from pathlib import Path

from build_tools.theme_search import BUNDLES

LETTERS = (
    'case"f":case"s":case"/":i.focus(),i.select(),c.claim();break',
    'case"p":case",":let t=ue("link[rel=prev]");typeof t!="undefined"&&st(t);break;',
    'case"n":case".":let r=ue("link[rel=next]");typeof r!="undefined"&&st(r);break;',
)


def mend_keys(site: Path) -> None:
    """Change the keys of a built site; raises ValueError where the theme's are others now."""
    (bundle,) = site.glob(BUNDLES)
    text = bundle.read_text(encoding="utf-8")
    bundle.write_text(without_letters(text), encoding="utf-8", newline="\n")


def without_letters(bundle: str) -> str:
    """Return the theme's script deaf to single letters. Raises ValueError."""
    for letters in LETTERS:
        if bundle.count(letters) != 1:
            raise ValueError("the theme listens to keys in another way now: see theme_keys")
        bundle = bundle.replace(letters, "")
    return bundle
