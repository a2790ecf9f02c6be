"""The theme's search, taught that a word typed in full counts more than words that begin so.

The theme looks for every typed word as a beginning: "FI" finds figure, fit and first, and
"type b" finds beginnings with b before type B. A word of one or two letters is looked for as
it is; a longer one as it is first, and as a beginning after that.

The theme also fetches and reads the whole index when a page comes, beside the start of the
checkers: to be ready to search, and to mark found words on the page, though none were looked for.
Here it waits until the search is opened, or a page is opened from it; so does the worker that
searches, which the theme starts with each page.
"""

from __future__ import annotations

from pathlib import Path

from build_tools.theme.changes import SCRIPT, change_file

# What a worker is to the theme; the real one starts when it is told something first.
WORKER_LATER = (
    "((e,on=[],w)=>({"
    "addEventListener(...a){w?w.addEventListener(...a):on.push(a)},"
    "removeEventListener(...a){w&&w.removeEventListener(...a)},"
    "postMessage(m){w||(w=new Worker(e),on.forEach(a=>w.addEventListener(...a)));w.postMessage(m)}"
    "}))(e)"
)
WAITING = {
    "t=new Worker(e))": f"t={WORKER_LATER})",
    '(location.protocol!=="file:"),': "(!1),",
    'V("search.highlight")?': 'V("search.highlight")&&/[?&]h=/.test(location.search)?',
}
SEARCHER = "assets/javascripts/workers/search.*.js"
IN_FULL_FIRST = {':`${r}*`).join(" ")': ':r.length<3?r:`${r}^20 ${r}*`).join(" ")'}


def mend_search(site: Path) -> None:
    """Change the search of a built site; raises ValueError where the theme's is another now."""
    change_file(site, SEARCHER, IN_FULL_FIRST, __name__)
    change_file(site, SCRIPT, WAITING, __name__)
