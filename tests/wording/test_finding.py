"""A finding has its words from its code and its facts."""

from __future__ import annotations

import pytest

from checkers.domain.verdicts import Judges, Outcome
from checkers.wording.finding import finding, reworded, with_parts

FACTS = {"current": "30 mA"}


def test_a_finding_says_what_its_code_says() -> None:
    """The facts stand in the sentence, and a field given counts before the words."""
    held = finding("reading.held", Outcome.PASS, Judges.FUNCTION, FACTS, about="no-trip ×1/2")
    assert held.code == "reading.held"
    assert held.about == "no-trip ×1/2"
    assert held.says == "It held at 30 mA; a device that never trips would do so too."


def test_a_finding_under_another_code_keeps_what_it_is_about() -> None:
    """Sentence, next step and outcome change together."""
    held = finding("reading.held", Outcome.PASS, Judges.FUNCTION, FACTS, about="no-trip ×1/2")
    tripped = reworded(held, "reading.tripped-where-it-must-hold", FACTS, outcome=Outcome.FAIL)
    assert (tripped.about, tripped.outcome) == (held.about, Outcome.FAIL)
    assert tripped.says == "It tripped at 30 mA, where it must hold."
    assert tripped.do_next.startswith("Take the loads off")


def test_a_fact_that_is_not_given_is_no_empty_place() -> None:
    """A sentence with a hole in it is never shown."""
    with pytest.raises(KeyError, match="current"):
        finding("reading.held", Outcome.PASS, Judges.FUNCTION)


def test_parts_are_added_in_their_order() -> None:
    """An empty part leaves no gap."""
    held = finding("reading.held", Outcome.PASS, Judges.FUNCTION, FACTS)
    assert with_parts(held, "", "Repeat.").says == f"{held.says} Repeat."
