"""From a cell under a heading to readings that can be judged."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Any

from checkers.domain.device.readings import EXPECTED, Test
from checkers.domain.quantities.measured_value import Said, parse_measured, with_unit
from checkers.domain.quantities.quantity import format_number
from checkers.domain.quantities.typed_numbers import FIGURE, NotAQuantity
from checkers.judgement.schedule.cells.cell_words import CANONICAL, canonical, is_empty, is_word
from checkers.judgement.schedule.cells.labelled_readings import Labelled, labelled_readings
from checkers.judgement.schedule.headings.meaning import HALF, TRIPPED, Meaning
from checkers.wording.book import part

BETWEEN_FIGURES = re.compile(r"\s*[/;|&\n]\s*|,\s+|\s+and\s+|(?<=s)\s+(?=[\d<>])")
UNIT_AT_END = re.compile(r"(?<=\d)\s*([^\W\d_]+)$")
A_TIME = re.compile(rf"{FIGURE}\s*ms", re.IGNORECASE)
GOOD_AT_END = re.compile(r"(?<=[\w.])\s*(?:✓|✔|√|\bok\b)$", re.IGNORECASE)
UNANSWERED = "?"


@dataclass(frozen=True, slots=True)
class Read:
    """What a cell gives: readings, as in a request, and what cannot be used, in words.

    `waits` tells that its word means nothing before the column's question is answered.
    """

    readings: tuple[dict[str, Any], ...] = ()
    problems: tuple[str, ...] = field(default=())
    waits: bool = False


NOTHING = Read()


@lru_cache(maxsize=8192)
def read_cell(cell: str, meaning: Meaning, waveform: str) -> Read:
    """Return the readings of a cell.

    Inputs: what the cell shows; what its column holds; the waveform where the
    heading names none. A cell with several figures is resolved by its own labels,
    else by the heading, else kept whole, so that the judgement asks about it.
    """
    if is_empty(cell):
        return NOTHING
    shape = meaning.waveform or waveform
    labelled = labelled_readings(cell)
    if labelled:
        return _from_labels(labelled, meaning, shape)
    word = word_of_no_trip(cell, meaning) if meaning.is_no_trip else ""
    if word == UNANSWERED:
        return Read(problems=(part("schedule.word-waits"),), waits=True)
    cell = word or cell
    figures = _figures(cell, meaning)
    fitting = _levels(len(figures), meaning)
    if fitting is None:
        return Read(problems=(part("schedule.figures-two-ways", count=len(figures)),))
    if not fitting:
        figures, fitting = [cell], [(_only(meaning.multiples), _only(meaning.phases) or "")]
    made = [
        _reading(figure, meaning, multiple, phase, shape)
        for figure, (multiple, phase) in zip(figures, fitting, strict=True)
        if not is_empty(figure)
    ]
    return _checked(made)


def word_of_no_trip(cell: str, meaning: Meaning) -> str:
    """Return what a word says of a test in which the device is to hold; empty where none does.

    Yes and no mean nothing before an answer; what is good or bad, only where the heading
    names the test.
    """
    good, bad = is_word(cell, "good"), is_word(cell, "bad")
    yes, no = is_word(cell, "yes"), is_word(cell, "no")
    if not (good or bad or yes or no):
        return ""
    if not meaning.yes and not (meaning.names_no_trip and (good or bad)):
        return UNANSWERED
    held = (good or yes) is (meaning.yes != TRIPPED)
    return CANONICAL["no-trip" if held else "tripped"]


def _from_labels(labelled: Sequence[Labelled], meaning: Meaning, shape: str) -> Read:
    """Return readings by their own labels; a heading that says otherwise makes them unusable."""
    made = []
    for one in labelled:
        test, multiple = one.label.test or meaning.test, one.label.multiple
        if _clashes(one, meaning):
            return Read(problems=(part("schedule.label-of-other-test"),))
        if multiple is None and test != Test.RAMP:
            multiple = _only(meaning.multiples)
        phase = one.label.phase or _only(meaning.phases) or ""
        value = with_unit(one.value, meaning.unit)
        made.append(_request(test, value, shape, multiple, phase))
    return _checked(made)


def _clashes(one: Labelled, meaning: Meaning) -> bool:
    label = one.label
    if label.multiple is not None and meaning.multiples and label.multiple not in meaning.multiples:
        return True
    if label.phase and meaning.phases and label.phase not in meaning.phases:
        return True
    if not label.test or not meaning.test or label.test == meaning.test:
        return False
    return not {label.test, meaning.test} <= {Test.TRIP_TIME, Test.NO_TRIP}


def _figures(cell: str, meaning: Meaning) -> list[str]:
    """Split a cell into its figures or words; a unit after the last one is that of all."""
    if meaning.test == Test.BUTTON:
        return [cell]
    parts = [part for part in BETWEEN_FIGURES.split(cell) if part]
    if len(parts) < 2 or not all(_is_value(part, meaning.test) for part in parts):
        return [cell]
    unit = UNIT_AT_END.search(parts[-1].removesuffix("."))
    return [with_unit(part, unit[1] if unit else "") for part in parts]


def _is_value(part: str, test: str) -> bool:
    try:
        measured = parse_measured(canonical(part, of_button=False), _expected(test))
    except NotAQuantity:
        return False
    return measured.said is not Said.UNCLEAR


def _levels(count: int, meaning: Meaning) -> list[tuple[float | None, str]] | None:
    """Return multiple and phase of each of so many figures.

    None where two ways are open; an empty list where the heading does not tell.
    """
    multiples, phases = meaning.multiples, meaning.phases
    by_multiple = count == len(multiples) and len(phases) <= 1
    by_phase = count == len(phases) and len(multiples) <= 1
    if count > 1 and len(multiples) > 1 and len(phases) > 1:
        return None
    if count > 1 and by_multiple:
        return [(multiple, _only(phases) or "") for multiple in multiples]
    if count > 1 and by_phase:
        return [(_only(multiples), phase) for phase in phases]
    return [(_only(multiples), _only(phases) or "")] if count == 1 else []


def _only(values: Sequence[Any]) -> Any:
    """Return the only value there is, or None where there are none or several."""
    return values[0] if len(values) == 1 else None


def _reading(
    figure: str, meaning: Meaning, multiple: float | None, phase: str, shape: str
) -> dict[str, Any]:
    value = canonical(figure, of_button=meaning.test == Test.BUTTON)
    value = with_unit(GOOD_AT_END.sub("", value), meaning.unit)
    test = meaning.test
    if multiple == HALF and test == Test.TRIP_TIME:
        test = Test.NO_TRIP.value
    made = _request(test, value, shape, multiple, phase)
    if meaning.current is not None and multiple is None and test != Test.BUTTON:
        made["current"] = f"{format_number(meaning.current, 9)} mA"
    return made


def _request(
    test: str, value: str, shape: str, multiple: float | None, phase: str
) -> dict[str, Any]:
    if test == Test.BUTTON:
        return {"test": test, "value": value}
    if not test and A_TIME.fullmatch(value):
        test = Test.TRIP_TIME.value
    made: dict[str, Any] = {"test": test or Test.UNKNOWN.value, "value": value, "waveform": shape}
    if multiple is not None:
        made["multiple"] = format_number(multiple)
    return made | ({"phase": phase} if phase else {})


def _expected(test: str) -> str:
    return EXPECTED.get(test, "trip_time")


def _checked(made: Sequence[dict[str, Any]]) -> Read:
    """Keep apart the readings that the judgement would refuse, with what is wrong."""
    good, problems = [], []
    for one in made:
        wrong = _refusal(one)
        if wrong:
            problems.append(wrong)
        else:
            good.append(one)
    return Read(tuple(good), tuple(problems))


def _refusal(reading: dict[str, Any]) -> str:
    """Return why a reading would be refused, or nothing."""
    try:
        measured = parse_measured(reading["value"], _expected(reading["test"]))
    except NotAQuantity as bad:
        return str(bad)
    if reading["test"] == Test.BUTTON and measured.said in (Said.FIGURE, Said.LESS_THAN):
        return part("schedule.figure-of-a-button")
    return ""
