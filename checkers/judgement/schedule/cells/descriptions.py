"""What the description of a device says of it: RCBO B32 30mA type A, FI 0,03A / 3eN / 40A G."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import cache, lru_cache
from typing import TypeVar

from checkers.domain.device.abilities import Ability
from checkers.domain.device.device import ABILITIES
from checkers.domain.quantities.typed_numbers import FIGURE, NotAQuantity, number_in
from checkers.domain.sources.documents import recognise
from checkers.judgement.schedule.headings.normal_form import plain
from checkers.judgement.schedule.headings.vocabulary import VOCABULARY, phrases
from checkers.wording.book import part

STANDARD = re.compile(
    r"(?<!\w)(?:(?:bs|din|nf|nen|en|iec|sans|vde|is|as/nzs) ?)*(?:4293|7071|7288|6\d{4}|0664)"
    r"(?: \d+){0,2}(?!\w)"
)
BREAKING = re.compile(rf"(?<!\w){FIGURE} ?ka(?!\w)")
MILLIAMPS = re.compile(rf"(?<![\w.,])({FIGURE}) ?ma(?!\w)")
AMPS = re.compile(rf"(?<![\w.,])({FIGURE}) ?a(?!\w)")
SET_DELAY = re.compile(rf"(?<![\w.,])({FIGURE}) ?ms(?!\w)")
CURVE = re.compile(r"(?<!\w)[bcdk] ?\d{1,3}(?:[.,]\d)?(?: ?a)?(?!\w)")
POLES = re.compile(
    r"(?<!\w)(?:\d ?(?:p ?\+ ?n|pn|en|p|pole|poles|pol|polig)|[sdt]p(?: ?\+? ?n)?)(?!\w)"
)
SUPPLY = re.compile(rf"(?<![\w.,]){FIGURE} ?(?:v(?: ?ac)?|hz)(?!\w)")
TYPE_WORD = re.compile(
    r"(?<!\w)(?:type|typ|tipo|class|klasse|classe) ?(ac|a|f|b ?\+|b|c|d|k)(?![\w+])"
)
TYPE_ALONE = re.compile(r"(?<![\w+])(ac|a|f|b ?\+|b)(?![\w+])")
B_BEFORE_A_LOAD = re.compile(r"(?<!\w)b \d+ ?a(?!\w)")
DELAY_WORD = re.compile(r"(?<!\w)(?:time )?delay(?:ed)?(?!\w)")
SELECTIVE = re.compile(r"\[ ?s ?\]|\( ?s ?\)")
LETTER = re.compile(r"(?:ac|[abfgs])\+?")
IDENTIFIER = re.compile(r"(?:(?:no|nr|n) ?)?\d{0,2}[a-z]{0,4} ?\d{1,4}(?:[./ ]?\d{1,3}){0,2}[a-z]?")
RATINGS = frozenset({"6", "10", "30", "100", "300", "500", "1000"})  # without a unit
LEAST_LOAD_CURRENT = 1.0
TWO = 2
T = TypeVar("T")
TYPE_OR_CURVE = "schedule.type-or-curve"


@dataclass(slots=True)
class Description:
    """What is said of a device; empty where nothing is.

    `questions` must be asked back; each stands under what makes it one question.
    Types, residual currents [mA] and delays hold all that are named: with two of a
    sort neither counts. `label` is the text itself where more stands in it than a
    description. It is an identifier, the same on every row of one device, where what
    is left looks like one: RCD 1, F3, 2.1, and not a rating or the name of a product.
    """

    types: list[str] = field(default_factory=list)
    rated: list[float] = field(default_factory=list)
    delays: list[str] = field(default_factory=list)
    form: str = ""
    made_to: str = ""
    label: str = ""
    is_identifier: bool = False
    is_residual: bool = False
    no_device: bool = False
    questions: dict[str, str] = field(default_factory=dict)


@lru_cache(maxsize=4096)
def describe(text: str, *, of_type: bool = False, sure_of_b: bool = False) -> Description:
    """Return what a text says of a device; the answer is kept, so it is not to be changed.

    Inputs: the text of a cell; whether it stands in a column of types, where a
    lone letter is one; whether that column is of residual current devices, so that
    B is a device type and no tripping curve.
    """
    found = Description()
    rest = SELECTIVE.sub(" selective ", plain(text))
    for take in (_standard, _type_word, _currents, _asides, _forms):
        rest = take(rest, found)
    has_no_curve = _has_no_curve(found.form) and not B_BEFORE_A_LOAD.search(plain(text))
    if sure_of_b or (found.is_residual and has_no_curve):
        _settle_b(found)
    if of_type or found.rated or found.types or found.form:
        rest = _delay(rest, found)
        rest = _type_alone(rest, found, sure_of_b=sure_of_b)
    _label(text, rest, found)
    return found


def _has_no_curve(form: str) -> bool:
    return not form or Ability.NO_CURVE in ABILITIES[form]


def _label(text: str, rest: str, found: Description) -> None:
    """Take what is left for a label; a letter after RCD may be a type or a name: it is neither."""
    left = " ".join(re.findall(r"[\w./]+", rest))
    if found.is_residual and LETTER.fullmatch(left):
        return
    if re.search(r"\w", left):
        found.label = text
        found.is_identifier = bool(IDENTIFIER.fullmatch(left)) and left not in RATINGS


def _standard(text: str, found: Description) -> str:
    match = STANDARD.search(text)
    if match is None:
        return text
    found.made_to = recognise(match.group()) or ""
    found.form = VOCABULARY.form_of_standard.get(found.made_to, "")
    return text.replace(match.group(), " ") if found.made_to else text


def _type_word(text: str, found: Description) -> str:
    """Take a type that its word announces; C, D and K can only be tripping curves."""
    for match in TYPE_WORD.finditer(text):
        letter = match[1].replace(" ", "").upper()
        if letter in ("AC", "A", "F", "B+"):
            _add_type(letter, found)
        elif letter == "B":
            _ask_of_b(found)
    return TYPE_WORD.sub(" ", text)


def _settle_b(found: Description) -> None:
    """Take an announced B for the type: a device without overcurrent protection has no curve."""
    if found.questions.pop(TYPE_OR_CURVE, ""):
        _add_type("B", found)


def _ask_of_b(found: Description) -> None:
    found.questions.setdefault(TYPE_OR_CURVE, part(TYPE_OR_CURVE))


def _add_type(letter: str, found: Description) -> None:
    _add(letter, found.types, found, "schedule.two-types")


def _currents(text: str, found: Description) -> str:
    """Take every current: in mA, and below 1 A, it can only be the residual one."""
    text = CURVE.sub(" ", BREAKING.sub(" ", text))
    for value in _figures(MILLIAMPS, text, found):
        _add_rated(value, found)
    for value in _figures(AMPS, text, found):
        if value < LEAST_LOAD_CURRENT:
            _add_rated(round(value * 1000, 6), found)
    return AMPS.sub(" ", MILLIAMPS.sub(" ", text))


def _add_rated(value: float, found: Description) -> None:
    _add(value, found.rated, found, "schedule.two-rated-currents")


def _add(value: T, known: list[T], found: Description, question: str) -> None:
    """Note one more of a sort, and ask where it is not the first."""
    if value not in known:
        known.append(value)
        if len(known) == TWO:
            found.questions[question] = part(question)


def _figures(pattern: re.Pattern[str], text: str, found: Description) -> Iterator[float]:
    """Yield the figures before a unit; one that could mean two things is asked about."""
    for match in pattern.finditer(text):
        try:
            yield number_in(match[1])
        except NotAQuantity as bad:
            found.questions[match[1]] = str(bad)


def _asides(text: str, found: Description) -> str:
    """Drop what says nothing of the residual current: poles, voltage, frequency."""
    del found
    return POLES.sub(" ", SUPPLY.sub(" ", text))


@cache
def _device_words() -> re.Pattern[str]:
    return phrases((*VOCABULARY.form, *VOCABULARY.any_form, *VOCABULARY.no_device))


@cache
def _delay_words() -> re.Pattern[str]:
    return phrases(VOCABULARY.delay)


def _forms(text: str, found: Description) -> str:
    """Take the words for what kind of device it is, or that there is none."""
    named = [match.group() for match in _device_words().finditer(text)]
    residual = [one for one in named if one not in VOCABULARY.no_device]
    forms = [VOCABULARY.form[one] for one in residual if one in VOCABULARY.form]
    found.form = forms[0] if forms else found.form
    found.is_residual = bool(residual)
    found.no_device = bool(named) and not residual and not found.rated
    return _device_words().sub(" ", text)


def _delay(text: str, found: Description) -> str:
    for setting in SET_DELAY.finditer(text):
        _add(f"{setting[1]} ms", found.delays, found, "schedule.two-delays")
    text, delays = SET_DELAY.sub(" ", text), _delay_words()
    for match in delays.finditer(text):
        _add(VOCABULARY.delay[match.group()], found.delays, found, "schedule.two-delays")
    return DELAY_WORD.sub(" ", delays.sub(" ", text))


def _type_alone(text: str, found: Description, *, sure_of_b: bool) -> str:
    """Take a type that stands as a letter by itself."""
    for match in TYPE_ALONE.finditer(text):
        letter = match[1].replace(" ", "").upper()
        if letter == "B" and not sure_of_b:
            _ask_of_b(found)
        else:
            _add_type(letter, found)
    return TYPE_ALONE.sub(" ", text)
