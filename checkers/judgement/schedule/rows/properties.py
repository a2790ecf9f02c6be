"""From the cells of a row to what is known of its device and circuit."""

from __future__ import annotations

from collections.abc import Callable

from checkers.domain.quantities.quantity import format_number, parse_quantity
from checkers.domain.quantities.typed_numbers import NotAQuantity, is_bare
from checkers.domain.sources.documents import recognise
from checkers.domain.tables.glossary import QUANTITIES, UNITS
from checkers.judgement.schedule.cells.cell_words import is_word
from checkers.judgement.schedule.cells.descriptions import Description, describe
from checkers.judgement.schedule.file.layout import Column
from checkers.judgement.schedule.headings.normal_form import plain
from checkers.judgement.schedule.headings.vocabulary import VOCABULARY
from checkers.judgement.schedule.rows.entry import Entry
from checkers.wording.book import part

MOST_BY_HEADING_ALONE = 3000.0


def read_device(cell: str, column: Column, entry: Entry) -> None:
    """Read a cell that names or describes a device."""
    found = describe(cell)
    _take(found, cell, column, entry)
    if not entry.label:
        entry.label, entry.is_identified = found.label, found.is_identifier


def read_label(cell: str, column: Column, entry: Entry) -> None:
    """Read a cell that names one device, whatever it looks like."""
    _take(describe(cell), cell, column, entry)
    entry.label, entry.is_identified = cell, True


def _take(found: Description, cell: str, column: Column, entry: Entry) -> None:
    for question in found.questions.values():
        entry.note_problem(column.name, cell, question)
    heading = column.name
    entry.names_a_device |= found.is_residual
    entry.note_property("type", _only(found.types), heading)
    entry.note_property("rated_residual_current", _milliamps(found.rated), heading)
    entry.note_property("delay", _only(found.delays), heading)
    entry.note_property("form", found.form, heading)
    entry.note_property("made_to", found.made_to, heading)


def _only(values: list[str]) -> str:
    return values[0] if len(values) == 1 else ""


def _milliamps(values: list[float]) -> str:
    return f"{format_number(values[0], 6)} mA" if len(values) == 1 else ""


def read_type(cell: str, column: Column, entry: Entry) -> None:
    """Read a cell under a heading of types."""
    found = describe(cell, of_type=True, sure_of_b=column.meaning.kind == "type")
    _take(found, cell, column, entry)
    if column.meaning.kind == "type" and found.label:
        entry.note_problem(column.name, cell, part("schedule.not-a-type"))


def read_rated(cell: str, column: Column, entry: Entry) -> None:
    """Read a rated residual current; a bare 0.03 under a heading without a unit is in A."""
    if is_bare(cell):
        _bare_rated(cell, column, entry)
        return
    found = describe(cell)
    _take(found, cell, column, entry)
    if not found.rated:
        entry.note_problem(column.name, cell, part("schedule.no-current"))


def _bare_rated(cell: str, column: Column, entry: Entry) -> None:
    unit = column.meaning.unit
    tries = [unit] if unit else ["mA", "A"]
    for one in tries:
        try:
            value = parse_quantity(f"{cell} {one}", "rated_residual_current")
        except NotAQuantity:
            continue
        if one == "A" and value > MOST_BY_HEADING_ALONE:
            continue
        entry.note_property("rated_residual_current", _milliamps([value]), column.name)
        return
    code = "no-rated-current-in" if unit else "no-rated-current"
    entry.note_problem(column.name, cell, part(f"schedule.{code}", unit=unit))


def read_rating(cell: str, column: Column, entry: Entry) -> None:
    """Read a rating of which the heading does not say whether it is residual."""
    found = describe(cell)
    if found.rated:
        _take(found, cell, column, entry)
    elif is_bare(cell):
        entry.note_problem(column.name, cell, part("schedule.which-rating"))


def read_delay(cell: str, column: Column, entry: Entry) -> None:
    """Read a delay: a class, or a time."""
    delay = VOCABULARY.delay.get(plain(cell)) or _delay_time(cell, column.meaning.unit)
    if delay:
        entry.note_property("delay", delay, column.name)
    else:
        entry.note_problem(column.name, cell, part("schedule.not-a-delay"))


def _delay_time(cell: str, unit: str) -> str:
    text = f"{cell} {unit}" if unit and is_bare(cell) else cell
    try:
        return f"{format_number(parse_quantity(text, 'delay'), 6)} ms"
    except NotAQuantity:
        return ""


def read_form(cell: str, column: Column, entry: Entry) -> None:
    """Read the form of a device."""
    form = VOCABULARY.form.get(plain(cell), "")
    if form:
        entry.note_property("form", form, column.name)
    elif plain(cell) not in VOCABULARY.no_device:
        entry.note_problem(column.name, cell, part("schedule.not-a-form"))


def read_standard(cell: str, column: Column, entry: Entry) -> None:
    """Read the product standard that a device is made to, which also tells its form."""
    document = recognise(cell) or describe(cell).made_to
    if document:
        entry.note_property("made_to", document, column.name)
        entry.note_property("form", VOCABULARY.form_of_standard.get(document, ""), column.name)
    elif plain(cell) not in VOCABULARY.no_device and not describe(cell).no_device:
        entry.note_problem(column.name, cell, part("schedule.not-a-standard"))


def read_loads(cell: str, column: Column, entry: Entry) -> None:
    """Read whether the loads were connected."""
    for state in ("off", "on"):
        if is_word(cell, f"loads-{state}"):
            entry.circuit["loads"] = state
            return
    entry.note_problem(column.name, cell, part("schedule.loads-not-told"))


def read_seen_to_open(cell: str, column: Column, entry: Entry) -> None:
    """Read whether the device was seen to open."""
    for answer, meaning in (("yes", "operates"), ("no", "does-not-operate")):
        if is_word(cell, meaning):
            entry.circuit["seen_to_open"] = answer
            return
    entry.note_problem(column.name, cell, part("schedule.neither-yes-nor-no"))


def read_current(cell: str, column: Column, entry: Entry) -> None:
    """Read a smooth DC residual current, or a standing leakage."""
    unit = column.meaning.unit or QUANTITIES[column.meaning.kind].unit
    text = f"{cell} {unit}" if is_bare(cell) and unit in UNITS else cell
    try:
        value = parse_quantity(text, column.meaning.kind)
    except NotAQuantity as bad:
        entry.note_problem(column.name, cell, str(bad))
        return
    entry.circuit[column.meaning.kind] = f"{format_number(value, 9)} mA"


READERS: dict[str, Callable[[str, Column, Entry], None]] = {
    "device": read_device,
    "device_label": read_label,
    "type": read_type,
    "plain_type": read_type,
    "rated": read_rated,
    "rating": read_rating,
    "delay": read_delay,
    "form": read_form,
    "made_to": read_standard,
    "loads": read_loads,
    "seen_to_open": read_seen_to_open,
    "dc_residual": read_current,
    "standing_leakage": read_current,
}
