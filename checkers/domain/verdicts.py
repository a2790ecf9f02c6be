"""Verdicts as plain values: findings, their outcomes, and what goes with them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Any

from checkers.domain.sources.documents import Citation


class Outcome(StrEnum):
    """How a finding, or a whole result, ends."""

    FAIL = "fail"
    BORDERLINE = "borderline"
    CANNOT_SAY = "cannot-say"
    PASS = "pass"  # noqa: S105  # an outcome, no password


class Judges(StrEnum):
    """What a finding speaks about; none of them hides another."""

    INSTALLATION_CODE = "installation-code"
    DEVICE_STANDARD = "device-standard"
    FITNESS_FOR_DC = "fitness-for-dc"
    FUNCTION = "function"
    SELECTIVITY = "selectivity"


class MeasuredAs(StrEnum):
    """How the figure of a finding came about: only what somebody read off is measured."""

    MEASURED = "measured"
    GIVEN = "as given"
    CALCULATED = "calculated"


@dataclass(frozen=True, slots=True)
class Numbers:
    """The numbers behind `measured` and `limit`, in one unit.

    `value` is the figure, or None for what never came (a device that did not trip); `least` and
    `most` bound what the true value may be, None where that side is open; `at_least` and
    `at_most` are the ends of the limit, None where it has none.
    """

    unit: str
    value: float | None
    least: float | None
    most: float | None
    at_least: float | None = None
    at_most: float | None = None


@dataclass(frozen=True, slots=True)
class Subject:
    """The reading a finding is about: its test, and how it was taken, as far as that is told.

    `current` is in mA. `showed` is what kind of thing the instrument showed: figure, no trip.
    """

    test: str
    multiple: float | None = None
    current: float | None = None
    waveform: str = ""
    phase: str = ""
    showed: str = ""


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing judged, with the words, the limit and the sources it rests on.

    `measured` is the figure or word held to the limit, and `measured_as` how it came about.
    `code` is permanent: it names what was found, and its words in checkers.wording.
    """

    code: str
    about: str
    outcome: Outcome
    says: str
    judges: Judges
    measured: str = ""
    measured_as: MeasuredAs | None = None
    limit: str = ""
    margin: float | None = None
    do_next: str = ""
    device: str = ""
    field: str = ""
    sources: tuple[Citation, ...] = ()
    numbers: Numbers | None = None
    subject: Subject | None = None


@dataclass(frozen=True, slots=True)
class Figure:
    """A named number of an answer, with its unit."""

    value: float
    unit: str


@dataclass(frozen=True, slots=True)
class Explanation:
    """A possible cause of the readings, with its probability and what speaks for it."""

    code: str
    name: str
    probability: float
    speaks_for: tuple[str, ...] = ()
    speaks_against: tuple[str, ...] = ()
    do_next: str = ""


@dataclass(frozen=True, slots=True)
class NextTest:
    """The test that would tell most, and why."""

    test: str
    why: str
    outcomes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class StillToDo:
    """A test that the local code requires and that no reading answers: a pass is one so far.

    `code` is the document with its edition, `words` the test as a person says it, with the
    document: ×1 trip time on AC (BS 7671).
    """

    test: str
    multiple: float | None
    waveform: str
    code: str
    clause: str
    words: str


Answer = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Result:
    """What a checker answers: its findings, and whatever else it worked out."""

    findings: Sequence[Finding]
    answer: Answer = field(default_factory=dict)
    explanations: Sequence[Explanation] = ()
    next_test: NextTest | None = None
    still_to_do: Sequence[StillToDo] = ()
    cautions: Sequence[str] = ()

    @property
    def outcome(self) -> Outcome:
        """The worst of the findings; with none of them, nothing can be said."""
        return worst(finding.outcome for finding in self.findings)


def worst(outcomes: Iterable[Outcome]) -> Outcome:
    """Return the worst outcome, in the order fail, borderline, cannot-say, pass.

    Inputs: any iterable of Outcome. An empty one gives CANNOT_SAY, never a pass.
    """
    order = list(Outcome)
    return min(outcomes, key=order.index, default=Outcome.CANNOT_SAY)
