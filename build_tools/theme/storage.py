"""The theme's way to what a browser keeps, in a browser that refuses even to name it.

Where cookies or site data are blocked, `localStorage` is an error by itself, and the theme names it
as what its two functions are given if nothing else is: its script stopped there, and with it the
search, the drawer and the choice of colours.
"""

from __future__ import annotations

from build_tools.theme.changes import changed

PLACE = 't.pathname+"."+e'
READ = f"__md_get=(e,_=localStorage,t=__md_scope)=>JSON.parse(_.getItem({PLACE}))"
READS = (
    "__md_get=(e,_,t=__md_scope)=>"
    f"{{try{{return JSON.parse((_||localStorage).getItem({PLACE}))}}catch(e){{return null}}}}"
)
WRITTEN = "__md_set=(e,_,t=localStorage,a=__md_scope)=>{try{t.setItem("
WRITES = "__md_set=(e,_,t,a=__md_scope)=>{try{(t||localStorage).setItem("


def refusable(page: str) -> str:
    """Return a page whose theme remembers nothing where it may not. Raises ValueError."""
    return changed(page, {READ: READS, WRITTEN: WRITES}, __name__)
