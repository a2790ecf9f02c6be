"""Whatever is asked of a checker, it answers it or refuses it by name, in every form alike."""

from __future__ import annotations

import json
import shlex
from collections.abc import Iterator, Mapping, Sequence
from copy import deepcopy
from itertools import pairwise
from random import Random
from typing import Any

import pytest

from checkers import answer, run
from checkers.catalogue import CHECKERS
from checkers.command_line.flags import parser_for, request_from
from checkers.domain.checker import Checker, Example
from checkers.domain.inputs.fields import Input, Kind, inputs_of
from checkers.domain.inputs.parsing import parse_inputs

EVERY = pytest.mark.parametrize("checker", CHECKERS, ids=[one.slug for one in CHECKERS])
EXAMPLES = [(checker, example) for checker in CHECKERS for example in checker.examples]
EVERY_EXAMPLE = pytest.mark.parametrize(
    ("checker", "example"), EXAMPLES, ids=[f"{c.slug}: {e.title}" for c, e in EXAMPLES]
)
WRONG: dict[Kind, Sequence[Any]] = {
    Kind.CHOICE: ("Z", 99, True, False, "unknwon"),
    Kind.CHOICE_OR_QUANTITY: ("fast", "28² ms", True, "1..5 ms"),
    Kind.QUANTITY: ("lots", "28²", "1.2.3", "-5", "1e3", True, 10**4400, "5 furlongs"),
    Kind.MULTIPLE: ("twice", "1½", "x", False, 10**4400, "-1"),
    Kind.WHOLE_NUMBER: ("some", "1.5", "-1", True, 10**4400, "9" * 5000, "1e2"),
    Kind.DAY: ("yesterday", "2026-13-01", "2026-11-31", True, 5),
    Kind.YES_NO: ("perhaps", "2", 2, "none", "unknown"),
    Kind.TEXT: (True, False),
    Kind.GROUP: ("A", 5, True, []),
    Kind.MANY: ("A", 5, True, {}),
}
CONTAINERS: tuple[Any, ...] = ([["a"]], {"a": {"b": 1}})


def fields_of(kind: type[Any], path: tuple[str | int, ...] = ()) -> Iterator[tuple[Any, Input]]:
    """Yield every field of a checker's inputs, with the way to it through groups and lists."""
    for one in inputs_of(kind):
        yield (*path, one.name), one
        if one.spec.group is not None:
            inner = (*path, one.name, 0) if one.spec.kind is Kind.MANY else (*path, one.name)
            yield from fields_of(one.spec.group, inner)


def name_of(path: Sequence[str | int]) -> str:
    """Return a way to a field as messages name it: readings[0].value."""
    parts = (f"[{one}]" if isinstance(one, int) else f".{one}" for one in path)
    return "".join(parts).removeprefix(".")


def with_value(request: Mapping[str, Any], path: Sequence[str | int], value: object) -> Any:
    """Return a request in which one field has this value, with the groups on the way to it."""
    made = deepcopy(dict(request))
    at: Any = made
    for here, following in pairwise(path):
        if isinstance(here, int):
            at.extend({} for _ in range(here + 1 - len(at)))
            at = at[here]
        else:
            at = at.setdefault(here, [] if isinstance(following, int) else {})
    at[path[-1]] = value
    return made


@EVERY
def test_every_field_refuses_a_wrong_value_by_name(checker: Checker) -> None:
    """Each field of each checker names itself, and neither guesses nor drops what it was given."""
    request = checker.examples[0].request
    passed = []
    for path, one in fields_of(checker.inputs):
        kind = one.spec.kind
        containers = () if kind in (Kind.GROUP, Kind.MANY) else CONTAINERS
        for value in (*WRONG[kind], *containers):
            reply = run(checker.slug, with_value(request, path, value))
            if name_of(path) not in reply.get("errors", {}):
                passed.append((name_of(path), str(value)[:40], reply["kind"]))

    assert passed == []


@EVERY
def test_an_unknown_field_is_refused_by_name_wherever_it_stands(checker: Checker) -> None:
    """A misspelt field is refused in every group and every list entry, too."""
    request = checker.examples[0].request
    groups = [
        (*path, 0) if one.spec.kind is Kind.MANY else path
        for path, one in fields_of(checker.inputs)
        if one.spec.group is not None
    ]
    for group in ((), *groups):
        path = (*group, "dc_residul")
        assert name_of(path) in run(checker.slug, with_value(request, path, "5 mA"))["errors"]


@pytest.mark.parametrize(
    ("request_value", "field"),
    [
        ({"device": 0}, "device"),
        ({"readings": [0]}, "readings[0]"),
        ({"readings": [{"value": "28"}, []]}, "readings[1]"),
        (0, "request"),
    ],
)
def test_a_field_is_named_without_a_dot_behind_it(request_value: object, field: str) -> None:
    """A form finds the field by the name it gave it."""
    assert field in run("readings", request_value)["errors"]


def typed(value: Any) -> Any:
    """Return a request as a form or an address holds it: all of it text."""
    if isinstance(value, Mapping):
        return {name: typed(one) for name, one in value.items()}
    if isinstance(value, list | tuple):
        return [typed(one) for one in value]
    return {True: "yes", False: "no"}[value] if isinstance(value, bool) else str(value)


def flags_of(checker: Checker, request: Mapping[str, Any]) -> list[str]:
    """Return the flags of the command line that say the same as a request."""
    words = []
    for name, value in request.items():
        if isinstance(value, Mapping):
            words += flags_of(checker, value)
        elif isinstance(value, list | tuple):
            words += [
                word for entry in value for word in (_flag_of_list(checker, name), _entry(entry))
            ]
        else:
            words.append(f"--{name.replace('_', '-')}={typed(value)}")
    return words


def _flag_of_list(checker: Checker, name: str) -> str:
    flags = parser_for(checker)._option_string_actions
    return next(flag for flag, one in flags.items() if one.dest == name)


def _entry(entry: Mapping[str, Any]) -> str:
    return " ".join(shlex.quote(f"{name}={typed(value)}") for name, value in entry.items())


@EVERY_EXAMPLE
def test_an_example_gives_the_same_reply_by_every_way_in(
    checker: Checker, example: Example
) -> None:
    """Values, JSON text, text in every field, and flags: the replies agree to the byte."""
    expected = json.dumps(run(checker.slug, example.request), ensure_ascii=False)
    flags = parser_for(checker).parse_args(flags_of(checker, example.request))

    saved = json.dumps(example.request)
    assert expected == answer(checker.slug, saved)
    assert expected == answer(checker.slug, json.dumps(json.loads(saved), indent=1))
    assert expected == answer(checker.slug, json.dumps(typed(example.request)))
    by_flags = run(checker.slug, request_from(checker, vars(flags)))
    assert expected == json.dumps(by_flags, ensure_ascii=False)


@pytest.mark.parametrize("word", ["yes", "true", "YES", "on", "1", "y", True, 1])
@pytest.mark.parametrize("opposite", ["no", "false", "No", "off", "0", "n", False, 0])
def test_yes_and_no_are_read_alike_in_every_spelling(word: object, opposite: object) -> None:
    """A truth value of JSON and the words that people and forms use mean the same."""
    inputs = next(one for one in CHECKERS if one.slug == "readings").inputs
    reading = {"test": "trip-time", "value": "28"}

    def seen(value: object) -> bool | None:
        parsed = parse_inputs(inputs, {"readings": [reading], "circuit": {"seen_to_open": value}})
        return bool(parsed.circuit.seen_to_open)

    assert (seen(word), seen(opposite)) == (True, False)


STRANGE: tuple[Any, ...] = (
    None,
    "",
    "\x00",
    "\ud83d",
    "🔌",
    "٢٨",
    "28²",
    "9" * 5000,
    "1/" + "9" * 5000,
    "a" * 100_000,
    -1,
    10**5000,
    1e308,
    float("nan"),
    float("-inf"),
    True,
    [],
    {},
    [[[[[[]]]]]],
    [{}] * 300,
    {"a": {"b": {"c": {}}}},
    {"": ""},
    "=1+1",
    "0001-01-01",
    "9999-12-31",
)


def leaves_of(value: Any, path: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    """Return the ways to all values within a request, the inner ones too."""
    if isinstance(value, Mapping):
        inner = [leaves_of(one, (*path, name)) for name, one in value.items()]
    elif isinstance(value, list | tuple):
        inner = [leaves_of(one, (*path, place)) for place, one in enumerate(value)]
    else:
        inner = []
    return [*([path] if path else []), *(one for some in inner for one in some)]


@EVERY
def test_no_mutated_request_makes_a_checker_crash(checker: Checker) -> None:
    """It is answered or refused; a refusal is short, and names a field without a dot behind."""
    random = Random(checker.slug)  # noqa: S311  # drawn to try, no secret
    for _ in range(60):
        request: Any = deepcopy(dict(random.choice(checker.examples).request))
        for _ in range(random.choice((1, 1, 2, 3))):
            path = random.choice(leaves_of(request) or [("code",)])
            request = with_value(request, path, random.choice(STRANGE))
        reply = run(checker.slug, request)

        assert reply["kind"] in ("result", "invalid"), (reply, request)
        json.dumps(reply, ensure_ascii=False).encode()
        for field, message in reply.get("errors", {}).items():
            assert not field.endswith(".")
            assert len(field) <= 80
            assert message.count("9" * 81) == message.count("a" * 81) == 0


@EVERY
def test_no_damaged_text_makes_a_checker_crash(checker: Checker) -> None:
    """Text cut, doubled or overwritten anywhere is JSON still, or it is refused."""
    random = Random(checker.slug)  # noqa: S311  # drawn to try, no secret
    text = json.dumps(checker.examples[0].request)
    for _ in range(60):
        at, end = sorted(random.randrange(len(text) + 1) for _ in range(2))
        with_ = random.choice(["", "[" * 2000, '"', "9" * 5000, "\\ud83d", text[at:end], "\x00"])
        reply = json.loads(answer(checker.slug, text[:at] + with_ + text[end:]))

        assert reply["kind"] in ("result", "invalid"), reply
