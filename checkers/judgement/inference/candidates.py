"""What could be tested or looked at next, read from data/next_tests.toml."""

from __future__ import annotations

from dataclasses import dataclass

from checkers.domain.device.device import DeviceType
from checkers.domain.device.placed_readings import PLACES
from checkers.domain.device.readings import Test, Waveform
from checkers.domain.sources.documents import EVIDENCE_WORDS
from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.domain.tables.records import Record

FILE = "next_tests.toml"
LOADS = frozenset({"on", "off", "unknown"})
PLACE_NAMES = frozenset(place for place, _ in PLACES)
NEEDS = frozenset({"dc", "leakage", "opened"})
WHAT = frozenset({"marking", "dc", "leakage", "path", "settings", "bond"})


@dataclass(frozen=True, slots=True)
class ReadingCandidate:
    """A test with the instrument, or of the button."""

    words: str
    test: str
    multiple: float | None
    waveform: str
    place: str
    loads: str
    types: frozenset[str] | None


@dataclass(frozen=True, slots=True)
class Observation:
    """Something to look at or measure, with two outcomes."""

    words: str
    what: str
    yes: str
    no: str
    needs: frozenset[str]


@dataclass(frozen=True, slots=True)
class Watch:
    """A trip watched, with three outcomes."""

    words: str
    own: str
    another: str
    none: str
    needs: frozenset[str]


@dataclass(frozen=True, slots=True)
class Candidates:
    """Everything that could be done next; how often an observation is wrong; the DC looked for."""

    error: float
    dc: float
    readings: tuple[ReadingCandidate, ...]
    observations: tuple[Observation, ...]
    watches: tuple[Watch, ...]


def load_candidates(text: dict[str, object], file: str) -> Candidates:
    """Return the parsed file; raises DataError where an entry is not whole."""
    top = Record(file, "", text)
    error, dc = _observing(top)
    loaded = Candidates(
        error,
        dc,
        tuple(_reading(one) for one in top.records("reading")),
        tuple(_observation(one) for one in top.records("observation_of")),
        tuple(_watch(one) for one in top.records("watch")),
    )
    top.finish()
    return loaded


def _observing(top: Record) -> tuple[float, float]:
    record = top.record("observation")
    if record is None:
        raise top.error("needs a table [observation]")
    error, dc = record.number("error"), record.amount("dc", "current")
    record.choice("evidence", EVIDENCE_WORDS)
    record.text("why")
    record.finish()
    if error is None or not error < 0.5 or dc is None:
        raise record.error("needs 'error' below a half, and 'dc'")
    return error, dc


def _reading(record: Record) -> ReadingCandidate:
    candidate = ReadingCandidate(
        words=record.text("words"),
        test=record.choice("test", frozenset(Test)),
        multiple=record.number("multiple"),
        waveform=record.choice("waveform", frozenset(Waveform), default=Waveform.AC.value),
        place=record.choice("place", PLACE_NAMES, default="unknown"),
        loads=record.choice("loads", LOADS, default="unknown"),
        types=record.choices("types", frozenset(DeviceType)),
    )
    record.finish()
    return candidate


def _observation(record: Record) -> Observation:
    observation = Observation(
        words=record.text("words"),
        what=record.choice("what", WHAT),
        yes=record.text("yes"),
        no=record.text("no"),
        needs=record.choices("needs", NEEDS) or frozenset(),
    )
    record.finish()
    return observation


def _watch(record: Record) -> Watch:
    watch = Watch(
        words=record.text("words"),
        own=record.text("own"),
        another=record.text("another"),
        none=record.text("none"),
        needs=record.choices("needs", NEEDS) or frozenset(),
    )
    record.finish()
    return watch


CANDIDATES = load_candidates(read_toml(data_folder() / FILE, FILE), FILE)
