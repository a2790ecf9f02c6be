"""The drills: scenes, what a learner may do, what tells each cause, and levels."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any

from checkers.domain.causes import ACTIONS, CAUSES
from checkers.domain.device.device import DeviceType
from checkers.domain.device.placed_readings import PLACES, SUPPLIES
from checkers.domain.device.readings import PHASES, Test, Waveform
from checkers.domain.device.supply import Supply
from checkers.domain.loads.kinds import Separation
from checkers.domain.loads.registry import LOADS
from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.domain.tables.records import Record, amount

FILE = "practice.toml"
LOOKS = frozenset({"watch", "marking", "dc", "leakage", "path", "settings", "bond"})
ASKS = frozenset({"limits", "cause", "action"})
SOUND = "in-good-order"
SILENT = "silent"
SWITCHED = frozenset({"on", "off"})


@dataclass(frozen=True, slots=True)
class Scene:
    """An invented place, what supplies it, and the equipment there.

    `fed`, `separation`, `maker_says` and `detection` are what is known of the equipment, as
    type-for-load is asked; what is not said is None or empty.
    """

    words: str
    supply: str
    load: str
    fed: str
    separation: str
    maker_says: str
    detection: bool | None


@dataclass(frozen=True, slots=True)
class Thing:
    """Something a learner may do: a test with the instrument, the button, or a look."""

    key: str
    words: str
    test: str
    look: str
    multiple: float | None
    waveform: str
    phase: str
    place: str
    loads: str


@dataclass(frozen=True, slots=True)
class PracticeLevel:
    """One level: its task, the causes behind its devices, what is given and what is asked.

    `sound_share` of its devices are in good order. Where `given_one` holds, one of the things
    given is shown, not all of them.
    """

    number: int
    title: str
    task: str
    causes: tuple[str, ...]
    types: tuple[str, ...]
    ratings: tuple[float, ...]
    sound_share: float
    given: tuple[str, ...]
    given_one: bool
    asks: frozenset[str]

    @property
    def actions(self) -> tuple[str, ...]:
        """The actions that are right for any of its causes, or tempting, in the list's order."""
        offered = {one for cause in self.causes for one in _offered_for(cause)}
        return tuple(key for key in ACTIONS if key in offered)


@dataclass(frozen=True, slots=True)
class Drills:
    """Everything the file holds."""

    scenes: tuple[Scene, ...]
    things: Mapping[str, Thing]
    told_by: Mapping[str, tuple[str, ...]]
    times: Mapping[str, int]
    levels: tuple[PracticeLevel, ...]

    def telling(self, cause: str) -> tuple[str, ...]:
        """Return what tells a cause, each as often as it takes."""
        return self.told_by[cause] * self.times.get(cause, 1)


def load_drills(text: dict[str, Any], file: str) -> Drills:
    """Return the parsed file; raises DataError where something is missing or not known."""
    top = Record(file, "", text)
    scenes = tuple(_scene(record) for record in top.records("scene"))
    things = _things(top)
    told_by, times = _told_by(top, frozenset(things)), _times(top)
    levels = tuple(
        _level(number, record, frozenset(things))
        for number, record in enumerate(top.records("level"), start=1)
    )
    top.finish()
    if not scenes or not levels:
        raise top.error("needs scenes and levels")
    return Drills(
        scenes, MappingProxyType(things), MappingProxyType(told_by), MappingProxyType(times), levels
    )


def _scene(record: Record) -> Scene:
    supplies = frozenset(supply for supply, _ in SUPPLIES)
    scene = Scene(
        words=record.text("words"),
        supply=record.choice("supply", supplies),
        load=record.choice("load", frozenset(LOADS)),
        fed=record.choice("fed", frozenset(Supply), default=""),
        separation=record.choice("separation", frozenset(Separation), default=Separation.UNKNOWN),
        maker_says=record.text("maker_says", default=SILENT),
        detection=None if record.value("detection") is None else record.flag("detection"),
    )
    record.finish()
    if scene.fed and scene.fed not in LOADS[scene.load].circuits:
        raise record.error(f"'fed' is {scene.fed!r}, which is no supply of its equipment")
    return scene


def _things(top: Record) -> dict[str, Thing]:
    listed = top.record("do")
    if listed is None:
        raise top.error("needs a table [do]")
    entries = listed.values.items()
    return {key: _thing(key, Record(top.file, f"do {key}", entry)) for key, entry in entries}


def _thing(key: str, record: Record) -> Thing:
    look = record.choice("look", LOOKS, default="")
    thing = Thing(
        key=key,
        words=record.text("words"),
        test=record.choice("test", frozenset(Test), default=Test.UNKNOWN.value),
        look=look,
        multiple=record.number("multiple"),
        waveform=record.choice("waveform", frozenset(Waveform), default=Waveform.AC.value),
        phase=record.choice("phase", frozenset(one for one, _ in PHASES), default=""),
        place=record.choice("place", frozenset(one for one, _ in PLACES), default="point"),
        loads=record.choice("loads", SWITCHED, default="off"),
    )
    record.finish()
    if bool(look) == (thing.test != Test.UNKNOWN):
        raise record.error("needs either a test or a look")
    return thing


def _told_by(top: Record, things: frozenset[str]) -> dict[str, tuple[str, ...]]:
    record = top.record("told_by")
    if record is None:
        raise top.error("needs a table [told_by]")
    told = {cause: record.texts(cause) for cause in CAUSES}
    record.finish()
    for cause, keys in told.items():
        if not keys or not set(keys) <= things:
            raise record.error(f"{cause!r} needs things that can be done")
    return told


def _times(top: Record) -> dict[str, int]:
    record = top.record("times")
    if record is None:
        return {}
    times = {cause: int(record.number(cause) or 0) for cause in record.values if cause in CAUSES}
    record.finish()
    if min(times.values(), default=1) < 1:
        raise record.error("needs a whole number of times for each cause")
    return times


def _level(number: int, record: Record, things: frozenset[str]) -> PracticeLevel:
    level = PracticeLevel(
        number=number,
        title=record.text("title"),
        task=record.text("task"),
        causes=_known(record, "causes", frozenset(CAUSES)),
        types=_known(record, "types", frozenset(DeviceType)),
        ratings=tuple(amount(one, "current") for one in record.texts("ratings")),
        sound_share=_share(record, "sound_share"),
        given=_known(record, "given", things),
        given_one=record.flag("given_one", default=False),
        asks=frozenset(_known(record, "asks", ASKS)),
    )
    record.finish()
    if SOUND not in level.causes or len(level.causes) == 1:
        raise record.error(f"needs {SOUND!r} and at least one other cause")
    return level


def _offered_for(code: str) -> tuple[str, ...]:
    cause = CAUSES[code]
    return (cause.action, *cause.also, *cause.tempting)


def _share(record: Record, key: str) -> float:
    value = record.number(key)
    if value is None or not 0.0 < value < 1.0:
        raise record.error(f"needs {key!r} as a share between 0 and 1")
    return value


def _known(record: Record, key: str, known: frozenset[str]) -> tuple[str, ...]:
    words = record.texts(key)
    strange = sorted(set(words) - known)
    if strange or not words:
        raise record.error(f"{key!r} needs words that are known, not {strange}")
    return words


DRILLS = load_drills(read_toml(data_folder() / FILE, FILE), FILE)
