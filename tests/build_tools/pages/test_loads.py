"""Each kind of equipment has a whole page, from the one catalogue."""

from __future__ import annotations

import json
import re
from html import unescape

import pytest

import checkers
from build_tools.files import paths
from build_tools.pages.all_pages import foot
from build_tools.pages.loads import load_macro, load_pages, loads_macro, silent_macro, usual_case
from build_tools.pages.macros.pictures import picture_macro
from checkers.domain.loads.registry import LOADS
from checkers.domain.sources.cautions import cautions_against

PAGES = load_pages()


@pytest.mark.parametrize("key", LOADS)
def test_a_page_shows_its_circuits_with_their_faults(key: str) -> None:
    """Every circuit of every supply, drawn, with its current."""
    page = PAGES[f"dc-sources/{key}.md"]
    circuits = {circuit for keys in LOADS[key].circuits.values() for circuit in keys}

    assert circuits == set(re.findall(r'converter-circuit \{"circuit": "([^"]+)"', page))
    assert circuits == set(re.findall(r'waveform \{"circuit": "([^"]+)"', page))


@pytest.mark.parametrize("key", LOADS)
def test_the_only_types_on_a_page_are_those_of_type_for_load(key: str) -> None:
    """No figure names a type of its own under the page's answer, and no motor is drawn on solar."""
    page = PAGES[f"dc-sources/{key}.md"]
    shown = [
        picture_macro(words, "")
        for words in re.findall(r"<!-- show picture (.+?) -->", page, re.DOTALL)
    ]
    named = {need.type for need in LOADS[key].needs}
    answers = {
        checkers.run("type-for-load", {"load": key, "supply": supply})["answer"]["type"]
        for supply in LOADS[key].circuits
    }

    assert not any("calls for type" in one for one in shown)
    assert named == answers
    if {"modules", "battery"} & LOADS[key].hazards and key != "ups":
        assert shown == []


@pytest.mark.parametrize("key", LOADS)
def test_a_page_carries_the_cautions_of_its_equipment(key: str) -> None:
    """At its foot, before the general ones."""
    shown = unescape(foot(f"dc-sources/{key}.md", f"dc-sources/{key}/"))

    assert all(one in shown for one in cautions_against(LOADS[key].hazards))


@pytest.mark.parametrize("key", LOADS)
def test_a_page_starts_from_a_case_that_passes(key: str) -> None:
    """The type that the circuit calls for serves; narrower ones are for the reader to try."""
    assert checkers.run("type-for-load", usual_case(LOADS[key]))["outcome"] == "pass"
    assert json.dumps(usual_case(LOADS[key])) in PAGES[f"dc-sources/{key}.md"]


@pytest.mark.parametrize("key", LOADS)
def test_every_need_figure_and_rule_is_shown_with_its_source(key: str) -> None:
    """Nothing the catalogue knows is left out."""
    load = LOADS[key]
    parts = ("needs", "figures", "rules", "traps")
    shown = unescape("".join(load_macro(f"{key} {part}", "") for part in parts))

    for source in [
        *(source for need in load.needs for source in (*need.sources, need.smooth_dc_source)),
        *(figure.source for figure in load.figures),
        *(rule.source for rule in load.rules),
        *(source for trap in load.traps for source in trap.sources),
    ]:
        assert source.document in shown


@pytest.mark.parametrize("key", LOADS)
def test_a_page_tells_its_traps_next_to_what_it_calls_for(key: str) -> None:
    """Before the long pictures: what catches people on site, each with how it is known."""
    page, shown = PAGES[f"dc-sources/{key}.md"], unescape(load_macro(f"{key} traps", ""))
    headings = re.findall(r"^## (.+)$", page, re.MULTILINE)

    assert headings[1] in {"The trap", "The traps"}
    for trap in LOADS[key].traps:
        assert trap.says in shown
        assert all(source.words in shown for source in trap.sources)


def test_an_island_tells_of_its_bond() -> None:
    """Without a bond from neutral to earth no device can see a fault: the page says so."""
    assert "neutral must be joined to earth" in PAGES["dc-sources/battery-inverter.md"]
    assert "Fed from both sides" not in PAGES["dc-sources/washing-machine.md"]


def test_the_types_with_a_silent_manufacturer_are_those_of_type_for_load() -> None:
    """Every kind and supply stands under the type that the checker answers, and under no other."""
    shown = silent_macro("", "../")
    groups = dict(re.findall(r'<section id="type-([^"]+)">(.+?)</section>', shown, re.DOTALL))
    for key, load in LOADS.items():
        for supply in load.circuits:
            request = {"load": key, "supply": supply, "maker_says": "silent"}
            type_ = checkers.run("type-for-load", request)["answer"]["type"]
            under = {name for name, text in groups.items() if f'data-load="{key} {supply}"' in text}

            assert under == {type_.lower()}, (key, supply)


def test_what_the_page_on_silence_says_is_what_the_checker_answers() -> None:
    """Solar, battery and vehicle: B on any supply; F for an inverter fed line to neutral."""
    page = (paths.ROOT / "docs/questions/f-or-b-when-the-maker-is-silent.md").read_text("utf-8")
    answer = " ".join(page.split("\n\n")[1].split())
    b, f = answer.split("Type F")

    assert all(word in b for word in ("Type B", "solar", "battery", "vehicle", "whatever supply"))
    assert "line and neutral" in f
    for load in ("pv-inverter", "battery-inverter", "ev-charge-point"):
        for supply in LOADS[load].circuits:
            asked = {"load": load, "supply": supply, "maker_says": "silent"}
            assert checkers.run("type-for-load", asked)["answer"]["type"] == "B"
    drive = {"load": "single-phase-drive", "supply": "single-phase", "maker_says": "silent"}
    assert checkers.run("type-for-load", drive)["answer"]["type"] == "F"


def test_the_list_names_every_kind() -> None:
    """With the types its circuits call for."""
    shown = loads_macro("", "../")

    assert all(f"../dc-sources/{key}/" in shown for key in LOADS)
    assert re.search(r"Welding set</a>: type A or B", shown)
