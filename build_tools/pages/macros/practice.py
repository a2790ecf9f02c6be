"""The page for practice: what a learner may do, and what may be answered on each level."""

from __future__ import annotations

import json
from collections.abc import Mapping

from build_tools.pages.far_days import far_days
from build_tools.pages.forms import form_fields
from build_tools.pages.limits import documents
from build_tools.pages.rendering import html
from checkers.catalogue.practice import CHECKER, OUTCOMES, UNKNOWN, Inputs
from checkers.domain.causes import ACTIONS, CAUSES
from checkers.domain.inputs.fields import inputs_of
from checkers.domain.sources.documents import SOURCES
from checkers.judgement.practice.drills import DRILLS, Thing

WHOSE = ("code", "on")
STEPS = {
    "limits": "Do the readings so far meet their limits?",
    "cause": "What is behind it?",
    "action": "What do you do about it?",
}
HINTS = {
    "limits": "Hint: which limits apply",
    "cause": "Hint: what is still open",
    "action": "Hint: what it means",
}


def practice_macro(_: str, root: str) -> str:
    """Show the place where a learner practises, on the reader's own device."""
    return html(
        "macros/practice.html",
        checker=CHECKER,
        level=_fields("level"),
        number=_fields("seed"),
        whose=_fields(*WHOSE),
        groups=groups(),
        steps=[_step(key, words) for key, words in STEPS.items()],
        tables=json.dumps(table_pages(), ensure_ascii=False),
        asking=levels_that_ask("cause"),
        far=far_days(),
        root=root,
    )


def _fields(*shown: str) -> str:
    hidden = [one.name for one in inputs_of(Inputs) if one.name not in shown]
    return form_fields(Inputs, CHECKER.slug, leave_out=hidden)


def groups() -> dict[str, list[Thing]]:
    """Return what may be done, by where it is done and with which loads."""
    found: dict[str, list[Thing]] = {}
    for thing in DRILLS.things.values():
        found.setdefault(_group(thing), []).append(thing)
    return found


def _group(thing: Thing) -> str:
    if thing.look:
        return "Look and measure"
    if thing.place == "device":
        return "Test at the device itself"
    return "Test with the loads on" if thing.loads == "on" else "Test with the loads off"


def levels_that_ask(about: str) -> str:
    """Return the numbers of the levels that ask about something, as the page compares them."""
    return " ".join(str(level.number) for level in DRILLS.levels if about in level.asks)


def _step(key: str, words: str) -> Mapping[str, object]:
    return {
        "key": key,
        "words": words,
        "hint": HINTS[key],
        "levels": levels_that_ask(key),
        "choices": choices()[key],
        "unknown": UNKNOWN,
    }


def choices() -> dict[str, list[tuple[str, str, str]]]:
    """Return what may be answered in each step: its key, its words, and on which levels."""
    every = levels_that_ask("limits")
    return {
        "limits": [(key, words, every) for key, words in OUTCOMES if key != UNKNOWN[0]],
        "cause": [(key, one.name, _where(key, "causes")) for key, one in CAUSES.items()],
        "action": [(key, words, _where(key, "actions")) for key, words in ACTIONS.items()],
    }


def _where(key: str, among: str) -> str:
    asking = (level for level in DRILLS.levels if "cause" in level.asks)
    return " ".join(str(level.number) for level in asking if key in getattr(level, among))


def table_pages() -> dict[str, str]:
    """Return the page of each document that has limit tables, by how the document is cited."""
    return {SOURCES[key].designation: f"limits/{key}/" for key in documents()}
