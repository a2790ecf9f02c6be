"""Which days are believed, in every checker alike, read from data/days.toml."""

from __future__ import annotations

import re
from datetime import date, timedelta

from checkers.domain.sources.documents import EVIDENCE_WORDS
from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.domain.tables.records import Record

FILE = "days.toml"
YEARS = re.compile(r"(\d) years")
LONGEST_YEAR = 366


def load_days() -> tuple[date, timedelta]:
    """Return the earliest day that is believed, and how far ahead a day may lie."""
    whole = Record(FILE, "", read_toml(data_folder() / FILE, FILE))
    first, ahead = (Record(FILE, key, whole.value(key)) for key in ("earliest", "ahead"))
    earliest, years = first.day("value"), YEARS.fullmatch(ahead.text("value"))
    for record in (first, ahead):
        record.choice("evidence", EVIDENCE_WORDS)
        record.text("why")
        record.finish()
    whole.finish()
    if earliest is None:
        raise first.error("has no value")
    if years is None:
        raise ahead.error("needs a value such as '2 years'")
    return earliest, timedelta(days=LONGEST_YEAR * int(years[1]))


EARLIEST, AHEAD = load_days()


def why_not_believed(day: date) -> str:
    """Return why a day is not believed, or nothing where it is."""
    latest = date.today() + AHEAD  # noqa: DTZ011  # the day where the person stands
    if EARLIEST <= day <= latest:
        return ""
    return f"is outside {EARLIEST} to {latest}, the days that are believed"
