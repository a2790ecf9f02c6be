"""The theme's script, which a page with a checker starts only when its verdict stands.

Both want the processor in the same half second, and a person with an instrument in hand waits for
the verdict. Until then a page is read, scrolled and filled in without the theme's script; the
search, the choice of colours and the change of pages in place wait for it. A browser too old for
our own scripts takes it at once.
"""

from __future__ import annotations

from pathlib import Path

BUNDLES = "assets/javascripts/bundle.*.js"
BEFORE_THE_END = 'h(document,"DOMContentLoaded",{once:!0}).subscribe(()=>e.next(document))'
AT_ANY_TIME = f'document.readyState==="loading"?{BEFORE_THE_END}:e.next(document)'
LOADED = "<script src="
WAITING = "<script nomodule data-later src="


def mend_start(site: Path) -> None:
    """Let the theme's script of a built site start late; raises ValueError where it is another."""
    (bundle,) = site.glob(BUNDLES)
    text = bundle.read_text(encoding="utf-8")
    bundle.write_text(at_any_time(text), encoding="utf-8", newline="\n")


def at_any_time(bundle: str) -> str:
    """Return the theme's script, which no longer counts on a page being read. Raises ValueError."""
    if bundle.count(BEFORE_THE_END) != 1:
        raise ValueError("the theme waits for a page in another way now: look at theme_start")
    return bundle.replace(BEFORE_THE_END, AT_ANY_TIME)


def waiting(scripts: str) -> str:
    """Return the end of a page with its script left for ours to start. Raises ValueError."""
    if scripts.count(LOADED) != 1:
        raise ValueError("the theme loads its script in another way now: look at theme_start")
    return scripts.replace(LOADED, WAITING)
