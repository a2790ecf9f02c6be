"""Rows of the same device brought together: neighbouring ones as one, later ones by memory."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date
from typing import Any

from checkers.domain.verdicts import Outcome, StillToDo, worst
from checkers.judgement.schedule.rows.entry import Entry, RowKind

Key = tuple[str, str, date | None]
MOST_ROWS = 60
MOST_REMEMBERED = 2000
HAS_A_DEVICE = frozenset({RowKind.DEVICE, RowKind.NOT_TESTED})


class Neighbours:
    """Collects neighbouring rows of one device; any other row goes through by itself."""

    def __init__(self) -> None:
        """Begin with no row waiting."""
        self._waiting: list[Entry] = []

    def feed(self, entry: Entry) -> Iterator[list[Entry]]:
        """Yield the groups that a further row finishes."""
        if self._belongs(entry):
            self._waiting.append(entry)
            return
        yield from self.finish()
        if entry.kind in HAS_A_DEVICE and entry.key is not None:
            self._waiting = [entry]
        else:
            yield [entry]

    def finish(self) -> Iterator[list[Entry]]:
        """Yield the group that waits, if there is one."""
        waiting, self._waiting = self._waiting, []
        if waiting:
            yield waiting

    def _belongs(self, entry: Entry) -> bool:
        if not self._waiting or entry.kind not in HAS_A_DEVICE or entry.key is None:
            return False
        if entry.key != self._waiting[0].key or len(self._waiting) >= MOST_ROWS:
            return False
        return not any(entry.contradicts(other) for other in self._waiting)


@dataclass(slots=True)
class Known:
    """What is remembered of a device: first line, outcome, what is to do, properties, readings."""

    line: int
    outcome: Outcome
    is_tested: bool
    still_to_do: tuple[StillToDo, ...] = ()
    device: dict[str, str] = field(default_factory=dict)
    readings: list[dict[str, Any]] = field(default_factory=list)

    @property
    def standing(self) -> tuple[Outcome, tuple[StillToDo, ...]]:
        """What the device comes to, with what is still to do."""
        return self.outcome, self.still_to_do

    def with_row(self, row: Known) -> Known:
        """Return what is known with a further row: what either row answers is done."""
        both = self.is_tested and row.is_tested
        latest = row if row.is_tested else self
        answered = (one for one in row.still_to_do if one in self.still_to_do)
        return Known(
            line=self.line,
            outcome=worst((self.outcome, row.outcome))
            if self.is_tested or not row.is_tested
            else row.outcome,
            is_tested=self.is_tested or row.is_tested,
            still_to_do=tuple(answered) if both else latest.still_to_do,
            device=self.device | row.device,
            readings=self.readings + row.readings,
        )

    def tell(self, entry: Entry) -> None:
        """Fill in what a later row of the device leaves open, unless it speaks of another one."""
        if any(self.device.get(name, value) != value for name, value in entry.device.items()):
            return
        silent = self.device.keys() - entry.in_doubt
        entry.device = {name: self.device[name] for name in silent} | entry.device

    def holds_all_of(self, entry: Entry) -> bool:
        """Tell whether a later row of the device says nothing that was not judged already."""
        known = all(self.device.get(name) == value for name, value in entry.device.items())
        judged = all(one in self.readings for one in entry.readings)
        return known and judged and not entry.has_unread_reading


class Memory:
    """Remembers the latest devices, by key, in bounded memory."""

    def __init__(self) -> None:
        """Begin empty."""
        self._known: OrderedDict[Key, Known] = OrderedDict()

    def forget(self) -> None:
        """Forget every device, as where a title may begin another board."""
        self._known.clear()

    def get(self, key: Key | None) -> Known | None:
        """Return what is known of a device, or None."""
        if key is None or key not in self._known:
            return None
        self._known.move_to_end(key)
        return self._known[key]

    def put(self, key: Key | None, known: Known) -> None:
        """Remember a device, and forget the one not heard of for longest."""
        if key is None:
            return
        self._known[key] = known
        self._known.move_to_end(key)
        if len(self._known) > MOST_REMEMBERED:
            self._known.popitem(last=False)
