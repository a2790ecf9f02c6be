"""One row of a schedule with its verdict, as it is handed out."""

from __future__ import annotations

from dataclasses import dataclass

from checkers.domain.verdicts import Finding, Outcome, StillToDo
from checkers.judgement.schedule.rows.entry import RowKind
from checkers.wording.book import part
from checkers.wording.reading_names import spoken

NEEDS_A_PERSON = frozenset({Outcome.FAIL, Outcome.BORDERLINE, Outcome.CANNOT_SAY})


@dataclass(frozen=True, slots=True)
class Row:
    """A row of the file: what it is, its cells as they were, and what is said of its device.

    `outcome` is None where there is nothing to judge. On further rows of a device it
    repeats the device's outcome, without its findings; `note` then names the line.
    `answers` is the line of an earlier row that names the device and holds no reading.
    `still_to_do` are the tests of the device that the code requires and that are not there.
    """

    line: int
    kind: RowKind
    cells: tuple[str, ...]
    device: str = ""
    outcome: Outcome | None = None
    findings: tuple[Finding, ...] = ()
    still_to_do: tuple[StillToDo, ...] = ()
    note: str = ""
    answers: int = 0

    @property
    def why(self) -> str:
        """Why the outcome is what it is, in one text: what speaks against comes alone."""
        bad = [one for one in self.findings if one.outcome is not Outcome.PASS]
        said = [_in_short(one) for one in bad or self.findings]
        return " ".join(dict.fromkeys([*([self.note] if self.note else []), *said]))

    @property
    def do_next(self) -> str:
        """What to do about it, in one text."""
        todo = [one.do_next for one in self.findings if one.outcome is not Outcome.PASS]
        if self.still_to_do:
            todo.append(part("schedule.row-to-do", tests=", ".join(self.missing)))
        return " ".join(dict.fromkeys(one for one in todo if one))

    @property
    def missing(self) -> list[str]:
        """The tests that are still to do, in words."""
        return [one.words for one in self.still_to_do]

    @property
    def passes_so_far(self) -> bool:
        """Whether all there is passes, and a required test is not there."""
        return self.outcome is Outcome.PASS and bool(self.still_to_do)

    @property
    def sources(self) -> str:
        """Where the limits stand, in one text."""
        words = (source.words for finding in self.findings for source in finding.sources)
        return "; ".join(dict.fromkeys(words))

    @property
    def place(self) -> str:
        """What the row is called: its device and its line."""
        code = "row-place" if self.device else "row-place-without-device"
        return part(f"schedule.{code}", device=self.device, line=self.line)


def _in_short(finding: Finding) -> str:
    about = spoken(finding.about)
    said = f"{about[:1].upper()}{about[1:]}"
    if finding.outcome is Outcome.PASS and finding.limit:
        facts = {"measured": finding.measured, "limit": finding.limit}
        return part("schedule.row-meets", about=said, **facts)
    return part("schedule.row-says", about=said, says=finding.says)
