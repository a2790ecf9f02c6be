"""A calendar package reads what is written, as RFC 5545 has it."""

from __future__ import annotations

from datetime import date

import icalendar
import pytest
from hypothesis import given
from hypothesis import strategies as st

from checkers.judgement.years.calendar_text import Event, calendar_text

MADE = date(2026, 11, 24)
LINES = st.text(st.characters(blacklist_categories=("Cs", "Cc", "Zl", "Zp")), max_size=120)


def read(text: str) -> list[icalendar.Event]:
    """Return the events of a calendar text."""
    calendar = icalendar.Calendar.from_ical(text)
    return [one for one in calendar.walk("VEVENT") if isinstance(one, icalendar.Event)]


@given(LINES, st.lists(LINES, min_size=1, max_size=3))
def test_a_reader_gets_back_every_text(title: str, description: list[str]) -> None:
    """Commas, semicolons, backslashes, line ends and any script come back as they were."""
    written = Event(date(2027, 5, 20), title, "\n".join(description))

    (event,) = read(calendar_text([written], MADE))

    assert title == str(event["SUMMARY"])
    assert "\n".join(description).rstrip("\n") == str(event["DESCRIPTION"]).rstrip("\n")


@given(LINES)
def test_no_line_is_longer_than_75_octets(title: str) -> None:
    """RFC 5545, 3.1: lines of at most 75 octets, ended by CRLF, folded with a space."""
    text = calendar_text([Event(date(2027, 5, 20), title, title * 2)], MADE)

    lines = text.split("\r\n")
    assert lines[-1] == ""
    assert all(len(line.encode()) <= 75 for line in lines)
    assert "\n" not in text.replace("\r\n", "")


def test_a_reader_gets_day_stamp_and_repetition() -> None:
    """RFC 5545, 3.6.1 and 3.8.7.2: a whole-day event, stamped in UTC, with its own name."""
    events = [Event(date(2027, 5, 20), "one", ""), Event(date(2026, 11, 25), "two", "", daily=True)]

    first, second = read(calendar_text(events, MADE))

    assert first.decoded("DTSTART") == date(2027, 5, 20)
    assert first.decoded("DTSTAMP").isoformat() == "2026-11-24T00:00:00+00:00"
    assert first["UID"] != second["UID"]
    assert "RRULE" not in first
    assert b"RRULE:FREQ=DAILY" in second.to_ical()


def test_the_same_event_keeps_its_name_and_another_day_gets_another() -> None:
    """Imported twice it stays one event."""
    names = [
        read(calendar_text([Event(day, "one", "")], made))[0]["UID"]
        for day, made in (
            (date(2027, 5, 20), MADE),
            (date(2027, 5, 20), date(2026, 12, 1)),
            (date(2027, 5, 21), MADE),
        )
    ]

    assert names[0] == names[1] != names[2]


def test_nothing_due_is_no_calendar() -> None:
    """RFC 5545, 3.6: a calendar holds at least one component."""
    assert calendar_text([], MADE) == ""


@pytest.mark.parametrize("control", ["\x00", "\x07", "\x7f"])
def test_control_characters_are_left_out(control: str) -> None:
    """RFC 5545, 3.1 allows none of them in a text."""
    assert control not in calendar_text([Event(MADE, f"a{control}b", "")], MADE)
