"""The theme's script, which a page with a checker starts only when its verdict stands.

Both want the processor in the same half second, and a person with an instrument in hand waits for
the verdict. Until then a page is read, scrolled and filled in without the theme's script; the
search, the choice of colours and the change of pages in place wait for it. A browser too old for
our own scripts takes it at once.
"""

from __future__ import annotations

from pathlib import Path

from build_tools.theme.changes import SCRIPT, change_file, changed

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
    change_file(site, SCRIPT, CHANGES, __name__)


def waiting(scripts: str) -> str:
    """Return the end of a page with its script left for ours to start. Raises ValueError."""
    return changed(scripts, {LOADED: WAITING}, __name__)
