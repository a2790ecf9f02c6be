"""Dates as iCalendar text, which calendar programs read.

Source: [1] RFC 5545, Internet Calendaring and Scheduling Core Object Specification (2009):
3.1 content lines and folding, 3.3.11 text, 3.6.1 events, 3.8.7.2 time stamp. [2] G. Fowler,
L. C. Noll, K.-P. Vo, the FNV-1a hash of 128 bits (from memory).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date

MOST_OCTETS = 75
FNV_START, FNV_PRIME, FNV_SIZE = 0x6C62272E07BB014262B821756295C58D, 2**88 + 0x13B, 2**128
LINE_END = "\r\n"
MAKER = "-//residual-current-checkers//over-the-years//EN"
HOST = "residual-current-checkers.invalid"


@dataclass(frozen=True, slots=True)
class Event:
    """A whole-day event; `daily` repeats it each day."""

    day: date
    title: str
    description: str
    daily: bool = False

    @property
    def identifier(self) -> str:
        """A name that no other event has, and that the same event always has."""
        text = f"{self.day.isoformat()}\n{self.title}\n{self.description}"
        return f"{_digest(text):032x}@{HOST}"


def calendar_text(events: Iterable[Event], made_on: date) -> str:
    """Return a calendar that holds some events, or nothing where there are none.

    Inputs: the events; the day the calendar is made, which is its time stamp at midnight UTC.
    """
    inner = [line for event in events for line in _event_lines(event, made_on)]
    if not inner:
        return ""
    head = ["BEGIN:VCALENDAR", "VERSION:2.0", f"PRODID:{MAKER}", "CALSCALE:GREGORIAN"]
    return "".join(folded(line) + LINE_END for line in (*head, *inner, "END:VCALENDAR"))


def escaped(text: str) -> str:
    """Return a text with what has a meaning in iCalendar escaped [1, 3.3.11]."""
    plain = text.replace("\\", "\\\\").replace(";", "\\;").replace(",", "\\,")
    return "\\n".join(_without_controls(line) for line in plain.splitlines())


def _digest(text: str) -> int:
    """Return a number that differs from text to text [2]; the browser's library has no hashes."""
    value = FNV_START
    for octet in text.encode():
        value = (value ^ octet) * FNV_PRIME % FNV_SIZE
    return value


def _without_controls(line: str) -> str:
    """Return a line without the control characters that iCalendar does not allow [1, 3.1]."""
    return "".join(one for one in line if one >= " " and one != "\x7f")


def folded(line: str) -> str:
    """Return a line folded after at most 75 octets, never inside a character [1, 3.1]."""
    return f"{LINE_END} ".join(_pieces(line))


def _pieces(line: str) -> Iterator[str]:
    piece, octets, room = "", 0, MOST_OCTETS
    for character in line:
        size = len(character.encode())
        if octets + size > room:
            yield piece
            piece, octets, room = "", 0, MOST_OCTETS - 1
        piece, octets = piece + character, octets + size
    yield piece


def _event_lines(event: Event, made_on: date) -> list[str]:
    return [
        "BEGIN:VEVENT",
        f"UID:{event.identifier}",
        f"DTSTAMP:{made_on:%Y%m%d}T000000Z",
        f"DTSTART;VALUE=DATE:{event.day:%Y%m%d}",
        *(["RRULE:FREQ=DAILY"] if event.daily else []),
        f"SUMMARY:{escaped(event.title)}",
        f"DESCRIPTION:{escaped(event.description)}",
        "TRANSP:TRANSPARENT",
        "END:VEVENT",
    ]
