"""Scales of a diagram: where a value lies, and which round values are marked."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, floor, log10

from build_tools.drawings.svg import Point, label, line


@dataclass(frozen=True, slots=True)
class Scale:
    """From values `low` to `high` to places `start` to `end`, evenly or by powers of ten."""

    low: float
    high: float
    start: float
    end: float
    by_powers: bool = False

    def at(self, value: float) -> float:
        """Return the place of a value; one beyond the scale lies at its end."""
        inside = min(max(value, self.low), self.high)
        return self.start + self._share(inside) * (self.end - self.start)

    def _share(self, value: float) -> float:
        if self.by_powers:
            return log10(value / self.low) / log10(self.high / self.low)
        return (value - self.low) / (self.high - self.low)

    def marks(self) -> list[float]:
        """Return round values to mark: three to six, or the powers of ten."""
        return _powers(self.low, self.high) if self.by_powers else _even(self.low, self.high)


def _even(low: float, high: float) -> list[float]:
    power = 10.0 ** floor(log10(high - low))
    step = next(one * power for one in (0.2, 0.5, 1.0, 2.0) if (high - low) / (one * power) <= 6.0)
    first = ceil(low / step - 1e-9)
    return [round(place * step, 9) for place in range(first, floor(high / step + 1e-9) + 1)]


def _powers(low: float, high: float) -> list[float]:
    exponents = range(ceil(log10(low) - 1e-9), floor(log10(high) + 1e-9) + 1)
    return [10.0**exponent for exponent in exponents]


def grid(
    across: Scale,
    up: Scale,
    across_marks: dict[float, str],
    up_marks: dict[float, str],
    titles: tuple[str, str],
) -> str:
    """Return grid lines with their figures, and what is across and up.

    Inputs: both scales (up has its start at the bottom); the values to mark with their words;
    the words for across and up.
    """
    floor_at, left = up.start, across.start
    rows = [
        line((left, up.at(value)), (across.end, up.at(value)), "picture__level")
        + label((left - 6.0, up.at(value) + 4.5), words, anchor="end")
        for value, words in up_marks.items()
    ]
    columns = [
        line((across.at(value), floor_at), (across.at(value), up.end), "picture__level")
        + label((across.at(value), floor_at + 17.0), words, anchor="middle")
        for value, words in across_marks.items()
    ]
    words_at: Point = (across.end, floor_at + 33.0)
    return "".join(
        [
            *rows,
            *columns,
            label((2.0, up.end - 9.0), titles[1], kind="picture__text--soft"),
            label(words_at, titles[0], anchor="end", kind="picture__text--soft"),
        ]
    )


def plain(values: list[float]) -> dict[float, str]:
    """Return values with their figures as words."""
    return {value: figure(value) for value in values}


def figure(value: float) -> str:
    """Return a value as a short figure: 0.5, 30, 1000."""
    return f"{value:g}".replace("-", "−")
