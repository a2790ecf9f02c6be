"""Pages written by hand keep to what a reader in the field can rely on."""

from __future__ import annotations

import re

import pytest

from build_tools import places
from build_tools.search_words import search_words

DOCS = places.ROOT / "docs"
FIELD = ("device-types", "device-forms", "tests", "lessons", "questions", "dc-sources")
SINGLE = (
    "blinding",
    "electrodes",
    "fault-waveforms",
    "leakage",
    "old-devices",
    "series",
    "test-multiples",
    "troubleshooting",
    "uncertainty",
)
WITHOUT_CHECKER = {  # lists of pages, and pictures that lead to the checker themselves
    "device-forms/index.md",
    "fault-waveforms.md",
    "lessons/index.md",
    "questions/index.md",
}
PAGES = {
    path.relative_to(DOCS).as_posix(): path.read_text(encoding="utf-8")
    for path in (
        *(page for folder in FIELD for page in sorted((DOCS / folder).glob("*.md"))),
        *(DOCS / f"{name}.md" for name in SINGLE),
    )
}


@pytest.mark.parametrize("page", PAGES)
def test_a_page_has_a_checker_set_to_its_case(page: str) -> None:
    """What is told can be tried on the spot, from a case and not from an empty form."""
    live = re.search(r"<!-- show checker [a-z-]+ \{", PAGES[page])

    assert (live is None) == (page in WITHOUT_CHECKER)


@pytest.mark.parametrize("page", PAGES)
def test_a_number_never_begins_a_line(page: str) -> None:
    """Markdown would take the mark for a block of its own and tear the sentence apart."""
    assert not re.search(r"^\s*<!-- show (limit|known) ", PAGES[page], re.MULTILINE)


@pytest.mark.parametrize("page", [page for page in PAGES if not page.startswith("lessons/")])
def test_a_page_knows_what_people_type(page: str) -> None:
    """Its line for the search is there, except on plain lists."""
    assert search_words(PAGES[page]) or page in {"questions/index.md", "tests/index.md"}


@pytest.mark.parametrize("page", PAGES)
def test_a_page_opens_with_a_whole_sentence(page: str) -> None:
    """A title, then one sentence that says what it is."""
    title, paragraph = PAGES[page].split("\n\n", maxsplit=2)[:2]

    assert title.startswith("# ")
    assert re.match(r"[A-Z0-9½×][^#<]+[.:?]", paragraph)


@pytest.mark.parametrize("page", PAGES)
def test_limits_in_a_sentence_come_from_the_tables(page: str) -> None:
    """The two best-known limits are never typed beside a device: they are asked for.

    A page may compare or quote 300 ms and 40 ms; it may not say that a device "has" or "opens
    within" them in typed figures.
    """
    typed = re.findall(r"(?:has|have|within|limit:|at most) (?:300|40|150|500|130) ms", PAGES[page])

    assert not typed, typed
