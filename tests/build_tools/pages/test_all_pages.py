"""Every page made from data is there, in the navigation, and carries the cautions."""

from __future__ import annotations

import re

import pytest

from build_tools.files import paths
from build_tools.pages.all_pages import foot, made_pages, pages_in, way_to_root, whole_navigation
from build_tools.pages.macros.checkers import checker_macro, doors, fragment
from build_tools.site.build import ensure_site
from checkers.catalogue import CHECKERS
from checkers.domain.codes.registry import CODES
from checkers.domain.errors import InvalidRequest
from checkers.domain.limits.tables import TABLES
from checkers.domain.loads.registry import LOADS
from checkers.domain.sources.cautions import CAUTIONS, EVERYWHERE, cautions_for

DOCS = paths.ROOT / "docs"
TEMPLATES = paths.TOOLS / "pages" / "templates"
REACHED = re.compile(r'<div class="table" role="region" tabindex="0" aria-label="[^\n]+">\s*<table')
STACKS = '<table class="stacked"'


def test_every_checker_code_document_and_load_has_its_page() -> None:
    """What is in a registry is on the site, without a second list."""
    pages = set(made_pages())

    assert {f"checkers/{checker.slug}.md" for checker in CHECKERS} <= pages
    assert {f"codes/{key}.md" for key in CODES} <= pages
    assert {f"limits/{table.document}.md" for table in TABLES.values()} <= pages
    assert {f"dc-sources/{key}.md" for key in LOADS} <= pages


def test_every_limit_table_is_shown_once() -> None:
    """Each table is asked for on just one page."""
    asked = re.findall(r"<!-- show limits (\S+) -->", "".join(made_pages().values()))

    assert sorted(asked) == sorted(TABLES)


def test_every_checker_has_its_way_in_from_the_front_page() -> None:
    """The front page asks for each thing a checker answers."""
    assert {checker.slug for checker in CHECKERS} <= {
        door.get("checker") for group in doors().values() for door in group
    }


def test_a_folder_stands_for_its_pages_index_first() -> None:
    """The navigation names a folder; its index leads, and made pages are among them."""
    navigation = whole_navigation([{"Codes": "codes/*"}, {"Safety": "safety.md"}], DOCS)

    listed = navigation[0]["Codes"]
    assert listed[0] == "codes/index.md"
    assert "codes/gb.md" in listed
    assert navigation[1] == {"Safety": "safety.md"}
    assert "decisions/where-sources-disagree.md" in pages_in("decisions", DOCS)


@pytest.mark.parametrize(
    ("address", "way"), [("", "./"), ("safety/", "../"), ("codes/gb/", "../../")]
)
def test_the_way_to_the_root(address: str, way: str) -> None:
    """A page's links to the rest of the site work under any path."""
    assert way_to_root(address) == way


def test_a_page_asks_for_its_own_cautions_and_its_own_code() -> None:
    """A checker's page adds the checker's cautions; a code's page has that code's note."""
    checker, code = (foot(place, "any/page/") for place in ("checkers/dc-bias.md", "codes/gb.md"))

    assert all(_text(caution) in checker for caution in cautions_for("dc-bias"))
    assert _text(CODES["gb"].local_note) in code


def test_every_page_of_the_built_site_carries_the_cautions() -> None:
    """On every page stand all general cautions and a note that local codes decide."""
    general = [_text(one.short) for one in CAUTIONS if EVERYWHERE in one.where]
    notes = [_text(code.local_note) for code in CODES.values()]
    pages = list(ensure_site().rglob("index.html"))
    lacking = []
    for path in pages:
        page = path.read_text(encoding="utf-8")
        if not all(caution in page for caution in general):
            lacking.append((str(path), "cautions"))
        if not any(note in page for note in notes):
            lacking.append((str(path), "local note"))

    assert len(general) >= 5
    assert len(pages) > len(CHECKERS)
    assert lacking == []


def test_a_case_on_a_page_has_to_be_one_the_checker_takes() -> None:
    """A page that fills a checker with what it refuses stops the build."""
    with pytest.raises(InvalidRequest):
        checker_macro('readings {"nonsense": 1}', "")


def test_a_request_becomes_an_address() -> None:
    """Every value stands under its path, as the page reads it."""
    request = {"device": {"type": "A"}, "readings": [{"value": ">300 ms"}], "seen": True}

    expected = "device.type=A&readings.0.value=%3E300+ms&seen=yes"

    assert fragment(request) == expected


def _text(words: str) -> str:
    """Words as they stand in HTML."""
    return words.replace("&", "&amp;").replace("'", "&#39;").replace('"', "&#34;")


def test_a_table_stacks_on_a_phone_or_is_reached_by_keys() -> None:
    """A table that is wider than the page scrolls, and keys have to reach it for that."""
    pages = {path.name: path.read_text(encoding="utf-8") for path in TEMPLATES.rglob("*.html")}
    tables = {name: text for name, text in pages.items() if "<table" in text}
    assert tables
    assert [
        name
        for name, text in tables.items()
        if text.count("<table") != len(REACHED.findall(text)) + text.count(STACKS)
    ] == []
