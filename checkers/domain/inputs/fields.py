"""Typed inputs: each field of an input dataclass says what it is, once.

Forms, command-line flags, documentation and error messages are derived from
these descriptions; see parsing for how a request becomes an instance.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping
from dataclasses import MISSING, dataclass
from enum import StrEnum
from typing import Any, Self

from checkers.domain.tables.glossary import QUANTITIES

Pairs = tuple[tuple[str, str], ...]


class Labelled(StrEnum):
    """An enum whose members carry the words shown for them."""

    label: str

    def __new__(cls, value: str, label: str = "") -> Self:
        """Make a member from its value and the words shown for it."""
        made = str.__new__(cls, value)
        made._value_ = value
        made.label = label
        return made


def labels_of(choices: type[Labelled]) -> Pairs:
    """Return the value and the words of each member."""
    return tuple((one.value, one.label) for one in choices)


class Kind(StrEnum):
    """What sort of thing a field holds, and so how it is read and shown."""

    CHOICE = "choice"
    CHOICE_OR_QUANTITY = "choice-or-quantity"
    QUANTITY = "quantity"
    MULTIPLE = "multiple"
    WHOLE_NUMBER = "whole-number"
    TEXT = "text"
    DAY = "day"
    YES_NO = "yes-no"
    GROUP = "group"
    MANY = "many"


@dataclass(frozen=True, slots=True)
class Choice:
    """One allowed value, with the words shown for it."""

    value: str
    label: str


@dataclass(frozen=True, slots=True)
class Start:
    """An entry of a list that is often wanted: what it is called, and what it begins with."""

    label: str
    values: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Folded:
    """How the entries of a list fold: one field stays open, the others are a line of words.

    `lead` is the field that stays open; `ask` stands where nothing else is filled in; `starts`
    are entries to begin from.
    """

    lead: str
    ask: str
    starts: tuple[Start, ...] = ()


@dataclass(frozen=True, slots=True)
class Spec:
    """What a field is: its kind, its words, and what it accepts.

    `left_out` says what is taken where the field is left out and its default does not tell;
    `keypad` marks a text that is mostly a number, so that a phone shows its keypad for numbers;
    `each` names one entry of a list.
    """

    kind: Kind
    label: str
    explain: str = ""
    left_out: str = ""
    choices: tuple[Choice, ...] = ()
    quantity: str = ""
    group: type[Any] | None = None
    least: int = 0
    most: int = 0
    suggestions: tuple[str, ...] = ()
    advanced: bool = False
    verbatim: bool = False
    keypad: bool = False
    folded: Folded | None = None
    each: str = ""

    @property
    def unit(self) -> str:
        """The unit of a bare number, where the field has one."""
        return QUANTITIES[self.quantity].unit if self.quantity else ""


@dataclass(frozen=True, slots=True)
class Input:
    """A field as the rest of the program sees it."""

    name: str
    spec: Spec
    required: bool
    default: Any


def choice(
    choices: type[Labelled] | Pairs, label: str, *, default: Any = MISSING, **words: Any
) -> Any:
    """Declare a field that takes one of some values: an enum with labels, or (value, label)s."""
    pairs = labels_of(choices) if isinstance(choices, type) else choices
    listed = tuple(Choice(value, shown) for value, shown in pairs)
    return _declare(Spec(Kind.CHOICE, label, choices=listed, **words), default)


def choice_or_quantity(choices: Pairs, name: str, label: str, *, default: Any, **words: Any) -> Any:
    """Declare a field that takes one of some words, or a quantity of the glossary."""
    listed = tuple(Choice(value, shown) for value, shown in choices)
    spec = Spec(Kind.CHOICE_OR_QUANTITY, label, choices=listed, quantity=name, **words)
    return _declare(spec, default)


def quantity(name: str, label: str = "", *, default: Any = MISSING, **words: Any) -> Any:
    """Declare a field that takes a quantity of the glossary, by its key."""
    known = QUANTITIES[name]
    words.setdefault("explain", known.meaning)
    return _declare(Spec(Kind.QUANTITY, label or known.name, quantity=name, **words), default)


def multiple(label: str, *, default: Any = MISSING, **words: Any) -> Any:
    """Declare a field that takes a multiple of the rated residual current."""
    return _declare(Spec(Kind.MULTIPLE, label, **words), default)


def whole_number(label: str, *, least: int, most: int, default: Any = MISSING, **words: Any) -> Any:
    """Declare a field that takes a whole number within bounds."""
    return _declare(Spec(Kind.WHOLE_NUMBER, label, least=least, most=most, **words), default)


def text(label: str, *, default: Any = "", most: int = 200, **words: Any) -> Any:
    """Declare a field that takes free text of at most so many characters."""
    return _declare(Spec(Kind.TEXT, label, most=most, **words), default)


def day(label: str, *, default: Any = None, **words: Any) -> Any:
    """Declare a field that takes a day, as 2026-11-24."""
    return _declare(Spec(Kind.DAY, label, **words), default)


def yes_no(label: str, *, default: Any = None, **words: Any) -> Any:
    """Declare a field that is true, false or, by default, not said."""
    return _declare(Spec(Kind.YES_NO, label, **words), default)


def group(kind: type[Any], label: str, *, default: Any = MISSING, **words: Any) -> Any:
    """Declare a field that holds the fields of another input dataclass."""
    return _declare(Spec(Kind.GROUP, label, group=kind, **words), default)


def many(kind: type[Any], label: str, *, least: int = 0, most: int = 200, **words: Any) -> Any:
    """Declare a field that holds a list of another input dataclass."""
    spec = Spec(Kind.MANY, label, group=kind, least=least, most=most, **words)
    return _declare(spec, MISSING if least else ())


def inputs_of(kind: type[Any]) -> tuple[Input, ...]:
    """Return the declared fields of an input dataclass, in order."""
    return tuple(
        Input(
            name=field.name,
            spec=field.metadata["spec"],
            required=field.default is MISSING and field.default_factory is MISSING,
            default=None if field.default is MISSING else field.default,
        )
        for field in dataclasses.fields(kind)
        if "spec" in field.metadata
    )


def _declare(spec: Spec, default: Any) -> Any:
    if default is MISSING:
        return dataclasses.field(metadata={"spec": spec})
    if isinstance(default, type):
        return dataclasses.field(default_factory=default, metadata={"spec": spec})
    return dataclasses.field(default=default, metadata={"spec": spec})
