"""A finding with what it proves, and the findings that come before any comparison."""

from __future__ import annotations

from dataclasses import dataclass

from checkers.domain.devices import DeviceType
from checkers.domain.limit_rows import Row
from checkers.domain.measured import Said
from checkers.domain.readings import EXPECTED, Reading, Test, Waveform
from checkers.domain.verdicts import Finding, Judges, Numbers, Outcome
from checkers.judgement.case import Case
from checkers.judgement.reading_words import name_of


@dataclass(frozen=True, slots=True)
class Judged:
    """A finding, and whether it shows that the device trips within a limit."""

    finding: Finding
    shows_trip: bool = False


def undecided(
    reading: Reading,
    says: str,
    do_next: str = "",
    limit: str = "",
    numbers: Numbers | None = None,
) -> list[Judged]:
    """Return the finding that a reading cannot be judged, with what to do about it."""
    finding = Finding(
        about=name_of(reading),
        outcome=Outcome.CANNOT_SAY,
        says=says,
        judges=Judges.FUNCTION if reading.test == Test.BUTTON else Judges.DEVICE_STANDARD,
        measured=str(reading.measured) if reading.measured.said is not Said.UNCLEAR else "",
        do_next=do_next,
        limit=limit,
        numbers=numbers,
    )
    return [Judged(finding)]


def not_a_result(reading: Reading) -> list[Judged] | None:
    """Return a finding where what was written down is no result, or could mean two things."""
    measured = reading.measured
    if measured.said is Said.UNCLEAR:
        return undecided(reading, measured.question, "Write the one figure of this test.")
    if measured.said is Said.NO_RESULT:
        return undecided(
            reading,
            f"“{measured.typed.strip()}” means that the test was not completed: no pass, no fail.",
            "Take the loads off, set the device's own rating, and repeat the test.",
        )
    return _no_figure(reading) or _unit_mix_up(reading)


def _no_figure(reading: Reading) -> list[Judged] | None:
    """Return a finding where a word fit for a test button stands for a figure."""
    measured = reading.measured
    about_a_button = measured.said in (Said.OPERATES, Said.DOES_NOT_OPERATE)
    if reading.test == Test.BUTTON or not about_a_button:
        return None
    return undecided(
        reading,
        f"“{measured.typed.strip()}” gives no figure, so it shows nothing against a limit.",
        "Write what the instrument showed.",
    )


def _unit_mix_up(reading: Reading) -> list[Judged] | None:
    measured, expected = reading.measured, EXPECTED.get(reading.test)
    wanted = {"trip_time": "ms", "trip_current": "mA"}.get(expected or "")
    if not measured.is_number or wanted is None or measured.unit == wanted:
        return None
    kind = "a time" if measured.unit == "ms" else "a current"
    asked = "a trip time, in ms" if wanted == "ms" else "a trip current, in mA"
    return undecided(
        reading,
        f"{measured} is {kind}, but this test gives {asked}: the one does not become the other.",
        "Say which test the figure belongs to, or correct the unit.",
    )


def trip_not_seen(reading: Reading, case: Case) -> list[Judged] | None:
    """Return a finding where the instrument shows a trip and the device was seen to stay."""
    shown = reading.measured.said in (Said.FIGURE, Said.LESS_THAN, Said.TRIPPED)
    if not shown or case.circuit.seen_to_open is not False:
        return None
    return undecided(
        reading,
        "The instrument shows a trip, but the device was not seen to open: "
        "something else may have broken the circuit.",
        "Find out which device opened, and repeat at this one.",
    )


def waveform_missing(reading: Reading) -> list[Judged] | None:
    """Return a finding where the waveform of the test is not given."""
    if reading.waveform != Waveform.UNKNOWN:
        return None
    return undecided(
        reading,
        "The waveform is not given, and the limit depends on it.",
        "Say whether the test was AC, half wave or smooth DC.",
    )


def type_missing(reading: Reading, case: Case, *rows: Row | None) -> list[Judged] | None:
    """Return a finding where the type is not given and the limit is that of some types only."""
    limited = any(row is not None and row.when.only("type") for row in rows)
    if case.device.type != DeviceType.UNKNOWN or not limited:
        return None
    return undecided(
        reading,
        "The type is not given, and on this waveform the limit depends on it.",
        "Read the type symbol on the device.",
    )


def rating_missing(reading: Reading, case: Case) -> list[Judged] | None:
    """Return a finding where the rating is not given and the test goes by it."""
    if case.device.rated_residual_current is not None:
        return None
    return undecided(
        reading,
        "The rated residual current is not given, and the limit depends on it.",
        "Read IΔn on the device.",
    )
