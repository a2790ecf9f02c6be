"""The theme's script, which a page with a checker starts only when its verdict stands.

Both want the processor in the same half second, and a person with an instrument in hand waits for
the verdict. Until then a page is read, scrolled and filled in without the theme's script; the
search, the choice of colours and the change of pages in place wait for it. A browser too old for
our own scripts takes it at once.
"""

from __future__ import annotations

from pathlib import Path

from build_tools.theme_search import BUNDLES

BEFORE_THE_END = 'h(document,"DOMContentLoaded",{once:!0}).subscribe(()=>e.next(document))'
# The theme does not know which page stands there when it starts: a change of address to a place on
# that same page made it fetch the page anew, and what was typed meanwhile was lost.
ANY_CHANGE = 'let s=t.pipe(ne("pathname"),'
CHANGES = {
    BEFORE_THE_END: f'document.readyState==="loading"?{BEFORE_THE_END}:e.next(document)',
    ANY_CHANGE: "let at=location.pathname,s=t.pipe(g(a=>a.pathname!==at&&(at=a.pathname,!0)),",
}
LOADED = "<script src="
WAITING = "<script nomodule data-later src="


def mend_start(site: Path) -> None:
    """Let the theme's script of a built site start late; raises ValueError where it is another."""
    (bundle,) = site.glob(BUNDLES)
    text = bundle.read_text(encoding="utf-8")
    bundle.write_text(at_any_time(text), encoding="utf-8", newline="\n")


def at_any_time(bundle: str) -> str:
    """Return the theme's script, which finds a page that stands there. Raises ValueError."""
    for written, changed in CHANGES.items():
        if bundle.count(written) != 1:
            raise ValueError("the theme comes to a page in another way now: see theme_start")
        bundle = bundle.replace(written, changed)
    return bundle


def waiting(scripts: str) -> str:
    """Return the end of a page with its script left for ours to start. Raises ValueError."""
    if scripts.count(LOADED) != 1:
        raise ValueError("the theme loads its script in another way now: see theme_start")
    return scripts.replace(LOADED, WAITING)
