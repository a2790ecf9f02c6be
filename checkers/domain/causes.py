"""What can make a device read as it does: codes, words and prior shares, from data/causes.toml."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any

from checkers.domain.device.device import DeviceType
from checkers.domain.sources.documents import EVIDENCE_WORDS, SOURCES, Citation, cite
from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.domain.tables.records import Record

FILE = "causes.toml"
SHARES = (
    "leakage_keeps",
    "leakage_adds",
    "leakage_opposes",
    "dc_keeps",
    "measured_small",
    "loads_off",
)


@dataclass(frozen=True, slots=True)
class Cause:
    """One cause: its permanent code, its words, how common it is, and what to do.

    `prior` is None for the one cause that takes what the others leave. `tempting` are the
    actions that are often taken about it and mend nothing.
    """

    code: str
    name: str
    means: str
    prior: float | None
    prior_of_type: Mapping[str, float]
    prior_on_own_source: float | None
    danger: bool
    from_loads: bool
    action: str
    also: tuple[str, ...]
    tempting: tuple[str, ...]
    citation: Citation | None
    why: str

    def prior_for(self, device_type: str, *, own_source: bool = False) -> float:
        """Return how common it is with a device of a type, on a supply; 0 for the remainder."""
        if own_source and self.prior_on_own_source is not None:
            return self.prior_on_own_source
        return self.prior_of_type.get(device_type, self.prior or 0.0)

    @property
    def do_next(self) -> str:
        """What to do about it, in words: safety first where people may be without protection."""
        return self.in_words(self.action)

    def in_words(self, action: str) -> str:
        """Return an action about this cause, in words, with what safety asks for before it."""
        return f"{SAFETY_FIRST} {ACTIONS[action]}" if self.danger else ACTIONS[action]


@dataclass(frozen=True, slots=True)
class Stated:
    """How measured leakage, measured DC and disconnected loads change the prior shares."""

    leakage_keeps: float
    leakage_adds: float
    leakage_opposes: float
    dc_keeps: float
    measured_small: float
    loads_off: float


@dataclass(frozen=True, slots=True)
class CauseBook:
    """Everything in the file: shares, what safety asks for first, actions, causes.

    `no_remedy` says of some actions why they mend nothing.
    """

    stated: Stated
    safety_first: str
    actions: Mapping[str, str]
    no_remedy: Mapping[str, str]
    causes: Mapping[str, Cause]


def load_causes(text: Mapping[str, Any], file: str) -> CauseBook:
    """Return everything of a parsed file; raises DataError where it is not whole."""
    top = Record(file, "", dict(text))
    actions, listed = _texts(_table(top, "action")), _table(top, "cause")
    book = CauseBook(
        stated=_stated(_table(top, "stated")),
        safety_first=_texts(_table(top, "safety")).get("first", ""),
        actions=MappingProxyType(actions),
        no_remedy=MappingProxyType(_texts(_table(top, "no_remedy"))),
        causes=MappingProxyType({code: _cause(code, listed, actions) for code in listed.values}),
    )
    top.finish()
    _check_remainder(book.causes, top)
    _check_actions(book, top)
    return book


def _table(record: Record, key: str) -> Record:
    found = record.record(key)
    if found is None:
        raise record.error(f"needs a table [{key}]")
    return found


def _stated(record: Record) -> Stated:
    shares = {key: _share(record, key) for key in SHARES}
    record.choice("evidence", EVIDENCE_WORDS)
    record.text("why")
    record.finish()
    return Stated(**shares)


def _texts(record: Record) -> dict[str, str]:
    return {key: record.text(key) for key in record.values}


def _cause(code: str, listed: Record, actions: Mapping[str, str]) -> Cause:
    record = _table(listed, code)
    remainder = record.flag("remainder", default=False)
    cause = Cause(
        code=code,
        name=record.text("name"),
        means=record.text("means"),
        prior=None if remainder else _share(record, "prior"),
        prior_of_type=_priors_of_types(record),
        prior_on_own_source=record.number("prior_on_own_source"),
        danger=record.flag("danger", default=False),
        from_loads=record.flag("from_loads", default=False),
        action=record.choice("action", frozenset(actions)),
        also=_others(record, "also", actions),
        tempting=_others(record, "tempting", actions),
        citation=None if remainder else _citation(record),
        why=record.text("why"),
    )
    record.finish()
    return cause


def _others(record: Record, key: str, actions: Mapping[str, str]) -> tuple[str, ...]:
    """Return the other actions that a cause names under a key."""
    return tuple(sorted(record.choices(key, frozenset(actions)) or frozenset()))


def _share(record: Record, key: str) -> float:
    value = record.number(key)
    if value is None or value > 1.0:
        raise record.error(f"needs {key!r} as a share from 0 to 1")
    return value


def _priors_of_types(record: Record) -> Mapping[str, float]:
    inner = record.record("prior_of_type")
    if inner is None:
        return MappingProxyType({})
    priors = {str(one): _share(inner, one) for one in DeviceType if one in inner.values}
    inner.finish()
    return MappingProxyType(priors)


def _citation(record: Record) -> Citation:
    document = record.choice("document", frozenset(SOURCES))
    return cite(document, record.text("clause", ""), record.choice("evidence", EVIDENCE_WORDS))


def _check_remainder(causes: Mapping[str, Cause], top: Record) -> None:
    if sum(cause.prior is None for cause in causes.values()) != 1:
        raise top.error("exactly one cause takes the remainder")
    for kind in DeviceType:
        if sum(cause.prior_for(kind, own_source=True) for cause in causes.values()) >= 1.0:
            raise top.error(f"the priors of type {kind} leave nothing")


def _check_actions(book: CauseBook, top: Record) -> None:
    """Refuse a danger without a first step, and a remedy that the file says is none."""
    if not book.safety_first:
        raise top.error("needs what safety asks for first, under [safety]")
    for code, cause in book.causes.items():
        taken = {cause.action, *cause.also} & set(book.no_remedy)
        if taken or set(cause.tempting) - set(book.no_remedy):
            raise top.error(f"{code!r}: an action is either a remedy or under [no_remedy]")


BOOK = load_causes(read_toml(data_folder() / FILE, FILE), FILE)
STATED: Stated = BOOK.stated
SAFETY_FIRST: str = BOOK.safety_first
ACTIONS: Mapping[str, str] = BOOK.actions
NO_REMEDY: Mapping[str, str] = BOOK.no_remedy
CAUSES: Mapping[str, Cause] = BOOK.causes
REMAINDER = next(code for code, cause in CAUSES.items() if cause.prior is None)
