"""The pages of a folder, each with its first sentence: `<!-- show contents FOLDER PAGE ... -->`."""

from __future__ import annotations

import re
from pathlib import Path

from build_tools.files import paths
from build_tools.pages.rendering import html

DOCS = paths.ROOT / "docs"
SENTENCE = re.compile(r"(.+?[.!?])(?:\s|$)", re.DOTALL)
LINK = re.compile(r"\[([^\]]+)\]\([^)]+\)")


class ContentsError(ValueError):
    """Raised where a list of pages and the folder differ; its message names the difference."""


def contents_macro(words: str, root: str) -> str:
    """Show the pages of a folder of docs in the order named, each with its first sentence.

    Raises ContentsError where the folder holds a page that is not named, or the other way round.
    """
    folder, *named = words.split()
    there = {path.stem for path in (DOCS / folder).glob("*.md")} - {"index"}
    if there != set(named):
        raise ContentsError(f"{folder}: {', '.join(sorted(there ^ set(named)))}")
    pages = [
        {"leads": f"{root}{folder}/{name}/", **opening(DOCS / folder / f"{name}.md")}
        for name in named
    ]
    return html("macros/contents.html", pages=pages)


def opening(page: Path) -> dict[str, str]:
    """Return a page's title and the first sentence of its text, as plain words."""
    text = page.read_text(encoding="utf-8")
    title, _, rest = text.partition("\n")
    paragraph = next(part for part in rest.split("\n\n") if part.strip())
    sentence = SENTENCE.match(" ".join(paragraph.split()))
    if not title.startswith("# ") or sentence is None:
        raise ContentsError(f"{page.name} does not open with a title and a sentence")
    plain = LINK.sub(r"\1", sentence[1]).replace("**", "")
    return {"title": title.removeprefix("# "), "says": plain}
