"""How devices, circuits and instruments scatter, read from data/response.toml."""

from __future__ import annotations

from dataclasses import dataclass, fields
from math import exp, inf

from checkers.domain.sources.documents import EVIDENCE_WORDS, SOURCES
from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.domain.tables.records import Record

FILE = "response.toml"
LAWS = frozenset({"plain", "log"})


@dataclass(frozen=True, slots=True)
class Figure:
    """A quantity that scatters: typical value, spread and bounds [ms or a bare ratio]."""

    typical: float
    spread: float
    least: float
    most: float
    logarithmic: bool

    def at(self, score: float) -> float:
        """Return the value at a normal score (0 is typical, 1 one spread above), inside bounds."""
        if self.logarithmic:
            return self.typical * exp(self.spread * score)
        return min(self.most, max(self.least, self.typical + self.spread * score))

    def between(self, fraction: float) -> float:
        """Return the value at a fraction, 0 to 1, of the way from typical to most."""
        return self.typical + fraction * (self.most - self.typical)


@dataclass(frozen=True, slots=True)
class Figures:
    """Every figure of the file, by its name there."""

    own_trip_share: Figure
    trip_current_repeats: Figure
    opening_time: Figure
    lag: Figure
    quick_share: Figure
    quick_lag: Figure
    unhurried_share: Figure
    unhurried_lag: Figure
    short_delay: Figure
    selective_delay: Figure
    selective_lag: Figure
    set_delay_excess: Figure
    half_period: Figure
    time_repeats: Figure
    half_wave_ratio: Figure
    half_wave_ratio_blind: Figure
    half_wave_90_ratio: Figure
    half_wave_135_ratio: Figure
    smooth_dc_share: Figure
    smooth_dc_lag: Figure
    unknown_type_ac_share: Figure
    small_leakage_share: Figure
    leakage_measured: Figure
    large_leakage_share: Figure
    shunted_share_tn: Figure
    shunted_share_tt: Figure
    board_share: Figure
    disturbance: Figure
    disturbed_share: Figure
    disturbed_current: Figure
    blinding_shift: Figure
    blinding_range: Figure
    borrowed_current_share: Figure
    trips_too_high: Figure
    trips_too_low: Figure
    sticking_time: Figure
    sticking_scatter: Figure
    stuck_share: Figure
    sticks_again_share: Figure
    sticks_now_and_then: Figure
    weak_side: Figure
    time_scatter: Figure
    time_scatter_share: Figure
    test_current_excess: Figure
    timer_runs_on: Figure
    misread: Figure
    stray_time_share: Figure
    stray_current_share: Figure
    stray_tail: Figure
    unmodelled_tail: Figure
    misseen: Figure


def load_figures(file: dict[str, object]) -> Figures:
    """Return the figures of a parsed file; raises DataError where one is missing or not whole."""
    known = {field.name for field in fields(Figures)}
    records = {key: Record(FILE, key, entry) for key, entry in file.items()}
    strange = sorted(known ^ set(records))
    if strange:
        raise Record(FILE, strange[0], {}).error("is missing, or no figure of the model")
    return Figures(**{key: _figure(record) for key, record in records.items()})


def _figure(record: Record) -> Figure:
    typical, spread, least, most = (
        _number(record, key) for key in ("typical", "spread", "least", "most")
    )
    if typical is None:
        raise record.error("has no typical value")
    law = record.choice("law", LAWS, default="plain")
    _check_words(record)
    return Figure(
        typical,
        spread or 0.0,
        0.0 if least is None else least,
        inf if most is None else most,
        law == "log",
    )


def _number(record: Record, key: str) -> float | None:
    if isinstance(record.values.get(key), str):
        return record.amount(key, "time")
    return record.number(key)


def _check_words(record: Record) -> None:
    record.choice("evidence", EVIDENCE_WORDS)
    record.text("why")
    document = record.text("document", default="")
    if document and document not in SOURCES:
        raise record.error(f"names an unknown source {document!r}")
    record.finish()


FIGURES = load_figures(read_toml(data_folder() / FILE, FILE))
