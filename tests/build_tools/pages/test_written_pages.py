"""Pages written by hand keep to what a reader in the field can rely on."""

from __future__ import annotations

import json
import re
from datetime import date

import pytest

from build_tools.files import paths
from build_tools.pages.search_words import search_words
from checkers import run
from checkers.domain.limits.tables import rows, rows_in

DOCS = paths.ROOT / "docs"
DAY = date(2026, 11, 24)
FIELD = ("device-types", "device-forms", "tests", "lessons", "questions", "dc-sources")
SINGLE = (
    "blinding",
    "electrodes",
    "fault-waveforms",
    "generators",
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


def test_the_factors_in_the_glossary_are_those_of_the_tables() -> None:
    """On half waves 1.4 times the rating, up to 10 mA twice; a type B on smooth DC twice."""
    glossary = " ".join((DOCS / "glossary.md").read_text(encoding="utf-8").split())

    assert "on half waves it may take 1.4 times as much (twice up to 10 mA)" in glossary
    assert "a type B on smooth DC twice" in glossary
    for kind, rated, waveform, times in (
        ("A", 30.0, "half-wave", 1.4),
        ("A", 10.0, "half-wave", 2.0),
        ("B", 30.0, "smooth-dc", 2.0),
    ):
        asked = {"type": kind, "rated": rated, "waveform": waveform}
        (row,) = rows("operating-current", on=DAY, form="rccb", **asked)
        assert row.at_most(rated) == pytest.approx(times * rated)


def test_the_volts_of_a_test_on_an_electrode_are_worked_out_from_the_table() -> None:
    """The greatest electrode for 30 mA times 30 mA and times 150 mA."""
    page = " ".join(PAGES["electrodes.md"].split())
    volts = rows_in("iec-60364-4-41/touch-voltages", on=DAY, supply="ac")[0].at_most() or 0.0
    greatest = volts / 0.030

    assert f"{int(greatest)} ohm, ×1 gives {greatest * 0.030:.0f} V and ×5 would give" in page
    assert f"would give {greatest * 0.150:.0f} V" in page


def test_no_page_says_to_operate_a_slow_device_and_keep_it() -> None:
    """A first operation that failed stands, on whatever page it is spoken of."""
    words = " ".join(PAGES["troubleshooting.md"].split())

    assert "The first operation that failed stands" in words
    assert "Line and neutral leads both on the **load** side" in words
    assert not any("if it comes back" in page for page in PAGES.values())


def test_no_page_takes_a_rise_of_the_ramp_for_dc_alone() -> None:
    """Leakage that works against the test raises it too: DC is measured, not concluded."""
    for name in ("blinding.md", "tests/loads.md"):
        assert "leakage that works against the test" in " ".join(PAGES[name].split()), name
        assert "A rise is the DC" not in PAGES[name]


def test_the_sums_over_three_lines_are_those_of_the_checker() -> None:
    """Nine items of 2 mA: what the page says of them is what it lets the reader try."""
    page = " ".join(PAGES["leakage.md"].split())
    case = re.search(r"<!-- show checker leakage-budget (\{.+\}) -->", PAGES["leakage.md"])
    assert case
    answer = run("leakage-budget", json.loads(case[1]))["answer"]

    together, worst = answer["with_everything_on"]["value"], answer["expected"]["value"]
    assert f"show {together:g} mA with everything on and {worst:g} mA with one line alone" in page
