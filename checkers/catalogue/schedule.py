"""A whole board or estate at once."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from checkers.catalogue import readings
from checkers.domain.checker import Checker, Example
from checkers.domain.device.device import Device
from checkers.domain.device.readings import Circuit, Instrument, Waveform
from checkers.domain.errors import InvalidRequest, quoted
from checkers.domain.inputs.fields import choice, group, inputs_of, many
from checkers.domain.inputs.fields import text as words
from checkers.domain.inputs.parsing import parse_inputs
from checkers.domain.question import Question
from checkers.domain.verdicts import Finding, Judges, Outcome, Result
from checkers.judgement.dc.fitness import nothing_said_of_dc
from checkers.judgement.schedule.file.delimiters import BY_NAME
from checkers.judgement.schedule.file.intake import Given
from checkers.judgement.schedule.file.layout import BadMapping
from checkers.judgement.schedule.rows.entry import Entry
from checkers.judgement.schedule.rows.entry_reader import NO_TRIP_WORD, NOT_TESTED, UNSAID, Rules
from checkers.judgement.schedule.rows.schedule import Schedule
from checkers.judgement.schedule.rows.summary import answer_of, findings_on_the_whole, still_to_do
from checkers.wording.book import part
from checkers.wording.finding import finding

LARGEST = 50_000_000


@dataclass(frozen=True, slots=True)
class ColumnMeaning:
    """What one column holds, where its heading does not tell, or tells it wrongly."""

    column: str = words("Column", most=500, explain="Its number, from 1, or its heading.")
    means: str = words(
        "Meaning",
        most=200,
        explain="In words as headings have them: device, device type, trip-time x1 0°, "
        "ramp (mA), button, not used.",
    )

    def problems(self) -> dict[str, str]:
        """Return what is wrong with the fields together, by field."""
        return {name: "is needed" for name in ("column", "means") if not getattr(self, name)}


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs(Question):
    """A schedule as text, and what its own words leave open."""

    text: str = words(
        "Schedule",
        most=LARGEST,
        verbatim=True,
        explain="The rows with their headings, as a spreadsheet saves or copies them.",
    )
    mapping: tuple[ColumnMeaning, ...] = many(ColumnMeaning, "Columns", most=500)
    delimiter: str = words(
        "Between the cells",
        most=9,
        verbatim=True,
        advanced=True,
        explain="comma, semicolon, tab, bar, or any one character; found out if left out.",
    )
    waveform: str = choice(
        Waveform,
        "Waveform",
        default=Waveform.AC,
        explain="Of columns whose heading names none.",
    )
    n_t: str = choice(
        ((UNSAID, "not said"), (NOT_TESTED, "not tested"), (NO_TRIP_WORD, "no trip")),
        "n/t stands for",
        default=UNSAID,
    )
    device: Device = group(Device, "Every device, where its row does not say", default=Device)
    circuit: Circuit = group(Circuit, "Every circuit", default=Circuit, advanced=True)
    instrument: Instrument = group(Instrument, "Instrument", default=Instrument, advanced=True)

    def problems(self) -> dict[str, str]:
        """Return what is wrong with the fields together, by field."""
        if self.delimiter and self.delimiter not in BY_NAME and len(self.delimiter) != 1:
            return {
                "delimiter": f"{quoted(self.delimiter)} is not one character, nor a name of one"
            }
        return {}

    @property
    def rules(self) -> Rules:
        """How to read what the file leaves open."""
        return Rules(self.code, self.waveform, n_t=self.n_t)

    def given(self, encoding: str = "") -> Given:
        """Return what is said of the file itself."""
        mapping = [(one.column, one.means) for one in self.mapping]
        return Given(BY_NAME.get(self.delimiter, self.delimiter), encoding, mapping)


def schedule_for(inputs: Inputs, encoding: str = "") -> Schedule:
    """Return a schedule ready to be fed, which judges each device as `readings` does."""
    shared = {
        "code": inputs.code,
        "device": _request_of(inputs.device),
        "circuit": _request_of(inputs.circuit),
        "instrument": _request_of(inputs.instrument),
    }
    return Schedule(
        lambda entry: _judge(entry, shared, inputs), inputs.given(encoding), inputs.rules
    )


def _request_of(part: Any) -> dict[str, Any]:
    """Return the part of a request that makes an input dataclass, without what is not known."""
    values = {one.name: getattr(part, one.name) for one in inputs_of(type(part))}
    return {name: value for name, value in values.items() if value not in (None, "")}


def _judge(entry: Entry, shared: Mapping[str, Any], inputs: Inputs) -> Result:
    """Judge the readings of one device, as the readings checker does."""
    kept = {name: one for name, one in shared["device"].items() if name not in entry.in_doubt}
    request = {
        **shared,
        "on": (entry.day or inputs.day).isoformat(),
        "device": kept | entry.device,
        "circuit": shared["circuit"] | entry.circuit,
        "readings": entry.readings,
    }
    try:
        return readings.check(parse_inputs(readings.Inputs, request))
    except InvalidRequest as bad:
        return Result([_refused(name, says) for name, says in bad.errors.items()])
    except Exception as error:  # noqa: BLE001  # one row must not stop the others
        why = part("schedule.judging-failed", error=type(error).__name__)
        return Result([_not_judged(why)])


def _refused(name: str, says: str) -> Finding:
    return _not_judged(part("schedule.judging-refused", field=name, why=says))


def _not_judged(why: str) -> Finding:
    judges = Judges.DEVICE_STANDARD
    return finding("schedule.row-not-judged", Outcome.CANNOT_SAY, judges, {"why": why})


def check(inputs: Inputs) -> Result:
    """Judge every device of a schedule given as text.

    Inputs: the schedule, what its columns mean where their headings do not tell, and
    what holds for every row.
    Result: the findings of every device, each with its line; in the answer the
    mapping, the totals, the rows that need a person first and those not read.
    Raises InvalidRequest where there is no text, or the mapping names no column.
    """
    if not inputs.text.strip():
        raise InvalidRequest({"text": "is needed: the rows of the schedule"})
    schedule = schedule_for(inputs)
    try:
        rows = [*schedule.feed(inputs.text), *schedule.finish()]
    except BadMapping as bad:
        raise InvalidRequest({"mapping": str(bad)}) from bad
    answered = {row.answers for row in rows}
    findings = [one for row in rows if row.line not in answered for one in row.findings]
    return summary_of(schedule, inputs, findings)


def summary_of(schedule: Schedule, inputs: Inputs, findings: list[Finding] | None = None) -> Result:
    """Return the result of a schedule that has been read to its end.

    Inputs: the schedule; the request; the findings of all its rows, or None for
    those of the rows that need a person first.
    """
    if findings is None:
        findings = [one for row in schedule.worst.rows for one in row.findings]
    return Result(
        findings=[*findings_on_the_whole(schedule), *findings],
        answer=answer_of(schedule, inputs.rules),
        still_to_do=still_to_do(schedule.totals),
        cautions=(nothing_said_of_dc(),),
    )


BOARD = """Board DB1;;;;;;
;;;;;;
Circuit;RCD;IΔn (mA);x1 0° (ms);x1 180° (ms);Test button;Remarks
1 Sockets;RCBO type A;30;28,5;18,3;ok;
2 Kitchen;RCBO type A;30;> 300;24;ok;repeated twice
3 Lighting;RCBO type A;30;test not completed;;ok;
4;;;;;;spare
"""
ONE_BOARD = Example(
    title="A board in which one device does not trip and one test was not completed",
    request={"code": "gb", "on": "2026-11-24", "text": BOARD},
    outcome=Outcome.FAIL,
)
SOUND = Example(
    title="Two figures in a cell, told apart by the heading",
    request={
        "code": "gb",
        "on": "2026-11-24",
        "text": "Device,Type,IΔn,x1 0°/180° (ms)\nRCD 1,A,30 mA,28.5/18\nRCD 2,A,30 mA,31/22\n",
    },
    outcome=Outcome.PASS,
)
UNTOLD = Example(
    title="Figures that could be ms or mA, under a heading that does not tell",
    request={
        "code": "gb",
        "on": "2026-11-24",
        "text": "Device,Type,IΔn,Result\nRCD 1,A,30 mA,33\n",
    },
    outcome=Outcome.CANNOT_SAY,
)

CHECKER = Checker(
    slug="schedule",
    title="Judge a whole schedule",
    question="Which devices of a whole schedule fail, and which rows need a person first?",
    inputs=Inputs,
    check=check,
    examples=(ONE_BOARD, SOUND, UNTOLD),
)
