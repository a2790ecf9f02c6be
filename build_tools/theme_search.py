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

BUNDLES = "assets/javascripts/bundle.*.js"
# What a worker is to the theme; the real one starts when it is told something first.
WORKER_LATER = (
    "((e,on=[],w)=>({"
    "addEventListener(...a){w?w.addEventListener(...a):on.push(a)},"
    "removeEventListener(...a){w&&w.removeEventListener(...a)},"
    "postMessage(m){w||(w=new Worker(e),on.forEach(a=>w.addEventListener(...a)));w.postMessage(m)}"
    "}))(e)"
)
AT_ONCE = {
    "t=new Worker(e))": f"t={WORKER_LATER})",
    '(location.protocol!=="file:"),': "(!1),",
    'V("search.highlight")?': 'V("search.highlight")&&/[?&]h=/.test(location.search)?',
}
WORKERS = "assets/javascripts/workers/search.*.js"
AS_BEGINNING = ':`${r}*`).join(" ")'
IN_FULL_FIRST = ':r.length<3?r:`${r}^20 ${r}*`).join(" ")'


def mend_search(site: Path) -> None:
    """Change the search of a built site; raises ValueError where the theme's is another now."""
    (worker,) = site.glob(WORKERS)
    script = worker.read_text(encoding="utf-8")
    worker.write_text(in_full_first(script), encoding="utf-8", newline="\n")
    (bundle,) = site.glob(BUNDLES)
    text = bundle.read_text(encoding="utf-8")
    bundle.write_text(when_opened(text), encoding="utf-8", newline="\n")


def in_full_first(script: str) -> str:
    """Return the theme's search script with whole words put first. Raises ValueError."""
    if script.count(AS_BEGINNING) != 1:
        raise ValueError("the theme searches in another way now: look at theme_search")
    return script.replace(AS_BEGINNING, IN_FULL_FIRST)


def when_opened(bundle: str) -> str:
    """Return the theme's script with an index that waits for the search. Raises ValueError."""
    for at_once, waiting in AT_ONCE.items():
        if bundle.count(at_once) != 1:
            raise ValueError("the theme fetches its index in another way now: see theme_search")
        bundle = bundle.replace(at_once, waiting)
    return bundle
