"""The theme's search, taught that a word typed in full counts more than words that begin so.

The theme looks for every typed word as a beginning: "FI" finds figure, fit and first, and
"type b" finds beginnings with b before type B. A word of one or two letters is looked for as
it is; a longer one as it is first, and as a beginning after that.
"""

from __future__ import annotations

from pathlib import Path

WORKERS = "assets/javascripts/workers/search.*.js"
AS_BEGINNING = ':`${r}*`).join(" ")'
IN_FULL_FIRST = ':r.length<3?r:`${r}^20 ${r}*`).join(" ")'


def mend_search(site: Path) -> None:
    """Change the search of a built site; raises ValueError where the theme's is another now."""
    (worker,) = site.glob(WORKERS)
    script = worker.read_text(encoding="utf-8")
    worker.write_text(in_full_first(script), encoding="utf-8", newline="\n")


def in_full_first(script: str) -> str:
    """Return the theme's search script with whole words put first. Raises ValueError."""
    if script.count(AS_BEGINNING) != 1:
        raise ValueError("the theme searches in another way now: look at search_worker")
    return script.replace(AS_BEGINNING, IN_FULL_FIRST)
