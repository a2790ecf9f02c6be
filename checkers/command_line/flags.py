"""Flags derived from a checker's typed inputs, and the request they make."""

from __future__ import annotations

import argparse
import shlex
import textwrap
from collections.abc import Collection, Mapping
from typing import Any, NoReturn

from checkers.domain.checker import Checker
from checkers.domain.errors import InvalidRequest, cut, quoted
from checkers.domain.inputs.fields import Input, Kind, inputs_of
from checkers.domain.inputs.request_text import below, given_twice

WIDTH = 79
MOST_SAID = 300
EXIT_STATUSES = """Exit status: 0 pass, 1 fail, 2 the request was bad, 3 borderline or cannot say,
4 the data of this copy is damaged."""
STRICT = "exit with 3 where a pass leaves a test open that the code requires"


class Formatter(argparse.RawDescriptionHelpFormatter):
    """Help that keeps to eighty columns."""

    def __init__(self, prog: str) -> None:
        super().__init__(prog, max_help_position=28, width=WIDTH)


class Parser(argparse.ArgumentParser):
    """A parser that says in one line what is wrong with the words."""

    def error(self, message: str) -> NoReturn:
        """Leave with the status of a bad request."""
        self.exit(2, f"{self.prog}: {message[:MOST_SAID]}; --help lists the flags\n")


class Once(argparse.Action):
    """Takes the value of a flag that may stand there once."""

    def __call__(
        self,
        parser: argparse.ArgumentParser,
        namespace: argparse.Namespace,
        values: Any,
        option_string: str | None = None,
    ) -> None:
        """Keep the value; a second one is refused by name, with both."""
        del parser, option_string
        first = getattr(namespace, self.dest)
        if first != self.default:
            raise argparse.ArgumentError(self, given_twice(first, values))
        setattr(namespace, self.dest, values)


def parser_for(checker: Checker) -> argparse.ArgumentParser:
    """Return the parser of a checker's flags, with help from its inputs."""
    parser = Parser(
        prog=f"python -m checkers {checker.slug}",
        description=textwrap.fill(checker.question, WIDTH),
        epilog=EXIT_STATUSES,
        formatter_class=Formatter,
        allow_abbrev=False,
    )
    parser.add_argument(
        "--json",
        metavar="FILE",
        action=Once,
        help="a request as JSON, without other flags; - for standard input",
    )
    add_strict(parser)
    add_flags(parser, checker.inputs)
    return parser


def add_strict(parser: argparse.ArgumentParser) -> None:
    """Add the flag by which a pass that leaves a required test open is none."""
    parser.add_argument("--strict", action="store_true", help=STRICT)


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
            parser.add_argument(
                _flag(one.name), metavar=_metavar(one), help=_help(one), action=Once
            )


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
        return [_entry(f"{one.name}[{place}]", text) for place, text in enumerate(value)]
    return value


def _entry(path: str, text: str) -> dict[str, str]:
    """Return an entry such as "value=28 phase=0"; a key given twice is refused by name."""
    try:
        pairs = [part.partition("=") for part in shlex.split(text)]
    except ValueError as bad:
        raise InvalidRequest({path: f"{quoted(text)}: {bad}"}) from bad
    if not all(key and mark for key, mark, _ in pairs):
        raise InvalidRequest({path: f"{quoted(text)} is not made of key=value"})
    entry: dict[str, str] = {}
    for key, _, value in pairs:
        if key in entry:
            raise InvalidRequest({cut(below(path, key)): given_twice(entry[key], value)})
        entry[key] = value
    return entry


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
