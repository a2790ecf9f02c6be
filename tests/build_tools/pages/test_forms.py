"""A form follows from a checker's declared inputs, for every kind of field and every checker."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from html.parser import HTMLParser
from typing import Any

import pytest

from build_tools.pages.forms import ENTRY, form_fields
from build_tools.pages.rendering import TEMPLATES
from checkers.catalogue import CHECKERS
from checkers.domain.checker import Checker
from checkers.domain.inputs.fields import (
    Input,
    Kind,
    choice,
    inputs_of,
    many,
    quantity,
    text,
    yes_no,
)

FORM_TEMPLATES = TEMPLATES / "form"


class Ids(HTMLParser):
    """Collects what a form refers to: ids, labels' targets, descriptions, names of parts."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.ids: list[str] = []
        self.targets: list[str] = []
        self.descriptions: list[str] = []
        self.parts: list[str] = []
        self.choices: list[str] = []
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Take down what a tag refers to."""
        given = {name: value or "" for name, value in attrs}
        self.ids += [given["id"]] if "id" in given else []
        self.targets += [given["for"]] if "for" in given else []
        self.descriptions += given.get("aria-describedby", "").split()
        for kind in ("data-field", "data-group", "data-many"):
            self.parts += [given[kind]] if kind in given else []
        if tag == "option" or given.get("type") == "radio":
            self.choices.append(given["value"])


@dataclass(frozen=True)
class Lamp:
    """An entry of a list."""

    power: float | None = quantity("residual_current", default=None)
    note: str = text("Note", most=20)


@dataclass(frozen=True)
class Room:
    """Inputs with a bit of everything that is awkward."""

    colour: str = choice((("r", "<red>"), ("g", "green: as grass")), "Colour", default="g")
    lit: bool | None = yes_no("Lit")
    lamps: tuple[Lamp, ...] = many(Lamp, "Lamps", each="Lamp", most=3)


def _every_input(kind: type[Any]) -> Iterator[Input]:
    for one in inputs_of(kind):
        yield one
        if one.spec.group is not None:
            yield from _every_input(one.spec.group)


def test_every_kind_of_field_has_a_template() -> None:
    """No kind of field is without a template."""
    assert [kind for kind in Kind if not (FORM_TEMPLATES / f"{kind}.html").is_file()] == []


@pytest.mark.parametrize("checker", CHECKERS, ids=lambda checker: checker.slug)
def test_every_input_of_a_checker_is_in_its_form(checker: Checker) -> None:
    """Each declared field is one part of the form, and every choice can be chosen."""
    form = Ids(form_fields(checker.inputs, checker.slug))
    declared = list(_every_input(checker.inputs))

    assert sorted(one.name for one in declared) == sorted(form.parts)
    wanted = {choice.value for one in declared for choice in one.spec.choices}
    assert wanted <= set(form.choices)


@pytest.mark.parametrize("checker", CHECKERS, ids=lambda checker: checker.slug)
def test_a_form_refers_only_to_what_is_there(checker: Checker) -> None:
    """Ids are unique, and every label and description points to one of them."""
    form = Ids(form_fields(checker.inputs, checker.slug))

    assert len(form.ids) == len(set(form.ids))
    assert set(form.targets) <= set(form.ids)
    assert set(form.descriptions) <= set(form.ids)


def test_words_are_escaped() -> None:
    """A label with a sign of HTML in it stays text."""
    page = form_fields(Room, "room")

    assert "&lt;red&gt;" in page
    assert "<red>" not in page


def test_the_default_is_chosen_and_not_said_can_be_said() -> None:
    """A choice starts at its default; a yes or no that has none starts at not said."""
    page = form_fields(Room, "room")

    assert 'value="g" checked' in page
    assert 'value="" checked' in page
    assert "not said" in page


def test_an_entry_carries_the_mark_that_the_page_replaces() -> None:
    """Fields of a list's entry have ids that become unique when an entry is added."""
    page = form_fields(Room, "room")

    assert f'id="room-lamps{ENTRY}.power"' in page
    assert 'data-most="3"' in page


def test_a_unit_stands_beside_its_field_and_brings_up_digits() -> None:
    """A quantity asks a phone for its decimal keys and shows its unit."""
    page = form_fields(Lamp, "lamp")

    assert 'inputmode="decimal"' in page
    assert ">mA</span>" in page


def test_an_entry_of_a_list_is_named_as_one() -> None:
    """Its legend and its button for removal say Lamp 1, not Lamps 1."""
    page = str(form_fields(Room, "room"))

    assert '<legend class="unseen">Lamp <span data-number>' in page
    assert "Remove Lamp <span data-number>" in page
