"""The command line: every form of the public contract."""

from __future__ import annotations

import json
import sys
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from checkers.catalogue import CHECKERS, SLUGS, checker_for
from checkers.command_line import schedule_command
from checkers.command_line.code_overview import code_as_text, code_as_values
from checkers.command_line.flags import WIDTH, parser_for, request_from
from checkers.command_line.printing import print_reply
from checkers.contract.bridge import invalid, run
from checkers.domain.codes.registry import CODES
from checkers.domain.errors import InvalidRequest, cut, quoted
from checkers.domain.inputs.request_text import read_request

EXIT = {"pass": 0, "fail": 1, "borderline": 3, "cannot-say": 3}
BAD_REQUEST = 2
DAMAGED = 4
BESIDE_JSON = "cannot stand beside --json: put it into the request"


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command line with some arguments; returns the exit status."""
    words = list(sys.argv[1:] if arguments is None else arguments)
    if not words or words[0] in ("-h", "--help", "help"):
        print(overview())
        return 0
    name, rest = words[0], words[1:]
    if name == "limits":
        return _limits(rest)
    if name == "schedule" and schedule_command.names_a_file(rest):
        return schedule_command.main(rest)
    if name not in SLUGS:
        print(
            f"{quoted(name)} is no checker; known are {', '.join(SLUGS)} and limits",
            file=sys.stderr,
        )
        return BAD_REQUEST
    return _check(name, rest)


def overview() -> str:
    """Return one line a checker: its slug and the question it answers."""
    widest = max(len(slug) for slug in SLUGS)
    lines = [f"{one.slug.ljust(widest)}  {one.question}" for one in CHECKERS]
    lines.append(f"{'limits'.ljust(widest)}  Which limits and tests does a code have? limits CODE")
    return "\n".join(lines)


def _check(slug: str, words: Sequence[str]) -> int:
    checker = checker_for(slug)
    try:
        given = vars(parser_for(checker).parse_args(words))
    except SystemExit as done:
        return done.code if isinstance(done.code, int) else BAD_REQUEST
    strict = given.pop("strict")
    if given["json"] is not None:
        return _answer_json(slug, given, strict=strict)
    if not words:
        print(parser_for(checker).format_help())
        return BAD_REQUEST
    try:
        reply = run(slug, request_from(checker, given))
    except InvalidRequest as bad:
        reply = invalid(slug, bad.errors)
    print(print_reply(reply), end="")
    return status_of(reply, strict=strict)


def _answer_json(slug: str, given: Mapping[str, Any], *, strict: bool) -> int:
    place = given["json"]
    try:
        _refuse_beside_json(given)
        reply = run(slug, read_request(_contents(place)))
    except OSError as bad:
        reply = invalid(slug, {"request": f"{cut(place)}: {bad.strerror or bad}"})
    except InvalidRequest as bad:
        reply = invalid(slug, bad.errors)
    print(json.dumps(reply, ensure_ascii=False, indent=1))
    return status_of(reply, strict=strict)


def _refuse_beside_json(given: Mapping[str, Any]) -> None:
    beside = [name for name, value in given.items() if value is not None and name != "json"]
    if beside:
        raise InvalidRequest(dict.fromkeys(beside, BESIDE_JSON))


def _contents(place: str) -> bytes:
    return sys.stdin.buffer.read() if place == "-" else Path(place).read_bytes()


def status_of(reply: dict[str, Any], *, strict: bool = False) -> int:
    """Return the exit status of a reply; only a pass gives 0, strictly only a whole one."""
    if reply["kind"] != "result":
        return DAMAGED if reply["kind"] == "damaged" else BAD_REQUEST
    open_still = strict and reply["outcome"] == "pass" and reply["still_to_do"]
    return EXIT["cannot-say"] if open_still else EXIT[reply["outcome"]]


def _limits(words: Sequence[str]) -> int:
    names = [word for word in words if not word.startswith("-")]
    if len(names) != 1 or names[0].lower() not in CODES or set(words) - {*names, "--json"}:
        known = ", ".join(CODES)
        print(f"Say: limits CODE [--json]; the codes are {known}", file=sys.stderr)
        return BAD_REQUEST
    code = CODES[names[0].lower()]
    if "--json" in words:
        print(json.dumps(code_as_values(code), ensure_ascii=False, indent=1))
    else:
        print(code_as_text(code, WIDTH), end="")
    return 0
