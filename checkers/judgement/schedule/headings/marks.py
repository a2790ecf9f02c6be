"""A heading taken apart: multiples, start phases, units, phrases, and what is left over."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from functools import cache
from typing import TypeVar

from checkers.domain.quantities.typed_numbers import FIGURE, NotAQuantity, number_in
from checkers.domain.tables.glossary import SPELLINGS
from checkers.judgement.schedule.headings.normal_form import plain
from checkers.judgement.schedule.headings.vocabulary import VOCABULARY, Word, heading_phrases

KINDS_OF_UNIT = ("time", "current")
UNIT_WORDS = "|".join(
    sorted(
        (
            re.escape(word)
            for word, unit in SPELLINGS.items()
            if unit.kind in KINDS_OF_UNIT and unit.symbol != "min"
        ),
        key=len,
        reverse=True,
    )
)
IN_BRACKETS = re.compile(rf"[(\[{{] ?(?:in )?({UNIT_WORDS}) ?[)\]}}]")
POLARITY = re.compile(r"\(([+-])\)")
ORPHANED_UNIT = re.compile(r"(?:(?<=[/,]) ?| in )(s|a)$")
PUNCTUATION = re.compile(r"[()\[\]{}:;|=\"#@<>!?&+]|(?<!\d)[.,]|[.,](?!\d)")
AND = r" ?(?:/|-|,| and | und | en | et | e | y | og ) ?"
TIMES = "x|times|fold|fach|facher|fois|veces|volte|keer|ganger|maal|mal"
HALVES = r"(?:half(?! wave)|halber|halbe|halve|demi|meta|mitad)"
TOKENS = {
    "phases": rf"(?<![\w.,/])0 ?°?{AND}180(?![\d.,])(?: ?(?:°|deg\w*|grad\w*))?",
    "half": rf"(?<![\w.,/])(?:(?:x ?)?(?:1/2|0[.,]50?)(?![\d/])|{HALVES}(?!\w))(?: ?x)?(?: ?iδn)?",
    "pair": rf"(?<![\w.,/])x ?({FIGURE}) ?/ ?({FIGURE})(?![\w.,/])",
    "after_x": rf"(?<![\w.,])x ?({FIGURE})(?: ?iδn)?(?![\w])",
    "before_x": rf"(?<![\w.,])({FIGURE}) ?(?:{TIMES})(?: ?iδn)?(?!\w)",
    "of_rated": rf"(?<![\w.,])({FIGURE}) ?iδn",
    "at_rated": r"(?<!\w)(?:at|bei|bij|a|ved) iδn",
    "rated": r"iδn",
    "residual": r"iδ(?!\w)",
    "current": rf"(?<![\w.,])({FIGURE}) ?(ma|a)(?!\w)",
    "degree": r"(?<![\w.,/])(0|180)(?: ?(?:°|deg\w*|grad\w*))?(?![\w.,/%])",
}
LONG_UNIT = r"(?<!\w)(?:" + "|".join(u for u in UNIT_WORDS.split("|") if len(u) > 1) + r")(?!\w)"
REST = r"[^\W_]+"
T = TypeVar("T")


@dataclass(slots=True)
class Marks:
    """What a heading mentions: each mention once, in its order."""

    multiples: list[float] = field(default_factory=list)
    phases: list[str] = field(default_factory=list)
    currents: list[float] = field(default_factory=list)
    units: list[str] = field(default_factory=list)
    words: list[Word] = field(default_factory=list)
    symbols: set[str] = field(default_factory=set)
    left_over: list[str] = field(default_factory=list)


@cache
def _tokens() -> re.Pattern[str]:
    named = [f"(?P<{name}>{pattern})" for name, pattern in TOKENS.items()]
    phrase = f"(?P<phrase>{heading_phrases().pattern})"
    return re.compile("|".join([*named, phrase, f"(?P<unit>{LONG_UNIT})", f"(?P<rest>{REST})"]))


def marks_of(heading: str) -> Marks:
    """Return what a heading mentions."""
    marks = Marks()
    text = _take_units(plain(heading), marks)
    for match in _tokens().finditer(text):
        try:
            _take(match, marks)
        except NotAQuantity:
            marks.left_over.append(match.group())
    return marks


def _take_units(text: str, marks: Marks) -> str:
    """Take the units that only their place tells from a letter, and the polarity."""
    for match in IN_BRACKETS.finditer(text):
        marks.units.append(SPELLINGS[match[1]].symbol)
    marks.phases.extend(POLARITY.findall(text))
    text = POLARITY.sub(" ", IN_BRACKETS.sub(_kept_unit, text))
    orphan = ORPHANED_UNIT.search(text)
    if orphan:
        marks.units.append(SPELLINGS[orphan[1]].symbol)
        text = text[: orphan.start()]
    return " ".join(PUNCTUATION.sub(" ", text).split())


def _kept_unit(match: re.Match[str]) -> str:
    """Keep a unit that belongs to a phrase (trip mA), drop one that looks like a letter."""
    return f" {match[1]} " if len(match[1]) > 1 else " "


def _take(match: re.Match[str], marks: Marks) -> None:
    kind, text = match.lastgroup or "", match.group()
    found = [part for part in match.groups() if part][1:]
    if kind in ("after_x", "before_x", "of_rated", "pair"):
        marks.multiples += _new(marks.multiples, [number_in(part) for part in found])
    elif kind in ("half", "at_rated"):
        marks.multiples += _new(marks.multiples, [0.5 if kind == "half" else 1.0])
    elif kind in ("phases", "degree"):
        marks.phases += _new(marks.phases, re.findall(r"180|0", text))
    elif kind == "current":
        marks.currents.append(number_in(found[0]) * float(SPELLINGS[found[1]].factor))
    elif kind in ("rated", "residual"):
        marks.symbols.add(kind)
    else:
        _take_word(kind, text, marks)


def _take_word(kind: str, text: str, marks: Marks) -> None:
    if kind == "phrase":
        marks.words.append(VOCABULARY.heading[text])
    elif kind == "unit":
        marks.units += _new(marks.units, [SPELLINGS[text].symbol])
    else:
        marks.left_over.append(text)


def _new(known: list[T], found: list[T]) -> list[T]:
    return [one for one in found if one not in known]
