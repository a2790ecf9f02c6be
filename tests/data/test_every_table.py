"""Every limit table and every row: whole, cited, and in order."""

from __future__ import annotations

from datetime import date
from itertools import pairwise
from pathlib import Path

import pytest

import checkers.data
from checkers.domain.limits.rows import Row, Table
from checkers.domain.limits.tables import TABLES, rows
from checkers.domain.sources.documents import SOURCES, Evidence

FOLDER = Path(checkers.data.__file__).parent / "limits"
ROWS = [row for table in TABLES.values() for row in table.rows]
TODAY = date(2026, 11, 24)
RATINGS = (6.0, 10.0, 30.0, 100.0, 200.0, 300.0, 500.0)
SIZES_OF_SELECTIVE_DEVICES = (100.0, 200.0, 300.0, 500.0)


def named(row: Row) -> str:
    """Return a row's name for a test report."""
    return f"{row.table} row {row.number}"


def test_every_file_in_the_folder_is_loaded() -> None:
    """No table lies about unread."""
    files = {f"{path.parent.name}/{path.stem}" for path in FOLDER.rglob("*.toml")}

    assert files == set(TABLES)


@pytest.mark.parametrize("table", TABLES.values(), ids=TABLES)
def test_a_table_says_what_it_is_and_where_it_stands(table: Table) -> None:
    """Title, document, edition and clause are words a reader can look up."""
    assert table.title[0].isupper()
    assert SOURCES[table.document].designation
    assert table.edition
    assert table.clause


@pytest.mark.parametrize("row", ROWS, ids=named)
def test_a_row_carries_document_edition_clause_and_evidence(row: Row) -> None:
    """Nothing is shown without its source."""
    cited = row.citation

    assert all((cited.document, cited.edition, cited.clause))
    assert Evidence(cited.evidence).meaning in cited.words


@pytest.mark.parametrize("row", ROWS, ids=named)
def test_a_row_limits_what_its_table_measures(row: Row) -> None:
    """With all it may need to know given, a row has a limit, or says that it has none."""
    given = (row.at_most(30.0, 60.0, 30.5), row.at_least(30.0, 60.0))
    has_figure = any(value is not None for value in given)

    assert has_figure is not (row.never or row.undeclared)


def test_only_product_standards_that_are_marked_so_are_left_to_devices_made_to_them() -> None:
    """The older and foreign standards do not bind a device that does not claim them."""
    claimed = {table.document for table in TABLES.values() if not table.assumed}

    assert claimed == {"bs-4293", "bs-7288", "as-nzs-3190", "iec-62752", "ul-2231-2"}


def ladder(**asked: object) -> list[tuple[float, float]]:
    """Return the test currents [mA] with the greatest time [ms] at each, lowest first."""
    rated = asked["rated"]
    assert isinstance(rated, float)
    found = rows("trip-time", on=TODAY, **asked)
    steps = ((row.level(rated), row.at_most(rated)) for row in found)
    return [(level, most) for level, most in steps if level is not None and most is not None]


@pytest.mark.parametrize("form", ["rccb", "rcbo"])
@pytest.mark.parametrize("rated", RATINGS)
@pytest.mark.parametrize("waveform", ["ac", "half-wave"])
def test_every_usual_rating_has_a_whole_ladder_of_times(
    form: str, rated: float, waveform: str
) -> None:
    """300, 150 and 40 ms, never longer at more current, whatever the rating."""
    asked = {"form": form, "type": "A", "delay": "none", "rated": rated, "waveform": waveform}
    times = [most for _, most in ladder(**asked)]

    assert sorted(set(times)) == [40.0, 150.0, 300.0]
    assert all(earlier >= later for earlier, later in pairwise(times))


@pytest.mark.parametrize("form", ["rccb", "rcbo"])
@pytest.mark.parametrize("rated", SIZES_OF_SELECTIVE_DEVICES)
@pytest.mark.parametrize(
    ("waveform", "type_"), [("ac", "A"), ("half-wave", "A"), ("smooth-dc", "B")]
)
def test_a_selective_device_has_a_least_time_wherever_it_has_a_greatest_one_below_5_amperes(
    form: str, rated: float, waveform: str, type_: str
) -> None:
    """Selectivity is lost at any current at which the device may be too quick."""
    found = rows(
        "trip-time", on=TODAY, form=form, type=type_, delay="S", rated=rated, waveform=waveform
    )
    below = [row for row in found if (row.level(rated) or 0.0) <= 5000.0]

    assert len(below) >= 3
    assert all(row.at_least(rated) is not None for row in below)


@pytest.mark.parametrize("rated", RATINGS)
@pytest.mark.parametrize(
    ("type_", "waveform"),
    [
        ("AC", "ac"),
        ("A", "half-wave"),
        ("A", "half-wave-90"),
        ("A", "half-wave-135"),
        ("F", "composite"),
        ("B", "smooth-dc"),
        ("B", "two-pulse"),
        ("B", "three-pulse"),
        ("B", "six-pulse"),
        ("B", "ac-150-hz"),
        ("B", "ac-400-hz"),
        ("B", "ac-1000-hz"),
    ],
)
@pytest.mark.parametrize("form", ["rccb", "rcbo"])
def test_each_type_has_one_band_for_each_current_it_senses(
    rated: float, type_: str, waveform: str, form: str
) -> None:
    """One lower and one upper limit, whatever the rating."""
    found = rows(
        "operating-current", on=TODAY, form=form, type=type_, rated=rated, waveform=waveform
    )

    assert len(found) == 1
    assert 0 < (found[0].at_least(rated) or 0.0) < (found[0].at_most(rated) or 0.0)


@pytest.mark.parametrize(
    ("type_", "waveform"),
    [("AC", "half-wave"), ("AC", "smooth-dc"), ("A", "smooth-dc"), ("A", "composite")],
)
def test_a_type_has_no_limit_for_a_current_it_does_not_sense(type_: str, waveform: str) -> None:
    """A type AC is never passed on a half-wave limit."""
    asked = {"form": "rccb", "type": type_, "rated": 30.0, "waveform": waveform}

    assert rows("operating-current", on=TODAY, **asked) == ()
    assert rows("trip-time", on=TODAY, **asked) == ()


def test_the_two_parts_for_breakers_without_and_with_overcurrent_protection_agree() -> None:
    """RCCB and RCBO have the same figures, each cited from its own standard."""
    for name in ("break-times-ac", "break-times-half-wave", "operating-currents"):
        pairs = zip(
            TABLES[f"iec-61008-1/{name}"].rows, TABLES[f"iec-61009-1/{name}"].rows, strict=True
        )
        for one, other in pairs:
            assert (one.most, one.least) == (other.most, other.least)
            assert (one.when.multiple, one.when.current) == (
                other.when.multiple,
                other.when.current,
            )


def test_a_figure_from_memory_is_never_shown_as_read() -> None:
    """What was nowhere confirmed says so: the annexes for breakers and modular devices."""
    annexes = [row for row in ROWS if row.document == "iec-60947-2"]

    assert {row.evidence for row in annexes} == {"memory"}
    assert {row.evidence for row in TABLES["iec-61557-6/operating-uncertainties"].rows} == {
        "memory"
    }
