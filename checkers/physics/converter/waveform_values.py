"""The figures of a residual current: average, r.m.s., ripple, low interval, frequencies."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from math import cos, pi, sin, sqrt

from checkers.physics.converter.fault_current import Trace

HARMONICS = 20  # to 1 kHz at 50 Hz
BLOCK = 4  # samples averaged before the slow spectrum; the averaging is divided out again


@dataclass(frozen=True)
class WaveformValues:
    """The figures of a trace; currents in mA."""

    trace: Trace

    @cached_property
    def average(self) -> float:
        """The direct part [mA]."""
        return sum(self.trace.currents) / len(self.trace.currents)

    @cached_property
    def rms(self) -> float:
        """Root mean square [mA]."""
        return sqrt(sum(i * i for i in self.trace.currents) / len(self.trace.currents))

    @cached_property
    def peak(self) -> float:
        """The greatest value in either direction [mA]."""
        return max(abs(i) for i in self.trace.currents)

    @property
    def alternating(self) -> float:
        """R.m.s. of what is left without the direct part [mA]."""
        return sqrt(max(self.rms**2 - self.average**2, 0.0))

    @property
    def direct_share(self) -> float:
        """The direct part as a share of the r.m.s."""
        return abs(self.average) / self.rms if self.rms else 0.0

    @property
    def ripple(self) -> float:
        """R.m.s. of the alternating part over the average; infinite without a direct part."""
        return self.alternating / abs(self.average) if self.average else float("inf")

    def longest_low_interval(self, low_current: float) -> float:
        """Return the longest interval at or under a current [mA], round the end [degree]."""
        runs = _low_runs(self.trace.currents, low_current)
        return 360.0 * max(runs, default=0) / self.trace.per_cycle

    def low_interval_of_each_period(self, low_current: float) -> float:
        """Return the longest low interval of the period that has the shortest one [degree].

        A period may begin anywhere, so an interval is not cut at a zero of the line voltage:
        each cycle is taken with the one after it.
        """
        count, currents = self.trace.per_cycle, self.trace.currents
        joined = currents + currents[:count]
        longest = [
            max(_runs(joined[at : at + 2 * count], low_current), default=0)
            for at in range(0, len(currents), count)
        ]
        return 360.0 * min(*longest, count) / count

    @cached_property
    def spectrum(self) -> Mapping[float, float]:
        """R.m.s. [mA] by frequency [Hz], up to the twentieth harmonic of the mains."""
        cycles, blocks = self.trace.cycles, list(_blocks(self.trace.currents))
        found = {}
        for line in range(1, HARMONICS * cycles + 1):
            angle = pi * line / len(blocks)
            gain = sin(angle) / (BLOCK * sin(angle / BLOCK))
            found[self.frequency(line)] = _line(blocks, line) / gain
        return found

    def frequency(self, line: int) -> float:
        """Return the frequency of a spectral line [Hz]."""
        return round(line * self.trace.frequency / self.trace.cycles, 6)

    def line(self, multiple: float) -> float:
        """Return the r.m.s. at a multiple of the mains frequency [mA], from every sample."""
        return _line(self.trace.currents, round(multiple * self.trace.cycles))

    def mains(self) -> float:
        """Return the r.m.s. at the mains frequency [mA]."""
        return self.spectrum[self.frequency(self.trace.cycles)]

    def between_harmonics(self, below: float) -> float:
        """Return the r.m.s. under and between mains harmonics, up to a multiple of it [mA]."""
        return sqrt(sum(v**2 for line, v in self._lines(below) if line % self.trace.cycles))

    def switching(self, above: float) -> float:
        """Return the r.m.s. of all that lies from a multiple of the mains frequency on [mA]."""
        slow = sum(value**2 for _, value in self._lines(above))
        return sqrt(max(self.alternating**2 - slow, 0.0))

    def _lines(self, below: float) -> Iterator[tuple[int, float]]:
        for line, value in enumerate(self.spectrum.values(), start=1):
            if line < below * self.trace.cycles:
                yield line, value


def _low_runs(currents: Sequence[float], low_current: float) -> list[int]:
    """Return the lengths of the runs at or under a current, round the end."""
    if all(-low_current <= i <= low_current for i in currents):
        return [len(currents)]
    start = next(at for at, i in enumerate(currents) if abs(i) > low_current)
    return _runs([*currents[start:], *currents[:start]], low_current)


def _runs(currents: Sequence[float], low_current: float) -> list[int]:
    """Return the lengths of the runs at or under a current."""
    runs = [0]
    for current in currents:
        if -low_current <= current <= low_current:
            runs[-1] += 1
        elif runs[-1]:
            runs.append(0)
    return runs


def _blocks(currents: Sequence[float]) -> Iterator[float]:
    for at in range(0, len(currents), BLOCK):
        yield sum(currents[at : at + BLOCK]) / BLOCK


def _line(samples: Sequence[float], line: int) -> float:
    """Return the r.m.s. of the sine that fits a window so many times (Goertzel's recursion)."""
    angle = 2.0 * pi * line / len(samples)
    twice = 2.0 * cos(angle)
    one = two = 0.0
    for sample in samples:
        one, two = sample + twice * one - two, one
    power = one * one + two * two - twice * one * two
    return sqrt(max(2.0 * power, 0.0)) / len(samples)
