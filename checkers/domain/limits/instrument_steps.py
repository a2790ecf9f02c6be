"""What the steps of an instrument named 1 and 5 really drive, read from data/steps.toml."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from checkers.domain.limits.conditions import Conditions, Situation, applies, read_conditions
from checkers.domain.sources.documents import EVIDENCE_WORDS, SOURCES, Citation, cite
from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.domain.tables.records import Record

FILE = "steps.toml"


@dataclass(frozen=True, slots=True)
class TestStep:
    """By how much a named step exceeds its name, on which waveforms and devices, and its source."""

    when: Conditions
    factor: float
    citation: Citation


@dataclass(frozen=True, slots=True)
class TestSteps:
    """The multiples that are names of steps, and what those steps drive."""

    named: frozenset[float]
    steps: tuple[TestStep, ...]

    def factor(self, waveform: str, form: str | None, rated: float | None) -> float:
        """Return by how much a named step exceeds its name.

        Inputs: the waveform; the form of the device; its rated residual current [mA]. Where the
        rating is not known, no step is known that goes by it, and the least one counts.
        """
        asked = Situation(waveform=waveform, form=form, rated=rated)
        found = (step.factor for step in self.steps if applies(step.when, asked))
        return min(found, default=1.0)


def load_steps(text: Mapping[str, object], file: str) -> TestSteps:
    """Return the steps of a parsed file; raises DataError where one is not whole."""
    record = Record(file, "", text)
    named = frozenset(float(one) for one in record.texts("named"))
    steps = tuple(_step(one) for one in record.records("step"))
    record.finish()
    return TestSteps(named, steps)


def _step(record: Record) -> TestStep:
    when, factor = read_conditions(record.record("when")), record.number("factor")
    if factor is None:
        raise record.error("has no factor")
    document = record.choice("document", frozenset(SOURCES))
    evidence = record.choice("evidence", EVIDENCE_WORDS)
    citation = cite(document, record.text("clause"), evidence)
    record.text("note")
    record.finish()
    return TestStep(when, factor, citation)


STEPS = load_steps(read_toml(data_folder() / FILE, FILE), FILE)
