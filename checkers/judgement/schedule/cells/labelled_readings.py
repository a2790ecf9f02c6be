"""Several readings in one cell, each with its own label: x1: 28 ms, x5: 12 ms."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from checkers.domain.device.readings import Test
from checkers.domain.quantities.typed_numbers import FIGURE, number_in
from checkers.judgement.schedule.headings.normal_form import AS_WRITTEN, RATED

# A figure glued to a following x (9.6x) could be a label or a reading: neither is taken.
LEVEL = r"(?P<level>(?:x ?(?:1/2|½|0[.,]5|1|2|5)|(?:1/2|½|0[.,]5|1|2|5) ?(?:x(?! ?\d+ ?x)|x? ?iδn))"
LEVEL += r"(?: ?iδn)?(?![\w/]|[.,]\d))"
HALF = r"(?P<half>½|1/2(?= ?[:=>≥])|half)"
RAMP = r"(?P<ramp>ramp|rampe|rampa)(?!\w)"
PHASE = r"(?P<phase>(?:0|180) ?°)"
UNIT = r"(?:msec|ms|s|ma|a)"
VALUE = rf"(?P<value>(?:[<>≤≥]=? ?)?{FIGURE}(?: ?{UNIT}(?!\w))?(?![\w.°½])(?!,\d)"
VALUE += r"|no trip|n/t|not tripped|did not trip|tripped|trp|lim)"
BETWEEN = r"(?P<between>[\s:=@,;/|&()-]+)"
TOKEN = re.compile(f"{LEVEL}|{HALF}|{RAMP}|{PHASE}|{VALUE}|{BETWEEN}")
LOOKS_LIKE_A_MULTIPLE = frozenset({"0.5", "0,5", "1", "2", "5"})


@dataclass(frozen=True, slots=True)
class Label:
    """What a label in a cell says of the figure beside it; None or empty where it is silent."""

    test: str = ""
    multiple: float | None = None
    phase: str = ""


@dataclass(frozen=True, slots=True)
class Labelled:
    """A figure as written, with its label."""

    value: str
    label: Label


def labelled_readings(cell: str) -> list[Labelled]:
    """Return the labelled readings of a cell; none where it is not wholly made of them.

    Labels stand all before or all after their figures. A start phase alone keeps the
    multiple named before it.
    """
    tokens = _tokens(cell)
    kinds = {kind for kind, _ in tokens}
    if kinds <= {"value"} or any(text in LOOKS_LIKE_A_MULTIPLE for _, text in tokens):
        return []
    if tokens[0][0] == "value":
        tokens.reverse()
        return _paired(tokens)[::-1]
    return _paired(tokens)


def _tokens(cell: str) -> list[tuple[str, str]]:
    text = RATED.sub("iδn", " ".join(cell.translate(AS_WRITTEN).casefold().split()))
    found, at = [], 0
    while at < len(text):
        match = TOKEN.match(text, at)
        if match is None or match.end() == at:
            return []
        if match.lastgroup != "between":
            found.append((match.lastgroup or "", match.group()))
        at = match.end()
    return found


def _paired(tokens: Sequence[tuple[str, str]]) -> list[Labelled]:
    """Pair each figure with the label before it; none at all where one has no label."""
    found, label, fresh = [], Label(), False
    for kind, text in tokens:
        if kind != "value":
            label, fresh = _with(label, kind, text), True
        elif fresh:
            found.append(Labelled(text, label))
            fresh = False
        else:
            return []
    return [] if fresh else found


def _with(label: Label, kind: str, text: str) -> Label:
    if kind == "phase":
        return replace(label, phase=text.rstrip(" °"))
    if kind == "ramp":
        return Label(test=Test.RAMP.value)
    half = kind == "half" or any(one in text for one in ("1/2", "½", "0.5", "0,5"))
    if half:
        return Label(test=Test.NO_TRIP.value, multiple=0.5)
    multiple = number_in(text.replace("iδn", "").strip(" x"))
    return Label(test=Test.TRIP_TIME.value, multiple=multiple)
