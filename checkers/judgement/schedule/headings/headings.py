"""What the heading of a column means."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import lru_cache

from checkers.domain.device.readings import Test
from checkers.domain.tables.glossary import UNITS
from checkers.judgement.schedule.headings.marks import Marks, marks_of
from checkers.judgement.schedule.headings.meaning import (
    PROPERTIES,
    READING,
    UNKNOWN,
    Meaning,
    test_of,
)
from checkers.wording.book import part

NOTHING = Meaning(UNKNOWN)
YES_MEANS = re.compile(r"[,;(]?\s*yes ?(?:=|means|:) ?(held|tripped)\)?\s*$", re.IGNORECASE)
LONGEST = 300  # characters; what is longer is no heading
RATED_OR_MEASURED = "schedule.asks-rated-or-measured"
TIME = "schedule.asks-time"
TWO_MEANINGS = "schedule.asks-two-meanings"


def meaning_of(heading: str) -> Meaning:
    """Return what a heading means; where its words are not all understood, with a question."""
    return _meaning_of(heading) if len(heading) <= LONGEST else NOTHING


@lru_cache(maxsize=4096)
def _meaning_of(heading: str) -> Meaning:
    answered = YES_MEANS.search(heading)
    if answered:
        meaning = _meaning_of(heading[: answered.start()])
        return replace(meaning, yes=answered[1].lower()) if meaning.is_no_trip else NOTHING
    marks = marks_of(heading)
    if _column_words(marks, "ignored"):
        return Meaning("ignored")
    if _tells_a_test(marks):
        return _reading(marks)
    return _symbol(marks) or _column(marks)


def _column_words(marks: Marks, *kinds: str, weak: bool | None = None) -> list[str]:
    found = [one for one in marks.words if one.respect == "column" and one.means in kinds]
    return [one.means for one in found if weak is None or one.weak == weak]


def _tests(marks: Marks) -> list[str]:
    """Return the tests that are named without doubt, each once."""
    named = [one.means for one in marks.words if one.respect == "test" and not one.unsure]
    return list(dict.fromkeys(named))


def _strong(marks: Marks) -> list[str]:
    """Return the kinds of column that are named without doubt, each once."""
    words = (one for one in marks.words if one.respect == "column")
    return list(dict.fromkeys(one.means for one in words if not one.weak and not one.unsure))


def _has_time_unit(marks: Marks) -> bool:
    return any(UNITS[unit].kind == "time" for unit in marks.units)


def _tells_a_test(marks: Marks) -> bool:
    strong = [kind for kind in _strong(marks) if kind != "value"]
    if _tests(marks):
        return not (strong and strong[0] in PROPERTIES)
    if strong:
        return False
    return bool(marks.multiples or marks.phases or _has_time_unit(marks))


def _reading(marks: Marks) -> Meaning:
    multiples = tuple(marks.multiples) or ((1.0,) if "rated" in marks.symbols else ())
    tests = _tests(marks)
    test = tests[0] if tests else test_of(multiples)
    if test == Test.TRIP_TIME and multiples == (0.5,):
        test = Test.NO_TRIP.value
    waveforms = _waveforms(marks)
    return Meaning(
        kind=READING,
        test=test,
        multiples=() if test in (Test.RAMP, Test.BUTTON) else multiples,
        phases=tuple(marks.phases),
        current=marks.currents[0] if marks.currents and not multiples else None,
        waveform=waveforms[0] if waveforms else "",
        unit=marks.units[0] if marks.units else "",
        asks=_question(marks, tests, waveforms),
        names_no_trip=Test.NO_TRIP.value in tests,
    )


def _waveforms(marks: Marks) -> list[str]:
    """Return the waveforms named, each once."""
    return list(dict.fromkeys(one.means for one in marks.words if one.respect == "waveform"))


def _question(marks: Marks, tests: list[str], waveforms: list[str]) -> str:
    if marks.left_over:
        return part("schedule.asks-what-it-holds", words=" ".join(marks.left_over))
    if tests == [Test.RAMP] and "rated" in marks.symbols and not marks.multiples:
        return part(RATED_OR_MEASURED)
    if _strong(marks) and set(_strong(marks)) != {"value"}:
        return part(TWO_MEANINGS)
    several = (tests, waveforms, set(marks.units), marks.currents)
    return part(TWO_MEANINGS) if any(len(one) > 1 for one in several) else ""


def _symbol(marks: Marks) -> Meaning | None:
    """Return what the sign IΔn, or IΔ, means where no test and no other column is named."""
    if not marks.symbols or _strong(marks):
        return None
    asks = part("schedule.asks-words", words=" ".join(marks.left_over)) if marks.left_over else ""
    unit = marks.units[0] if marks.units else ""
    if "rated" in marks.symbols:
        return Meaning("rated", unit=unit, asks=asks)
    return Meaning(READING, test=Test.RAMP.value, unit=unit, asks=asks)


def _column(marks: Marks) -> Meaning:
    strong = _strong(marks)
    if strong:
        return _named_column(strong, marks)
    if any(one.unsure and one.respect == "column" for one in marks.words):
        return Meaning(READING, test=Test.RAMP.value, asks=part(RATED_OR_MEASURED))
    unsure = [one.means for one in marks.words if one.unsure and one.respect == "test"]
    if unsure:
        asks = TIME if unsure[0] == Test.TRIP_TIME else RATED_OR_MEASURED
        return Meaning(READING, test=unsure[0], asks=part(asks))
    return _weak_column(marks)


def _named_column(strong: list[str], marks: Marks) -> Meaning:
    kind = next((one for one in strong if one in PROPERTIES), strong[0])
    unit = marks.units[0] if marks.units else ""
    if kind == "rating":
        kind = _which_rating(marks)
    if kind in PROPERTIES and (marks.left_over or marks.multiples or marks.phases):
        return NOTHING
    return Meaning(kind, unit=unit)


def _which_rating(marks: Marks) -> str:
    """Return which rating is meant: residual in mA, of the load in A, or not told."""
    if "rated" in marks.symbols or "mA" in marks.units:
        return "rated"
    return "rated_current" if "A" in marks.units else "rating"


def _weak_column(marks: Marks) -> Meaning:
    if marks.currents:
        return NOTHING
    weak = [one.means for one in marks.words if one.respect == "column" and one.weak]
    if "value" in weak or (marks.units and weak):
        return Meaning("value", unit=marks.units[0] if marks.units else "")
    if "device" in weak:
        return Meaning("device")
    return NOTHING if marks.left_over or not weak else Meaning(weak[0])
