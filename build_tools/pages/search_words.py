"""What people type to find a page: the words of its line "Also called" or "People type"."""

from __future__ import annotations

import re

LINE = re.compile(
    r"^(?:Also called|People type): (?P<words>.+?)\.?\n\{ \.also \}$", re.MULTILINE | re.DOTALL
)
APART = re.compile(r"[\s,()]+")


def search_words(markdown: str) -> list[str]:
    """Return each word of a page's line once, as the search takes them; none without a line.

    Single words, because the search compares a word that is typed with a whole entry.
    """
    found = LINE.search(markdown)
    if found is None:
        return []
    words = (word.strip(".:;?").lower() for word in APART.split(found["words"]))
    return list(dict.fromkeys(word for word in words if word))
