"""One row of a schedule as it was read, before anything is judged."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from enum import StrEnum
from typing import Any

from checkers.judgement.schedule.file.records import Record
from checkers.wording.book import part

DIFFERS = {
    "type": "schedule.type-differs",
    "rated_residual_current": "schedule.rated-current-differs",
    "delay": "schedule.delay-differs",
    "form": "schedule.form-differs",
    "made_to": "schedule.standard-differs",
}


class RowKind(StrEnum):
    """What a row of a schedule is."""

    DEVICE = "device"
    SAME_DEVICE = "same device"
    NOT_TESTED = "not tested"
    NO_DEVICE = "no device"
    SPARE = "spare way"
    BLANK = "blank"
    HEADING = "heading"
    TEXT = "text"
    NOT_READ = "not read"


@dataclass(frozen=True, slots=True)
class Problem:
    """What cannot be used in a row: under which heading, what stands there, and why."""

    heading: str
    cell: str
    says: str


@dataclass(slots=True)
class Entry:
    """A row as it was read: whose it is, what it says of the device, and its readings.

    `label` is what is written of the device beyond its description, and an identifier
    where it names one device on every row that has it; `name` is what the row is called.
    Device, circuit and readings have the shape of a request.
    """

    record: Record
    kind: RowKind = RowKind.DEVICE
    label: str = ""
    is_identified: bool = False
    names_a_device: bool = False
    name: str = ""
    board: str = ""
    device: dict[str, str] = field(default_factory=dict)
    circuit: dict[str, str] = field(default_factory=dict)
    readings: list[dict[str, Any]] = field(default_factory=list)
    day: date | None = None
    problems: list[Problem] = field(default_factory=list)
    note: str = ""
    in_doubt: set[str] = field(default_factory=set)
    has_unread_reading: bool = False

    @property
    def key(self) -> tuple[str, str, date | None] | None:
        """What rows of the same device on the same day have in common; None if nothing tells."""
        return (self.board, self.label.casefold(), self.day) if self.is_identified else None

    def contradicts(self, other: Entry) -> bool:
        """Tell whether two rows give different values for the same test of one device."""
        return any(_same_test(a, b) for a in self.readings for b in other.readings)

    @property
    def has_readings(self) -> bool:
        """Whether any reading stands in the row, be it one that cannot be used."""
        return bool(self.readings) or self.has_unread_reading

    def note_problem(self, heading: str, cell: str, says: str) -> None:
        """Note what cannot be used, once."""
        problem = Problem(heading, cell, says)
        if problem not in self.problems:
            self.problems.append(problem)

    def note_unread_reading(self, heading: str, cell: str, says: str) -> None:
        """Note a reading that cannot be used: the row has readings all the same."""
        self.has_unread_reading = True
        self.note_problem(heading, cell, says)

    def note_property(self, name: str, value: str, heading: str) -> None:
        """Note a property of the device; two that differ leave it unknown, with a question."""
        if not value or name in self.in_doubt:
            return
        known = self.device.setdefault(name, value)
        if known != value:
            del self.device[name]
            self.in_doubt.add(name)
            self.note_problem(heading, value, part(DIFFERS[name], one=known, other=value))

    def take_in(self, other: Entry) -> None:
        """Take in a further row of the same device."""
        for name, value in other.device.items():
            self.note_property(name, value, part("schedule.about-device"))
        for name in other.in_doubt:
            self.in_doubt.add(name)
            self.device.pop(name, None)
        self._take_circuit(other.circuit)
        self.readings += [one for one in other.readings if one not in self.readings]
        self.has_unread_reading |= other.has_unread_reading
        for problem in other.problems:
            self.note_problem(problem.heading, problem.cell, problem.says)

    def _take_circuit(self, circuit: Mapping[str, str]) -> None:
        for name, value in circuit.items():
            if self.circuit.setdefault(name, value) != value:
                self.note_problem(name, value, part("schedule.circuit-differs"))


def _same_test(one: Mapping[str, Any], other: Mapping[str, Any]) -> bool:
    """Tell whether two readings are of the same test and differ in value."""
    tests = [{name: value for name, value in r.items() if name != "value"} for r in (one, other)]
    return tests[0] == tests[1] and one["value"] != other["value"]
