"""The least change to an arrangement after which smooth DC blinds nothing in it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import combinations, islice

from checkers.domain.verdicts import Outcome
from checkers.judgement.series.arrangement import Arrangement
from checkers.judgement.series.change.changes import (
    SWAPPED_TO,
    Change,
    FeedBeside,
    GiveOwnDevice,
    SwapType,
    changes_at,
    detections,
)
from checkers.judgement.series.dc.fitness import Why, judge_fitness, judge_one
from checkers.judgement.series.dc.flow import flow_through
from checkers.judgement.series.device_type.by_code import by_code
from checkers.judgement.series.device_type.own_device import sharings
from checkers.wording.book import part

MOST_LOOKED_AT = 4000
MOST_JUDGED = 2000
"""Devices judged again at most while changes of one number are tried together."""
MOST_SHOWN = 4
SIZES = (1, 2, 3)

Changes = tuple[Change, ...]
Fault = tuple[str, int]
"""What is not in order: ("device", its place) blinded or unfit, ("code", its place) open by the
code, ("load", its place) sharing."""


@dataclass(frozen=True, slots=True)
class State:
    """What fails in an arrangement, what cannot be said, and which devices feed nothing."""

    failing: frozenset[Fault]
    open: frozenset[Fault]
    idle: frozenset[Fault]

    def mends(self, before: State) -> bool:
        """Tell whether nothing fails, and nothing is open that was not so before."""
        return not self.failing and self.open - self.idle <= before.open


@dataclass(frozen=True, slots=True)
class Mend:
    """Changes that together mend an arrangement, each with its words, and their effort."""

    changes: Changes
    words: tuple[str, ...]

    @property
    def effort(self) -> float:
        """How much work they are together, against others."""
        return _effort(self.changes)

    @property
    def moves(self) -> bool:
        """Whether a branch or a load is fed from another place afterwards."""
        return any(isinstance(change, FeedBeside | GiveOwnDevice) for change in self.changes)

    @property
    def sentence(self) -> str:
        """The changes as one sentence."""
        text = part("series.and-also").join(self.words)
        return f"{text[0].upper()}{text[1:]}."


def state_of(arrangement: Arrangement) -> State:
    """Return what fails and what is open: devices by fitness, loads by sharing."""
    judged = judge_fitness(arrangement, flow_through(arrangement))
    by_outcome: dict[Outcome, set[Fault]] = {outcome: set() for outcome in Outcome}
    for place, fitness in enumerate(judged):
        by_outcome[fitness.outcome].add(("device", place))
    for place in range(len(judged)):
        for _, finding in by_code(arrangement, place):
            fails = finding.outcome is Outcome.FAIL
            by_outcome[finding.outcome].add(("device" if fails else "code", place))
    shared = {("load", one.load) for one in sharings(arrangement) if one.shared}
    return State(
        failing=frozenset(by_outcome[Outcome.FAIL] | shared),
        open=frozenset(by_outcome[Outcome.CANNOT_SAY]),
        idle=frozenset(
            ("device", place) for place, one in enumerate(judged) if one.why is Why.NO_LOADS
        ),
    )


def least_changes(arrangement: Arrangement) -> list[Mend]:
    """Return the ways to mend an arrangement, of fewest changes, the least work first.

    Result: at most MOST_SHOWN ways; none where nothing fails, or no way was found. Each was
    judged again as a whole. All single changes are tried, then two and three together, the
    least work first, until MOST_JUDGED. Where none mends it, each device is put right by itself.
    """
    search = Search(arrangement, state_of(arrangement))
    if not search.before.failing:
        return []
    for size in SIZES:
        found = search.mending(search.together(size))
        if found:
            return found
    return search.device_after_device()


class Search:
    """The changes that could mend one arrangement, and what each can put right."""

    def __init__(self, arrangement: Arrangement, before: State) -> None:
        self.arrangement = arrangement
        self.before = before
        self.failing = self._failing_devices()
        self.reaches = {
            change: change.reaches(arrangement) & self.failing for change in self._changes()
        }

    def together(self, size: int) -> list[Changes]:
        """Return sets of so many changes that can put right all that fails, least work first."""
        if not self._can_reach_all(size):
            return []
        widest_first = sorted(self.reaches, key=lambda one: -len(self.reaches[one]))
        sets = islice(combinations(widest_first, size), MOST_LOOKED_AT)
        whole = [one for one in sets if self._reached(one) == self.failing]
        return sorted(whole, key=_effort)[: None if size == 1 else self._tries()]

    def mending(self, tries: Iterable[Changes]) -> list[Mend]:
        """Return the first of the tries that mend, MOST_SHOWN at most."""
        mends = (mend for changes in tries if (mend := self._tried(changes)))
        return list(islice(mends, MOST_SHOWN))

    def device_after_device(self) -> list[Mend]:
        """Return one way that puts right each device that fails, the lowest first."""
        changes: Changes = ()
        arrangement = self.arrangement
        for _ in range(2 * (len(arrangement.devices) + len(arrangement.loads))):
            step = _step(arrangement)
            if step is None:
                break
            changes += (step,)
            arrangement = step.made_to(arrangement)
        mend = self._tried(changes)
        return [mend] if mend else []

    def _tries(self) -> int:
        return max(MOST_JUDGED // len(self.arrangement.devices), MOST_SHOWN)

    def _can_reach_all(self, size: int) -> bool:
        widest = sorted((len(reach) for reach in self.reaches.values()), reverse=True)
        return sum(widest[:size]) >= len(self.failing)

    def _reached(self, changes: Changes) -> set[int]:
        return set().union(*(self.reaches[change] for change in changes))

    def _changes(self) -> list[Change]:
        found = list(detections(self.arrangement))
        for place in sorted(self.failing):
            found += changes_at(self.arrangement, place)
        return list(dict.fromkeys(found))

    def _failing_devices(self) -> set[int]:
        loads = {place for kind, place in self.before.failing if kind == "load"}
        above = {parent for load in loads for parent in self.arrangement.loads[load].parents}
        return {place for kind, place in self.before.failing if kind == "device"} | above

    def _tried(self, changes: Changes) -> Mend | None:
        """Return the changes as a way to mend, or None where they are none."""
        words, arrangement = [], self.arrangement
        for change in changes:
            words.append(change.words(arrangement))
            arrangement = change.made_to(arrangement)
        mends = bool(changes) and self._mended(arrangement)
        return Mend(changes, tuple(words)) if mends else None

    def _mended(self, arrangement: Arrangement) -> bool:
        """Tell whether nothing fails any more; what failed before is looked at first."""
        through = flow_through(arrangement)
        first = (judge_one(arrangement, place, through[place]) for place in self.failing)
        if any(one.outcome is Outcome.FAIL for one in first):
            return False
        if any(_fails_by_code(arrangement, place) for place in self.failing):
            return False
        return state_of(arrangement).mends(self.before)


def _step(arrangement: Arrangement) -> Change | None:
    """Return the least change that puts right the lowest device that fails, or None."""
    through = flow_through(arrangement)
    for place in arrangement.shape.bottom_up:
        fails = judge_one(arrangement, place, through[place]).outcome is Outcome.FAIL
        if not fails and not _fails_by_code(arrangement, place):
            continue
        for kind in SWAPPED_TO:
            swap = SwapType(place, kind)
            changed = swap.made_to(arrangement)
            swapped = judge_one(changed, place, through[place])
            if swapped.outcome is Outcome.PASS and not _fails_by_code(changed, place):
                return swap
        return None
    shared = sorted(one.load for one in sharings(arrangement) if one.shared)
    return GiveOwnDevice(shared[0]) if shared else None


def _fails_by_code(arrangement: Arrangement, place: int) -> bool:
    return any(one.outcome is Outcome.FAIL for _, one in by_code(arrangement, place))


def _effort(changes: Changes) -> float:
    return sum(change.effort for change in changes)
