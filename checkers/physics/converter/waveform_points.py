"""A trace thinned to the points that a drawing needs."""

from __future__ import annotations

from checkers.physics.converter.fault_current import Trace

TOLERANCE = 0.004  # of the span: under one pixel in a drawing 250 pixels high


def drawn_points(trace: Trace) -> list[list[float]]:
    """Return [time [ms], current [mA]] pairs that draw a trace to within a pixel.

    The first and the last point of each stretch that is straight within the tolerance are kept
    ("swinging door": a stretch ends where no line from its start passes all its points).
    """
    currents, step = trace.currents, trace.step
    slack = TOLERANCE * (max(currents) - min(currents)) or 1.0
    kept = [0]
    high, low = float("inf"), float("-inf")
    for at in range(1, len(currents)):
        start = kept[-1]
        rise, length = currents[at] - currents[start], at - start
        if low <= rise / length <= high:
            high, low = min(high, (rise + slack) / length), max(low, (rise - slack) / length)
        else:
            kept.append(at - 1 if at - 1 > start else at)
            length = at - kept[-1] or 1
            rise = currents[at] - currents[kept[-1]]
            high, low = (rise + slack) / length, (rise - slack) / length
    if kept[-1] != len(currents) - 1:
        kept.append(len(currents) - 1)
    return [[round((at + 1) * step, 4), round(currents[at], 3)] for at in kept]
