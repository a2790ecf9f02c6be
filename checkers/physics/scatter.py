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
class Spread:
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
class ScatterTable:
    """Every figure of the file, by its name there."""

    own_trip_share: Spread
    trip_current_repeats: Spread
    opening_time: Spread
    lag: Spread
    quick_share: Spread
    quick_lag: Spread
    unhurried_share: Spread
    unhurried_lag: Spread
    short_delay: Spread
    selective_delay: Spread
    selective_lag: Spread
    set_delay_excess: Spread
    half_period: Spread
    time_repeats: Spread
    half_wave_ratio: Spread
    half_wave_ratio_blind: Spread
    half_wave_90_ratio: Spread
    half_wave_135_ratio: Spread
    smooth_dc_share: Spread
    smooth_dc_lag: Spread
    unknown_type_ac_share: Spread
    small_leakage_share: Spread
    leakage_measured: Spread
    large_leakage_share: Spread
    shunted_share_tn: Spread
    shunted_share_tt: Spread
    board_share: Spread
    disturbance: Spread
    disturbed_share: Spread
    disturbed_current: Spread
    blinding_shift: Spread
    blinding_range: Spread
    borrowed_current_share: Spread
    trips_too_high: Spread
    trips_too_low: Spread
    sticking_time: Spread
    sticking_scatter: Spread
    stuck_share: Spread
    sticks_again_share: Spread
    sticks_now_and_then: Spread
    weak_side: Spread
    time_scatter: Spread
    time_scatter_share: Spread
    test_current_excess: Spread
    timer_runs_on: Spread
    misread: Spread
    stray_time_share: Spread
    stray_current_share: Spread
    stray_tail: Spread
    unmodelled_tail: Spread
    misseen: Spread


def load_figures(file: dict[str, object]) -> ScatterTable:
    """Return the figures of a parsed file; raises DataError where one is missing or not whole."""
    known = {field.name for field in fields(ScatterTable)}
    records = {key: Record(FILE, key, entry) for key, entry in file.items()}
    strange = sorted(known ^ set(records))
    if strange:
        raise Record(FILE, strange[0], {}).error("is missing, or no figure of the model")
    return ScatterTable(**{key: _figure(record) for key, record in records.items()})


def _figure(record: Record) -> Spread:
    typical, spread, least, most = (
        _number(record, key) for key in ("typical", "spread", "least", "most")
    )
    if typical is None:
        raise record.error("has no typical value")
    law = record.choice("law", LAWS, default="plain")
    _check_words(record)
    return Spread(
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


SCATTER = load_figures(read_toml(data_folder() / FILE, FILE))
