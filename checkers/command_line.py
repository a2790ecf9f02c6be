"""Flags derived from a checker's typed inputs, and the request they make."""

from __future__ import annotations

import argparse
import shlex
import textwrap
from collections.abc import Collection, Mapping
from typing import Any

from checkers.domain.checker import Checker
from checkers.domain.errors import InvalidRequest
from checkers.domain.fields import Input, Kind, inputs_of

WIDTH = 79


class Formatter(argparse.RawDescriptionHelpFormatter):
    """Help that keeps to eighty columns."""

    def __init__(self, prog: str) -> None:
        super().__init__(prog, max_help_position=28, width=WIDTH)


def parser_for(checker: Checker) -> argparse.ArgumentParser:
    """Return the parser of a checker's flags, with help from its inputs."""
    parser = argparse.ArgumentParser(
        prog=f"python -m checkers {checker.slug}",
        description=textwrap.fill(checker.question, WIDTH),
        epilog="Exit status: 0 pass, 1 fail, 2 the request was bad, 3 borderline or cannot say.",
        formatter_class=Formatter,
        allow_abbrev=False,
    )
    parser.add_argument("--json", metavar="FILE", help="a request as JSON; - for standard input")
    add_flags(parser, checker.inputs)
    return parser


def request_from(checker: Checker, given: Mapping[str, Any]) -> dict[str, Any]:
    """Return the request that the flags make, of the shape the contract has.

    Raises InvalidRequest where an entry such as --reading cannot be split up.
    """
    return _request(checker.inputs, given)


def add_flags(parser: Any, kind: type[Any], leave_out: Collection[str] = ()) -> None:
    """Add a flag for every input of a dataclass, save those left out."""
    for one in inputs_of(kind):
        if one.name in leave_out:
            continue
        if one.spec.kind is Kind.GROUP:
            add_flags(parser.add_argument_group(one.spec.label), _group(one))
        elif one.spec.kind is Kind.MANY:
            _add_entry(parser, one, _names(kind))
        else:
            parser.add_argument(_flag(one.name), metavar=_metavar(one), help=_help(one))


def _names(kind: type[Any]) -> set[str]:
    """Return the names of all inputs that have a flag of their own, within groups too."""
    inner = (one for one in inputs_of(kind) if one.spec.kind is Kind.GROUP)
    own = {one.name for one in inputs_of(kind)}
    return own.union(*(_names(_group(one)) for one in inner))


def _add_entry(parser: Any, one: Input, taken: Collection[str]) -> None:
    singular = _singular(one.name)
    keys = ", ".join(inner.name for inner in inputs_of(_group(one)))
    parser.add_argument(
        _flag(one.name if singular in taken else singular),
        dest=one.name,
        action="append",
        metavar="KEY=VALUE…",
        help=f'{one.spec.label}, as "key=value key=value"; may be repeated. Keys: {keys}',
    )


def _request(kind: type[Any], given: Mapping[str, Any]) -> dict[str, Any]:
    request: dict[str, Any] = {}
    for one in inputs_of(kind):
        value = _value(one, given)
        if value not in (None, {}):
            request[one.name] = value
    return request


def _value(one: Input, given: Mapping[str, Any]) -> Any:
    if one.spec.kind is Kind.GROUP:
        return _request(_group(one), given)
    value = given.get(one.name)
    if one.spec.kind is Kind.MANY and value is not None:
        return [_entry(one, text) for text in value]
    return value


def _entry(one: Input, text: str) -> dict[str, str]:
    try:
        pairs = [part.partition("=") for part in shlex.split(text)]
    except ValueError as bad:
        raise InvalidRequest({one.name: f"{text!r}: {bad}"}) from bad
    if not all(mark for _, mark, _ in pairs):
        raise InvalidRequest({one.name: f"{text!r} is not made of key=value"})
    return {key: value for key, _, value in pairs}


def _group(one: Input) -> type[Any]:
    assert one.spec.group is not None  # noqa: S101  # group() and many() always set it
    return one.spec.group


def _flag(name: str) -> str:
    return "--" + name.replace("_", "-")


def _singular(name: str) -> str:
    return name.removesuffix("s")


def _metavar(one: Input) -> str:
    return {Kind.DAY: "DAY", Kind.YES_NO: "yes|no", Kind.TEXT: "TEXT"}.get(
        one.spec.kind, one.spec.unit or "VALUE"
    )


def _help(one: Input) -> str:
    parts = [one.spec.label + (" (needed)" if one.required else "")]
    if one.spec.choices:
        parts.append(", ".join(choice.value for choice in one.spec.choices))
    if one.spec.explain:
        parts.append(one.spec.explain.rstrip("."))
    if one.default not in (None, "", ()):
        parts.append(f"default {one.default}")
    return "; ".join(parts).replace("%", "%%")
