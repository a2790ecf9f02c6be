"""How fast a schedule is judged in one process, and whether its memory grows with its rows."""

from __future__ import annotations

import time
import tracemalloc
from collections.abc import Iterator
from random import Random

from build_tools.benches.budgets import Measurement
from checkers.contract.schedule_stream import Stream
from checkers.judgement.schedule.output.table import TableOutput

SEED = 61557
ROWS = 10_000
FEW, MANY = 4_000, 12_000  # rows between which memory may not grow; fewer do not fill its caches
REQUEST = {"code": "gb", "on": "2026-11-24"}
HEADINGS = (
    "Circuit;Device;IΔn (mA);½ (ms);x1 0° (ms);x1 180° (ms);x5 0° (ms);x5 180° (ms);"
    "Ramp (mA);Test button;Remarks\n"
)
MEGA = 1e6
MINUTE = 60.0


def pieces(rows: int, seed: int = SEED) -> Iterator[bytes]:
    """Yield a schedule in UTF-8, a row a piece: eight readings a device, some of them wrong.

    Args:
        rows: how many devices.
        seed: of the random generator; the same seed gives the same schedule.
    """
    random = Random(seed)  # noqa: S311  # an invented schedule, nothing secret
    yield HEADINGS.encode()
    for number in range(1, rows + 1):
        yield _row(number, random).encode()


def _row(number: int, random: Random) -> str:
    once = [
        random.choice([f"{random.uniform(9, 60):.1f}", ">300", "test not completed"])
        for _ in range(2)
    ]
    five = [f"{random.uniform(6, 45):.1f}" for _ in range(2)]
    cells = [
        f"{number} Sockets",
        f"RCBO {number} B32 type A",
        "30",
        ">1999",
        *once,
        *five,
        f"{random.uniform(14, 33):.1f}",
        "ok",
        "as found",
    ]
    return ";".join(cell.replace(".", ",") for cell in cells) + "\n"


def judged(rows: int) -> int:
    """Judge a schedule and write it as CSV, row by row; returns the length of what was written."""
    stream, output, length = Stream(REQUEST), TableOutput(";"), 0
    for piece in pieces(rows):
        length += sum(len(output.row(row)) for row in stream.feed(piece))
    return length + sum(len(output.row(row)) for row in stream.finish())


def rows_a_minute(rows: int = ROWS) -> float:
    """Return how many devices are read, judged and written in a minute of one core."""
    judged(rows // 10)
    start = time.process_time()
    judged(rows)
    return rows / (time.process_time() - start) * MINUTE


def memory_growth() -> float:
    """Return by how much more [MB] many rows need at their worst than few."""
    peaks = []
    tracemalloc.start()
    for rows in (FEW, FEW, MANY):
        tracemalloc.reset_peak()
        judged(rows)
        peaks.append(tracemalloc.get_traced_memory()[1])
    tracemalloc.stop()
    return (peaks[2] - peaks[1]) / MEGA


def measure() -> list[Measurement]:
    """Judge an invented schedule.

    Returns:
        Rows a minute, and the growth of memory with three times the rows [MB].
    """
    return [
        Measurement("schedule-rows", rows_a_minute()),
        Measurement("schedule-memory-growth", memory_growth()),
    ]
