"""Every code: whole, cited, honest about what is not known."""

from __future__ import annotations

from datetime import date, timedelta
from pathlib import Path

import pytest

import checkers.data
from checkers.domain.codes.registry import CODES
from checkers.domain.codes.rules import PURPOSES, Code, Rule
from checkers.domain.limits.tables import TABLES, rows_in
from checkers.domain.sources.documents import Evidence

FOLDER = Path(checkers.data.__file__).parent / "codes"
DAYS = [date(2005, 1, 1) + timedelta(days=97 * step) for step in range(90)]
ASKED_FOR = ["iec", "gb", "au", "nz", "us", "de", "fr", "nl", "no", "ie", "za", "in", "sg"]
# Asked by an edition that is no longer in force.
ENDED = frozenset({"disconnection-time-at-rating"})
LOADS = {
    "resistive",
    "dimmer",
    "switched-mode-supply",
    "led-lighting",
    "washing-machine",
    "induction-hob",
    "single-phase-drive",
    "three-phase-drive",
    "heat-pump-single-phase",
    "heat-pump-three-phase",
    "ev-charge-point",
    "pv-inverter",
    "battery-inverter",
    "ups",
    "it-equipment",
    "lift",
    "welder",
    "site-machine",
    "medical",
}
EACH_CODE = pytest.mark.parametrize("code", CODES.values(), ids=CODES)


def rules_of(code: Code) -> list[Rule]:
    """Return every rule of a code, of every day."""
    return [*code.editions, *code.tests, *code.type_rules, *code.intervals]


def test_every_file_is_loaded_and_every_code_asked_for_is_there() -> None:
    """No code is missing, and none lies about unread."""
    assert {path.stem for path in FOLDER.glob("*.toml")} == set(CODES)
    assert set(ASKED_FOR) <= set(CODES)


@EACH_CODE
def test_a_code_names_itself_its_country_and_who_decides(code: Code) -> None:
    """The local note says that local codes and licensed practice decide."""
    assert code.name
    assert code.country
    assert code.local_note.endswith(".")
    assert "decide" in code.local_note or "binds" in code.local_note


@EACH_CODE
def test_a_code_says_what_is_not_known_of_it_in_whole_sentences(code: Code) -> None:
    """No code was read in full, and each says so."""
    assert code.not_known
    assert all(sentence.endswith(".") and " " in sentence for sentence in code.not_known)


@EACH_CODE
def test_every_rule_of_a_code_is_cited(code: Code) -> None:
    """Document, edition and evidence are never missing."""
    for rule in rules_of(code):
        assert rule.citation.document
        assert rule.citation.edition
        assert Evidence(rule.evidence)


@EACH_CODE
def test_a_code_has_an_edition_today(code: Code) -> None:
    """A reply can always say which edition it speaks of."""
    assert code.edition_on(date(2026, 11, 24))


@EACH_CODE
def test_a_code_never_asks_one_test_twice_on_a_day(code: Code) -> None:
    """One purpose, one test, one rule, on each of ninety days in 24 years."""
    for day in DAYS:
        keys = [
            (test.test, test.multiple, test.waveform, test.purpose) for test in code.tests_on(day)
        ]
        assert len(keys) == len(set(keys)), day


@EACH_CODE
def test_the_loads_a_rule_names_are_loads_the_checkers_know(code: Code) -> None:
    """A slip in a load's key would make a rule silent."""
    assert {load for rule in code.type_rules for load in rule.loads} <= LOADS


@EACH_CODE
def test_a_table_a_code_names_for_a_purpose_holds_rows_of_that_day(code: Code) -> None:
    """Every purpose named leads to a limit in force, or to one of an edition that has ended."""
    today = date(2026, 11, 24)
    for purpose, table in code.tables.items():
        assert purpose in PURPOSES
        days = [one.from_day for one in code.editions] if purpose in ENDED else [today]
        assert any(rows_in(table, on=day) for day in days if day)
        assert not (purpose in ENDED and rows_in(table, on=today))


@EACH_CODE
def test_a_test_with_limits_of_its_own_has_them_whenever_the_test_is_in_force(
    code: Code,
) -> None:
    """A code never asks for a test whose limits have ended."""
    for day in DAYS:
        for test in code.tests_on(day):
            if test.limits:
                asked = {"waveform": test.waveform or None, "multiple": test.multiple}
                if TABLES[test.limits].measures == "operating-current":
                    asked.pop("multiple")
                assert rows_in(test.limits, on=day, **asked), (test.limits, day)
