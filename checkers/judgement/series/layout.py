"""Where each device and load of an arrangement stands in its drawing, and what is written there.

The drawing is a list of rows from the supply downward, each as far to the right as it is deep,
so that it fits a narrow page. Whoever draws it places each row at its `top` and joins it to
the row `above`.
"""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence
from typing import Any

from checkers.domain.device.device import Device, DeviceType, Form
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.verdicts import Outcome
from checkers.judgement.series.arrangement import Arrangement, DCProtection
from checkers.judgement.series.dc.fitness import Fitness, Why
from checkers.judgement.series.dc.flow_words import amount, pieces
from checkers.judgement.series.dc.sources import Bounds, left_by
from checkers.judgement.series.dc.through import Through
from checkers.wording.book import part

WIDE = 40
"""Characters of a line that stands at the left edge."""

PER_STEP = 3
"""Characters that a line loses for each step it stands to the right."""

NARROW = 22
PLAIN = {
    Form.MONITOR: "series.monitor",
    Form.RDC_DD: "series.detection",
}
PROTECTED = {
    DCProtection.RDC_DD: "series.with-detection",
    DCProtection.TYPE_B: "series.with-type-b",
}
VERDICTS = {
    Outcome.PASS: "series.verdict-pass",
    Outcome.FAIL: "series.verdict-fail",
    Outcome.CANNOT_SAY: "series.verdict-cannot-say",
}


def lay_out(
    arrangement: Arrangement, through: Sequence[Through], judged: Sequence[Fitness]
) -> list[dict[str, Any]]:
    """Return the rows of the drawing, from the supply downward.

    Each row holds `kind` (device or load), `id`, `above` (the row it is joined to, or None at
    the supply), `depth` [steps], `top` [lines of text], `lines`, and `verdict` for a device.
    """
    rows: list[dict[str, Any]] = []
    for place, device in enumerate(arrangement.devices):
        if not device.parents:
            _add_branch(rows, arrangement, place, None, through, judged)
    return rows


def _add_branch(  # noqa: PLR0913, PLR0917  # it calls itself with all it was given
    rows: list[dict[str, Any]],
    arrangement: Arrangement,
    place: int,
    above: int | None,
    through: Sequence[Through],
    judged: Sequence[Fitness],
) -> None:
    device = arrangement.devices[place]
    verdict = judged[place].outcome
    words = [
        part("series.named", name=device.id, what=_device_words(device.device)),
        *_also_through(arrangement, device.parents),
        part(VERDICTS[verdict], dc=_dc_words(through[place], judged[place])),
    ]
    own = _add(rows, "device", device.id, above, words) | {"verdict": verdict.value}
    rows[-1] = own
    here = len(rows) - 1
    for number in arrangement.shape.loads[place]:
        load = arrangement.loads[number]
        if load.parents[0] == place:
            _add(rows, "load", load.name, here, list(_load_words(arrangement, number)))
    for child in arrangement.shape.children[place]:
        if arrangement.devices[child].parents[0] == place:
            _add_branch(rows, arrangement, child, here, through, judged)


def _add(
    rows: list[dict[str, Any]], kind: str, name: str, above: int | None, words: list[str]
) -> dict[str, Any]:
    """Add a row below the others, and return it."""
    depth = 0 if above is None else rows[above]["depth"] + 1
    width = max(WIDE - PER_STEP * depth, NARROW)
    lines = [line for text in words for line in textwrap.wrap(text, width)]
    top = rows[-1]["top"] + len(rows[-1]["lines"]) if rows else 0
    row = {"kind": kind, "id": name, "above": above, "depth": depth, "top": top, "lines": lines}
    rows.append(row)
    return row


def _device_words(device: Device) -> str:
    if device.form in PLAIN:
        return part(PLAIN[Form(device.form)])
    known = device.type != DeviceType.UNKNOWN
    rated = device.rated_residual_current
    delay = device.set_delay
    parts = [
        part("series.of-type", type=device.type) if known else part("series.type-not-known"),
        format_quantity(rated, "mA") if rated is not None else part("series.rating-not-known"),
        format_quantity(delay, "ms") if delay is not None else str(device.delay),
    ]
    return ", ".join(one for one in parts if one != "none")


def _dc_words(through: Through, fitness: Fitness) -> str:
    if fitness.why is Why.NO_LOADS:
        return part("series.no-equipment")
    flows, limits = amount(through.bounds), fitness.limits
    if limits.senses and limits.opens_at is not None:
        current = format_quantity(limits.opens_at, "mA")
        return part("series.dc-opens", amount=flows, current=current)
    if limits.bears is None:
        return part("series.dc", amount=flows)
    bears = format_quantity(limits.bears, "mA")
    code = "series.dc-bears" if limits.bears else "series.dc-none-borne"
    return part(code, amount=flows, bears=bears)


def _load_words(arrangement: Arrangement, number: int) -> Iterator[str]:
    load = arrangement.loads[number]
    kind = load.equipment.load.name
    named = kind if load.name == kind else part("series.named", name=load.name, what=kind)
    what, protected = pieces(load.count, named), PROTECTED.get(DCProtection(load.protection))
    yield part(protected, what=what) if protected else what
    yield from _also_through(arrangement, load.parents)
    bounds = left_by(load, arrangement.code, arrangement.day)
    declared = load.declared == bounds.high / load.count
    yield part("series.dc-as-declared" if declared else "series.dc", amount=_left(bounds))


def _left(bounds: Bounds) -> str:
    if bounds.low == bounds.high:
        return amount(bounds)
    least = format_quantity(bounds.low, "mA")
    return part("series.or-less", amount=amount(bounds), least=least)


def _also_through(arrangement: Arrangement, parents: Sequence[int]) -> list[str]:
    others = [arrangement.devices[one].id for one in parents[1:]]
    return [part("series.in-parallel", others=part("series.and").join(others))] if others else []
