"""The command line for a whole schedule: a file in, a row of verdicts a row out."""

from __future__ import annotations

import argparse
import json
import os
import shutil
import sys
import tempfile
from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import chain
from pathlib import Path
from typing import BinaryIO, TextIO

from checkers.catalogue.schedule import CHECKER, Inputs
from checkers.command_line.flags import (
    EXIT_STATUSES,
    Formatter,
    Once,
    Parser,
    add_flags,
    add_strict,
    request_from,
)
from checkers.command_line.schedule_printing import mapping_as_text, row_as_text, summary_as_text
from checkers.contract.schedule_stream import ENCODINGS, FORMS, Stream
from checkers.domain.errors import InvalidRequest, quoted
from checkers.judgement.schedule.rows.row import Row

PIECE = 65_536
EXIT = {"pass": 0, "fail": 1, "borderline": 3, "cannot-say": 3}
BAD_REQUEST = 2
FROM_FLAGS = ("text", "mapping")


def names_a_file(words: Sequence[str]) -> bool:
    """Tell whether the words after `schedule` are those of this command, or a request's flags."""
    return not words or words[0] in ("-h", "--help", "-") or not words[0].startswith("-")


def main(words: Sequence[str]) -> int:
    """Judge the file that the words name; returns the exit status."""
    try:
        given = parser().parse_args(words)
    except SystemExit as done:
        return done.code if isinstance(done.code, int) else BAD_REQUEST
    try:
        return _judge(given)
    except InvalidRequest as bad:
        _say_what_is_wrong(f"{field}: {message}" for field, message in bad.errors.items())
    except BrokenPipeError:
        raise  # who reads the output has gone, which is no matter of the schedule
    except OSError as bad:
        _say_what_is_wrong([f"{bad.filename or given.file}: {bad.strerror or bad}"])
    return BAD_REQUEST


def parser() -> argparse.ArgumentParser:
    """Return the parser of this command's words."""
    made = Parser(
        prog=f"python -m checkers {CHECKER.slug}",
        description=CHECKER.question,
        epilog="A request with the whole text works as for every checker: schedule --json FILE.\n"
        + EXIT_STATUSES,
        formatter_class=Formatter,
        allow_abbrev=False,
    )
    made.add_argument("file", metavar="FILE", help="the schedule, CSV or TSV; - for standard input")
    made.add_argument(
        "--out", metavar="F", action=Once, help=f"write every row to F: .{', .'.join(FORMS)}"
    )
    made.add_argument("--json", action="store_true", help="print the reply as JSON")
    made.add_argument(
        "--map",
        metavar="COLUMN=MEANING",
        action="append",
        default=[],
        help="what a column holds, by its number or heading: 5='trip-time x1 0°'; repeatable",
    )
    made.add_argument(
        "--confirm-mapping",
        action="store_true",
        help="show what each column was taken for, and ask before judging",
    )
    made.add_argument(
        "--encoding", metavar="NAME", default="", action=Once, help=", ".join(ENCODINGS)
    )
    add_strict(made)
    add_flags(made, Inputs, leave_out=FROM_FLAGS)
    return made


def _judge(given: argparse.Namespace) -> int:
    request = request_from(CHECKER, vars(given))
    request["mapping"] = [_mapping(words) for words in given.map]
    stream = Stream(request, given.encoding)
    form = _form_of(given)
    with _opened(given.file) as file:
        rows = _rows(stream, file, _confirmed if given.confirm_mapping else _taken)
        if form:
            _write(stream, form, rows, Path(given.out))
        else:
            _print_rows(rows, quiet=given.json)
    reply = stream.reply()
    if given.json:
        print(json.dumps(reply, ensure_ascii=False, indent=1))
    else:
        print(summary_as_text(reply, stream.schedule), end="")
    open_still = given.strict and reply["outcome"] == "pass" and reply["still_to_do"]
    return EXIT["cannot-say"] if open_still else EXIT[reply["outcome"]]


def _mapping(words: str) -> dict[str, str]:
    column, mark, means = words.rpartition("=")
    if not mark:
        raise InvalidRequest({"map": f"{quoted(words)} is not COLUMN=MEANING"})
    return {"column": column, "means": means}


def _form_of(given: argparse.Namespace) -> str:
    """Return the form of output that the file's ending asks for, or nothing without a file."""
    if not given.out:
        return ""
    form = Path(given.out).suffix.lower().removeprefix(".")
    if form not in FORMS:
        raise InvalidRequest({"out": f"{given.out} ends in none of .{', .'.join(FORMS)}"})
    if given.file != "-" and Path(given.out).resolve() == Path(given.file).resolve():
        raise InvalidRequest({"out": f"{given.out} is the schedule itself"})
    return form


def _opened(place: str) -> BinaryIO:
    return sys.stdin.buffer if place == "-" else Path(place).open("rb")


def _rows(stream: Stream, file: BinaryIO, agree: Callable[[Stream], None]) -> Iterator[Row]:
    """Yield every row; `agree` is called once, when the mapping is known, before the first."""
    pieces = iter(lambda: file.read(PIECE), b"")
    rows = chain.from_iterable(map(stream.feed, pieces))
    first = next(everything := chain(rows, stream.finish()), None)
    agree(stream)
    yield from [first] if first else []
    yield from everything


def _taken(stream: Stream) -> None:
    """Go on with the mapping as it is; it is shown with the summary."""


def _confirmed(stream: Stream) -> None:
    """Show the mapping and ask; raises InvalidRequest where it is not confirmed."""
    print(mapping_as_text(stream.schedule), end="", file=sys.stderr)
    print("Judge with this mapping? [y/N] ", end="", file=sys.stderr, flush=True)
    if sys.stdin.readline().strip().lower() not in ("y", "yes"):
        raise InvalidRequest({"mapping": "was not confirmed; name columns with --map"})


def _print_rows(rows: Iterator[Row], *, quiet: bool) -> None:
    for row in rows:
        if not quiet and row.outcome is not None:
            print(row_as_text(row))


def _write(stream: Stream, form: str, rows: Iterator[Row], place: Path) -> None:
    """Write the whole output beside its place, then put it there: never half of it."""
    part = place.with_name(f"{place.name}.part")
    try:
        with part.open("w", encoding="utf-8", newline="") as file:
            _write_into(file, stream, form, rows)
        os.replace(part, place)  # noqa: PTH105  # says what it does: over an earlier output
    finally:
        part.unlink(missing_ok=True)


def _write_into(file: TextIO, stream: Stream, form: str, rows: Iterator[Row]) -> None:
    """Write head, rows and tail; the rows wait in a file until the head is known."""
    with tempfile.TemporaryFile("w+", encoding="utf-8", newline="") as waiting:
        output = None
        for row in rows:
            output = output or stream.output(form)
            waiting.write(output.row(row))
        output = output or stream.output(form)
        reply = stream.reply()
        waiting.seek(0)
        file.write(output.head(reply, stream.schedule))
        shutil.copyfileobj(waiting, file)
        file.write(output.tail(reply, stream.schedule))


def _say_what_is_wrong(messages: Iterable[str]) -> None:
    print("The schedule cannot be judged:", file=sys.stderr)
    for message in messages:
        print(f"- {message}", file=sys.stderr)
