"""The rules of an installation code: editions, tests, device types and intervals."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import TypeVar

from checkers.domain.sources.documents import Citation, cite

PURPOSES = frozenset(
    {
        "disconnection-time",
        "disconnection-time-at-rating",
        "standing-leakage",
        "standing-dc",
        "selectivity-ratio",
        "touch-voltage",
    }
)


Kind = TypeVar("Kind", bound="Rule")
NAMED_FOR = re.compile(r"(?:19|20)\d\d\b")


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """What every rule of a code has: where it stands, how it is known, and its days."""

    document: str
    edition: str
    clause: str
    evidence: str
    from_day: date | None
    until_day: date | None
    note: str

    @property
    def citation(self) -> Citation:
        """The document, edition, clause and evidence behind the rule."""
        return cite(self.document, self.clause, self.evidence, self.edition)

    @property
    def designation(self) -> str:
        """The document with its edition, as people write it."""
        dated = self.edition[0].isdigit() and " " not in self.edition
        return f"{self.citation.document}{':' if dated else ', '}{self.edition}"

    def in_force(self, day: date) -> bool:
        """Tell whether the rule holds on a day: from its first day, until the day it ends."""
        started = self.from_day is None or self.from_day <= day
        return started and (self.until_day is None or day < self.until_day)


@dataclass(frozen=True, slots=True, kw_only=True)
class Edition(Rule):
    """An edition of the code's own document, for as long as it is the one to apply.

    Where its first day is not known, it holds from the year it is named for: never before.
    """

    def in_force(self, day: date) -> bool:
        """Tell whether the edition holds on a day."""
        year = NAMED_FOR.match(self.edition)
        published = self.from_day is not None or year is None or int(year[0]) <= day.year
        return published and Rule.in_force(self, day)


@dataclass(frozen=True, slots=True, kw_only=True)
class CodeTest(Rule):
    """A test the code speaks of: which, at what current, and how binding it is.

    `test`: trip-time, no-trip, ramp or button. `standing`: required, advised, possible or
    not-required. `multiple` is of the rated residual current; `lasting` [ms] is how long a
    no-trip test lasts. `limits` is the key of the table with the code's own limits; without
    it the limits of the device's product standard serve. `served_by` are tests that do in its
    place. The other fields say which devices it concerns: empty or None for all.
    """

    test: str
    standing: str
    multiple: float | None
    waveform: str
    phases: tuple[str, ...]
    lasting: float | None
    limits: str
    types: frozenset[str]
    forms: frozenset[str]
    delays: frozenset[str]
    rated_up_to: float | None
    purpose: str
    served_by: frozenset[str]

    def concerns(
        self,
        *,
        type: str | None = None,  # noqa: A002  # the trade's own word, as in a request
        form: str | None = None,
        delay: str | None = None,
        rated: float | None = None,
    ) -> bool:
        """Tell whether nothing known of a device speaks against the test; rated is in [mA]."""
        named = ((self.types, type), (self.forms, form), (self.delays, delay))
        if any(words and given is not None and given not in words for words, given in named):
            return False
        return self.rated_up_to is None or rated is None or rated <= self.rated_up_to


@dataclass(frozen=True, slots=True, kw_only=True)
class TypeRule(Rule):
    """What the code says of device types.

    `standing`: not-accepted (these types are not to be fitted), only-where (these types are
    accepted only where `where` holds), needed (for `loads`, or `where`, one of these types),
    other-means (`loads` are protected by what `where` names, and types play no part).
    `also` are types that serve as well where `also_where` holds. `loads` are keys of
    loads.toml; `supplies`, where not empty, are the supplies it holds for. `with_detection`
    tells that `types` serve with 6 mA detection only, `also_by_upstream` that `also` serve by
    what stands upstream and not by the equipment. `says` is the rule as one sentence.
    """

    types: frozenset[str]
    standing: str
    loads: frozenset[str]
    supplies: frozenset[str]
    where: str
    also: frozenset[str]
    also_where: str
    says: str
    with_detection: bool = False
    also_by_upstream: bool = False

    @property
    def names_equipment(self) -> bool:
        """Whether it concerns the equipment it names, and no other."""
        return self.standing in {"needed", "other-means"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Interval(Rule):
    """How often a test is repeated in a kind of place; `device` is fixed, portable or any."""

    test: str
    place: str
    device: str
    every: str


@dataclass(frozen=True, slots=True, eq=False)
class Code:
    """One jurisdiction: its documents, and its rules of every day.

    `tables` names the limit table of the code for each of the PURPOSES. `follows` is the code
    whose text it adopts: where it has no test of its own here, those tests are shown, cited
    as what they are; and that code's type rules stand after its own. `month_first`
    tells that 3/4/2026 is the fourth of March there.
    """

    key: str
    name: str
    country: str
    follows: str
    month_first: bool
    tables: Mapping[str, str]
    editions: tuple[Edition, ...]
    tests: tuple[CodeTest, ...]
    type_rules: tuple[TypeRule, ...]
    intervals: tuple[Interval, ...]
    not_known: tuple[str, ...]
    local_note: str

    def editions_on(self, day: date) -> tuple[Edition, ...]:
        """Return the editions in force on a day, of every document of the code."""
        return _on(self.editions, day)

    def edition_on(self, day: date) -> str:
        """Return the main document with its edition on a day, as words; the first one counts."""
        found = self.editions_on(day)
        return found[0].designation if found else ""

    def tests_on(self, day: date) -> tuple[CodeTest, ...]:
        """Return the tests the code, or else the one it follows, speaks of on a day."""
        return _on(self.tests, day)

    def type_rules_on(self, day: date) -> tuple[TypeRule, ...]:
        """Return the rules on device types in force on a day."""
        return _on(self.type_rules, day)

    def intervals_on(self, day: date) -> tuple[Interval, ...]:
        """Return the test intervals in force on a day."""
        return _on(self.intervals, day)


def _on(rules: tuple[Kind, ...], day: date) -> tuple[Kind, ...]:
    """Return the rules in force on a day."""
    return tuple(rule for rule in rules if rule.in_force(day))
