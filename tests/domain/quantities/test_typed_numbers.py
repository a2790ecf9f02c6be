"""Every notation of a number is read as a second parser reads it, or refused as it refuses it."""

from __future__ import annotations

import re
from fractions import Fraction
from pathlib import Path
from random import Random

import pytest

import checkers
from checkers.domain.quantities.measured_value import Said, parse_measured
from checkers.domain.quantities.multiples import parse_multiple
from checkers.domain.quantities.quantity import parse_quantity
from checkers.domain.quantities.typed_numbers import CouldMeanTwoThings, NotAQuantity

NOTATIONS = 100_000
SPACES = (" ", "\u00a0", "\u2009", "\u202f", "\u2007", "  ")
DIGITS = {one: str(value) for value, one in enumerate("0123456789")}
DIGITS |= {chr(0xFF10 + value): str(value) for value in range(10)}  # as East Asian keyboards have
UNITS: dict[str, tuple[str, Fraction]] = {
    "ms": ("ms", Fraction(1)),
    "msec": ("ms", Fraction(1)),
    "s": ("ms", Fraction(1000)),
    "ma": ("mA", Fraction(1)),
    "a": ("mA", Fraction(1000)),
    "µa": ("mA", Fraction(1, 1000)),
    "μa": ("mA", Fraction(1, 1000)),
}
RANGES = {"ms": (Fraction(1), Fraction(60_000)), "mA": (Fraction(1, 2), Fraction(30_000))}
RESIDUAL = (Fraction(0), Fraction(200_000))
MARKS = ("²", "¹", "*", "†", "ᵃ", "①", "½", "³")
SIGNS = {">": Said.MORE_THAN, "≥": Said.MORE_THAN, ">=": Said.MORE_THAN, "over": Said.MORE_THAN}
SIGNS |= {"<": Said.LESS_THAN, "≤": Said.LESS_THAN, "below": Said.LESS_THAN}
SIGNS |= {"no trip by": Said.MORE_THAN, "did not trip up to": Said.MORE_THAN}


class RefusedError(Exception):
    """Raised by the second parser for what is no number."""


class AskedError(Exception):
    """Raised by the second parser for what could be two numbers."""


class Scanner:
    """The second parser: walks over the characters by hand, with whole numbers alone."""

    def __init__(self, text: str) -> None:
        """Stand at the first character of a text without outer spaces."""
        for space in SPACES:
            text = text.replace(space, " ")
        while "  " in text:
            text = text.replace("  ", " ")
        self.text = text.strip().replace("−", "-")

    def number(self) -> Fraction:
        """Take a number; raises RefusedError or AskedError."""
        sign = self.text[:1] if self.text[:1] in {"+", "-"} else ""
        self.text = self.text.removeprefix(sign)
        whole = self._digits()
        while self._is_group_of_thousands(whole):
            self.text = self.text[1:]
            whole += self._digits()
        mark = self.text[0] if self.text[:1] in {".", ","} and self.text[1:2] in DIGITS else ""
        self.text = self.text.removeprefix(mark)
        part = self._digits() if mark else ""
        if not whole + part:
            raise RefusedError
        if mark == "," and len(part) == 3 and len(whole) <= 3 and whole[:1] not in {"", "0"}:
            raise AskedError
        value = Fraction(int(whole + part), 10 ** len(part))
        return -value if sign == "-" else value

    def _digits(self) -> str:
        taken = ""
        while self.text[:1] in DIGITS and self.text:
            taken += DIGITS[self.text[0]]
            self.text = self.text[1:]
        return taken

    def _is_group_of_thousands(self, whole: str) -> bool:
        group = self.text[1:4]
        return (
            len(whole) % 3 == 1
            and whole[0] != "0"
            and self.text[:1] == " "
            and len(group) == 3
            and all(one in DIGITS for one in group)
            and self.text[4:5] not in DIGITS
        )


def second_reading(text: str, bare_unit: str, *, any_unit: bool) -> tuple[Fraction, str]:
    """Return a figure with its unit as the second parser reads it."""
    scanner = Scanner(text)
    value, left = scanner.number(), scanner.text.strip().lower()
    if left and left not in UNITS:
        raise RefusedError
    unit, factor = UNITS[left] if left else UNITS[bare_unit.lower()]
    if not any_unit and unit != bare_unit:
        raise RefusedError
    return value * factor, unit


def drawn_digits(random: Random, most: int) -> str:
    """Return some digits, now and then of another width."""
    digits = "".join(random.choice("0123456789") for _ in range(random.randint(1, most)))
    wide = {ord(plain): wide for wide, plain in DIGITS.items() if wide != plain}
    return digits.translate(wide) if random.random() < 0.03 else digits


def drawn_number(random: Random) -> str:
    """Return a number in one of the ways people write it, or in one that looks like one."""
    whole, part = drawn_digits(random, 4), drawn_digits(random, 3)
    mark, space = random.choice(".,"), random.choice(SPACES)
    shape = random.randrange(16)
    made = {
        0: mark + part,
        1: f"{whole[0]}{space}{random.randrange(1000):03d}",
        2: f"{whole}{mark}{mark}{part}",
        3: f"{whole}{mark}{part}{mark}{part}",
        4: f"{whole}{random.choice(MARKS)}",
        5: f"{whole}{mark}{part}{random.choice(MARKS)}",
        6: f"{whole}e{part}",
        7: f"{whole[0]}{mark}{random.randrange(1000):03d}",
        8: f"{mark}{mark}{part}",
        9: f"{whole}'{part}",
    }.get(shape, whole if shape < 12 else f"{whole}{mark}{part}")
    return random.choice(["", "", "", "", "", "", "+", "-", "−"]) + made


def drawn_text(random: Random, units: tuple[str, ...]) -> str:
    """Return a number with or without a unit, in any case, with any space between."""
    unit = random.choice(units)
    unit = random.choice([unit, unit.upper()]) if random.random() < 0.3 else unit
    unit = unit.replace("μ", random.choice(["μ", "µ"]))
    return drawn_number(random) + random.choice(["", *SPACES]) + unit


def read_quantity(text: str) -> Fraction | str:
    """Return what the project makes of a residual current."""
    try:
        return Fraction(parse_quantity(text, "residual_current"))
    except CouldMeanTwoThings:
        return "asked"
    except NotAQuantity:
        return "refused"


def second_quantity(text: str) -> Fraction | str:
    """Return what the second parser makes of a residual current."""
    try:
        value, _ = second_reading(text, "mA", any_unit=False)
    except AskedError:
        return "asked"
    except RefusedError:
        return "refused"
    return Fraction(float(value)) if RESIDUAL[0] <= value <= RESIDUAL[1] else "refused"


def test_a_quantity_is_read_as_a_second_parser_reads_it() -> None:
    """A hundred thousand notations of a current come to the same figure, question or refusal."""
    random = Random(20261201)  # noqa: S311  # drawn to try, no secret
    texts = {drawn_text(random, ("", "ma", "a", "μa", "ms", "v")) for _ in range(NOTATIONS)}

    assert [one for one in texts if second_quantity(one) != read_quantity(one)] == []


def read_measured(text: str, expected: str) -> tuple[object, ...] | str:
    """Return what the project makes of a reading: kind, value and unit."""
    try:
        measured = parse_measured(text, expected)
    except NotAQuantity:
        return "refused"
    if measured.said is Said.UNCLEAR:
        return "asked"
    return measured.said, Fraction(measured.value), measured.unit


def second_measured(text: str, bare_unit: str) -> tuple[object, ...] | str:
    """Return what the second parser makes of a reading."""
    left = Scanner(text).text.lower()
    left = left[:-1].rstrip() if left.endswith(".") else left
    sign = max((one for one in SIGNS if left.startswith(one)), key=len, default="")
    try:
        value, unit = second_reading(left.removeprefix(sign), bare_unit, any_unit=True)
    except AskedError:
        return "asked"
    except RefusedError:
        return "refused"
    least, most = RANGES[unit]
    if not least <= value <= most:
        return "refused"
    return SIGNS.get(sign, Said.FIGURE), Fraction(float(value)), unit


@pytest.mark.parametrize(("expected", "unit"), [("trip_time", "ms"), ("trip_current", "mA")])
def test_a_reading_is_read_as_a_second_parser_reads_it(expected: str, unit: str) -> None:
    """So are a hundred thousand readings, with bounds, units and a full stop at the end."""
    random = Random(expected)  # noqa: S311  # drawn to try, no secret
    signs = ("", "", "", *(f"{one}{between}" for one in SIGNS for between in (" ", "\u2009")))
    texts = {
        random.choice(signs)
        + drawn_text(random, ("", "", "ms", "s", "ma", "a", "msec", "v"))
        + random.choice(["", "", "", ".", " ."])
        for _ in range(NOTATIONS // 2)
    }

    assert [
        one for one in texts if second_measured(one, unit) != read_measured(one, expected)
    ] == []


def second_multiple(text: str) -> Fraction | str:
    """Return what the second parser makes of a multiple."""
    left = Scanner(text).text.lower().replace("×", "x").replace("∆", "δ")
    left = left.removesuffix("iδn").strip()
    left = left.removeprefix("x").removesuffix("x").strip()
    halves = {"½": Fraction(1, 2), "1/2": Fraction(1, 2), "¼": Fraction(1, 4), "¾": Fraction(3, 4)}
    if left in halves:
        return halves[left]
    try:
        scanner = Scanner(left)
        value = scanner.number()
    except (AskedError, RefusedError):
        return "refused"
    good = not scanner.text.strip() and Fraction("0.05") <= value <= 1000
    return Fraction(float(value)) if good else "refused"


def test_a_multiple_is_read_as_a_second_parser_reads_it() -> None:
    """So are multiples, with the times sign before or after, and fractions of one character."""
    random = Random(1)  # noqa: S311  # drawn to try, no secret
    figures = ["½", "1/2", "1½", "2½", "¼", "1¾", "½½", ".5", "x.5", "..5"]
    texts = {
        random.choice(["", "x", "x ", "×"])
        + (random.choice(figures) if random.random() < 0.2 else drawn_number(random))
        + random.choice(["", "x", " x", " IΔn", "x I∆n"])
        for _ in range(NOTATIONS // 5)
    }

    def read(text: str) -> Fraction | str:
        try:
            return Fraction(parse_multiple(text))
        except NotAQuantity:
            return "refused"

    assert [one for one in texts if second_multiple(one) != read(one)] == []


@pytest.mark.parametrize("expected", ["trip_time", "trip_current"])
@pytest.mark.parametrize(
    ("typed", "names"),
    [
        ("28²", "'²'"),
        ("4¹ ms", "'¹'"),
        ("28* ms", "'*'"),
        ("28 ms †", "'†'"),
        ("28½", "'½'"),
        ("1..5", "point"),
        ("1.2.3", "point"),
        ("28,5,1", "point"),
        ("28..", "point"),
        ("28…", "point"),
        ("9" * 41, "40 digits"),
    ],
)
def test_what_stands_at_a_figure_is_refused_by_name(typed: str, names: str, expected: str) -> None:
    """A footnote mark or a second point never becomes a part of the figure."""
    with pytest.raises(NotAQuantity, match=re.escape(names)):
        parse_measured(typed, expected)


@pytest.mark.parametrize("typed", ["28ᵃ", "28ⓐ", "28ˢ"])
def test_a_raised_letter_is_no_unit(typed: str) -> None:
    """A footnote a is not amperes, and a raised s no seconds."""
    with pytest.raises(NotAQuantity):
        parse_measured(typed, "trip_time")


def test_no_other_module_has_a_pattern_of_its_own_for_a_figure() -> None:
    """What a figure looks like, and how it becomes a number, is said in one module."""
    own = re.compile(r"\\d\+\(\?:\[[.,]{2}\]\\d\+\)\?|replace\(\",\", \"\.\"\)")
    package = Path(checkers.__file__).parent
    found = {
        path.name for path in package.rglob("*.py") if own.search(path.read_text(encoding="utf-8"))
    }

    assert {"typed_numbers.py"} == found
