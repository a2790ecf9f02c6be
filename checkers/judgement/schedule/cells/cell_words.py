"""The words that stand in the cells of schedules, in several languages."""

from __future__ import annotations

import re
from functools import lru_cache

from checkers.judgement.schedule.headings.normal_form import plain
from checkers.judgement.schedule.headings.vocabulary import VOCABULARY

AS_TEXT = re.compile(r'="(.*)"', re.DOTALL)
WORDS_OF_BUTTON = ("operates", "does-not-operate")
CANONICAL = {
    "no-trip": "no trip",
    "tripped": "tripped",
    "operates": "operates",
    "does-not-operate": "does not operate",
}


def unwrapped(cell: str) -> str:
    """Return what a cell shows: without outer spaces and a spreadsheet's marks for text."""
    shown = cell.strip().strip("\u200b\ufeff").strip()
    as_text = AS_TEXT.fullmatch(shown)
    return as_text[1].strip() if as_text else shown.removeprefix("'")


@lru_cache(maxsize=4096)
def is_word(cell: str, meaning: str) -> bool:
    """Tell whether a whole cell is one of the words of a meaning, such as spare or ditto."""
    words = VOCABULARY.cell[meaning]
    return cell.casefold() in words or (plain(cell) in words if cell else False)


def is_empty(cell: str) -> bool:
    """Tell whether nothing was written, or only that there is nothing to write."""
    return not cell or is_word(cell, "empty")


def canonical(cell: str, *, of_button: bool) -> str:
    """Return a word for a result as the readings know it; what is no such word, unchanged."""
    meanings = WORDS_OF_BUTTON if of_button else ("no-trip", "tripped")
    return next((CANONICAL[one] for one in meanings if is_word(cell, one)), cell)


def names_a_spare(cell: str) -> bool:
    """Tell whether a cell says that nothing is connected here: spare, Reserve 3, way 4 spare."""
    words = plain(cell).replace("(", " ").replace(")", " ").split()
    known = VOCABULARY.cell["spare"]
    return is_word(cell, "spare") or (0 < len(words) <= 3 and any(one in known for one in words))
