"""A reply as text that a person reads in eighty columns."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from checkers.domain.quantities.quantity import format_number, format_quantity
from checkers.domain.sources.documents import Citation
from checkers.domain.verdicts import Outcome
from checkers.judgement.device.still_to_test import SO_FAR, pass_so_far
from checkers.judgement.plan.gaps import HOLDS
from checkers.wording.reading_names import spoken

WIDTH = 79
LONGEST_ROW = 3 * WIDTH
CITED = {"document", "edition", "clause", "evidence"}
HEADLINES = {
    "pass": "PASS",
    "fail": "FAIL",
    "borderline": "BORDERLINE",
    "cannot-say": "CANNOT SAY",
}
PLAN = "PLAN"
TEST = re.compile(r"(?:trip time|no-trip test|ramp|button)\b")
ABOUT = {
    "installation-code": "installation rule",
    "device-standard": "device standard",
    "fitness-for-dc": "fitness for DC",
    "function": "function",
    "selectivity": "selectivity",
}


def print_reply(reply: Mapping[str, Any]) -> str:
    """Return a reply of any kind as text."""
    if reply["kind"] == "invalid":
        return _lines(_errors(reply["errors"]))
    if reply["kind"] == "damaged":
        return _lines([reply["text"]])
    if reply["kind"] == "crash":
        return _lines([reply["text"], f"Code: {reply['code']}"])
    return _lines(_result(reply))


def headline(reply: Mapping[str, Any]) -> str:
    """Return what stands over a result: its outcome, or that it is a plan, which judges nothing.

    A pass that leaves a required test open says so, and names the test.
    """
    codes = {one.get("code") for one in reply["findings"]}
    if codes and codes <= HOLDS:
        return PLAN
    missing = [one["words"] for one in reply["still_to_do"]]
    if reply["outcome"] == Outcome.PASS and missing:
        return SO_FAR.upper() + pass_so_far(missing).removeprefix(SO_FAR)
    return HEADLINES[reply["outcome"]]


def _lines(lines: Iterable[str]) -> str:
    return "\n".join(lines) + "\n"


def _errors(errors: Mapping[str, str]) -> list[str]:
    return ["The request cannot be read:", *_each(f"{k}: {v}" for k, v in errors.items())]


def _result(reply: Mapping[str, Any]) -> list[str]:
    where = f"{reply['edition'] or reply['code']}, on {reply['on']}"
    lines = [*wrap(f"{headline(reply)}   ({where})"), ""]
    for finding in reply["findings"]:
        lines += _finding(finding)
    lines += _answer(reply["answer"])
    lines += _explanations(reply["explanations"])
    lines += _to_do(reply)
    lines += ["Cautions", *_each(reply["cautions"]), "", *wrap(reply["local_note"])]
    return [*lines, *_assumed(reply["assumed"])]


def _assumed(assumed: Sequence[Mapping[str, Any]]) -> list[str]:
    """Return the line that names what was taken where the request said nothing."""
    if not assumed:
        return []
    return ["", *wrap(f"Taken where nothing was given: {'; '.join(a['says'] for a in assumed)}.")]


def _finding(finding: Mapping[str, Any]) -> list[str]:
    word = PLAN if finding.get("code") in HOLDS else HEADLINES[finding["outcome"]]
    lines = wrap(f"{word}: {_about(finding)} [{ABOUT[finding['judges']]}]")
    lines += wrap(finding["says"], "    ")
    if finding.get("do_next"):
        lines += wrap(f"Next: {finding['do_next']}", "    ")
    for source in finding["sources"]:
        lines += wrap(f"Source: {Citation(**source).words}", "    ")
    return [*lines, ""]


def _about(finding: Mapping[str, Any]) -> str:
    """Return what a finding is about, with its device unless that is named in it."""
    device, about = finding.get("device", ""), begun_with_a_test(spoken(str(finding["about"])))
    named = about.startswith(f"{device} before ") or about.endswith(f" through {device}")
    return f"{device}: {about}" if device and not named else about


def begun_with_a_test(about: str) -> str:
    """Return a text with a capital where it begins with a test: Trip time ×1."""
    return about[:1].upper() + about[1:] if TEST.match(about) else about


def _answer(answer: Mapping[str, Any]) -> list[str]:
    if not answer:
        return []
    lines = ["Answer"]
    for name, value in answer.items():
        lines += _named(name.replace("_", " "), value)
    return [*lines, ""]


def _named(name: str, value: Any) -> list[str]:
    if isinstance(value, Mapping) and set(value) == {"value", "unit"}:
        return wrap(f"{name}: {_words(value)}", "  ")
    if isinstance(value, Mapping):
        return [
            f"  {name}:",
            *_each(f"{k.replace('_', ' ')}: {_words(v)}" for k, v in value.items()),
        ]
    if name == "drawing":
        return [f"  {name}:", *(line for row in value for line in _drawn(row))]
    if _is_list(value) and value and isinstance(value[0], Mapping):
        return [f"  {name}:", *(line for n, one in enumerate(value, 1) for line in _row(n, one))]
    if _is_list(value) and value and _is_list(value[0]):
        return [f"  {name}: {len(value)} points (in the JSON reply)"]
    if isinstance(value, str) and "\n" in value:
        return [f"  {name}: {len(value.splitlines())} lines of text (in the JSON reply)"]
    return wrap(f"{name}: {_words(value)}", "  ")


def _row(number: int, row: Mapping[str, Any]) -> list[str]:
    shown = [
        f"{k.replace('_', ' ')} {_words(v)}" for k, v in row.items() if v not in ("", None, [])
    ]
    line = f"{number}. " + "; ".join(shown)
    if len(line) <= LONGEST_ROW:
        return wrap(line, "    ")
    head = wrap(f"{number}. {shown[0]}", "    ")
    return [*head, *(line for part in shown[1:] for line in wrap(part, "       "))]


def _drawn(row: Mapping[str, Any]) -> list[str]:
    """Return a row of a drawing, as far to the right as it is deep."""
    indent = "    " + "  " * int(row["depth"])
    return wrap("; ".join(row["lines"]), indent, hang="  ")


def _words(value: Any) -> str:
    if isinstance(value, Mapping) and set(value) == {"value", "unit"}:
        return _figure(value["value"], value["unit"])
    if isinstance(value, Mapping) and set(value) == CITED:
        return Citation(**value).words
    if isinstance(value, Mapping):
        return ", ".join(f"{k.replace('_', ' ')} {_words(v)}" for k, v in value.items())
    if isinstance(value, bool) or value is None:
        return {True: "yes", False: "no", None: "not known"}[value]
    if isinstance(value, int | float):
        return format_number(value, 5)
    return ", ".join(_words(one) for one in value) if _is_list(value) else spoken(str(value))


def _figure(value: Any, unit: str) -> str:
    if isinstance(value, int | float) and not isinstance(value, bool):
        return format_quantity(value, unit, 5).strip()
    return f"{_words(value)} {unit}".strip()


def _is_list(value: Any) -> bool:
    return isinstance(value, Sequence) and not isinstance(value, str)


def _explanations(explanations: Sequence[Mapping[str, Any]]) -> list[str]:
    if not explanations:
        return []
    lines = ["What would make it read like this"]
    for one in explanations:
        percent = format_number(100 * one["probability"], 2)
        lines += wrap(f"{percent} %  {one['name']}", "  ")
        lines += [line for text in one["for"] for line in wrap(f"for: {text}", "      ")]
        lines += [line for text in one["against"] for line in wrap(f"against: {text}", "      ")]
        lines += wrap(f"do: {one['do_next']}", "      ") if one["do_next"] else []
    return [*lines, ""]


def _to_do(reply: Mapping[str, Any]) -> list[str]:
    """Return the tests that the code still requires; else the one that would tell most."""
    if reply["still_to_do"]:
        each = (f"{one['words']}: {_place(one)}" for one in reply["still_to_do"])
        return ["Still to do", *_each(each), ""]
    test = reply["next_test"]
    return [*wrap(f"Next test: {test['test']}. {test['why']}"), ""] if test else []


def _place(missing: Mapping[str, Any]) -> str:
    return ", ".join(missing[name] for name in ("code", "clause") if missing.get(name))


def _each(texts: Iterable[str]) -> list[str]:
    return [line for text in texts for line in wrap(f"- {text}", "", hang="  ")]


def wrap(text: str, indent: str = "", hang: str | None = None) -> list[str]:
    """Return a text in lines of at most eighty columns, the later ones indented further."""
    later = indent + (hang if hang is not None else "  ")
    return textwrap.wrap(text, WIDTH, initial_indent=indent, subsequent_indent=later)
