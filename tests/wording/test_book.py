"""The book of words is whole, and refuses a file that is not."""

from __future__ import annotations

import ast
import tomllib
from collections.abc import Iterator
from pathlib import Path
from string import Formatter
from typing import Any

import pytest

from checkers.domain.errors import DataError
from checkers.wording.book import load_room, part, room, rooms, words_of

PACKAGE = Path(__file__).parents[2] / "checkers"
SENTENCE = {"says": "It held at {current}.", "cites": "always"}


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        ({"finding": {"held": {"says": "It held."}}}, "cites"),
        ({"finding": {"held": SENTENCE | {"says": ""}}}, "says"),
        ({"finding": {"held": SENTENCE | {"cites": "often"}}}, "often"),
        ({"finding": {"held": SENTENCE | {"say": "twice"}}}, "say"),
        ({"finding": {"held": "It held."}}, "held"),
        ({"finding": {"held": SENTENCE | {"remedy": "repeat"}}}, "repeat"),
        (
            {
                "finding": {"held": SENTENCE | {"remedy": "repeat", "do_next": "Repeat."}},
                "part": {"repeat": "Repeat."},
            },
            "do_next",
        ),
        ({"part": {"no-trip": 3}}, "no-trip"),
        ({"findings": {}}, "findings"),
    ],
)
def test_a_file_that_is_not_whole_is_refused(text: dict[str, Any], problem: str) -> None:
    """One line names the file and what is wrong with it."""
    with pytest.raises(DataError, match=problem):
        load_room(text, "words/reading.toml")


def test_every_room_is_whole() -> None:
    """Every template of every room can be filled in: its braces close, its facts have names."""
    names = sorted(rooms())
    assert names
    for name in names:
        found = room(name)
        assert found.findings or found.parts
        for words in found.findings.values():
            _check_templates(words.says, words.about, words.do_next)
        _check_templates(*found.parts.values())


def _check_templates(*templates: str) -> None:
    for template in templates:
        facts = [name for _, name, _, _ in Formatter().parse(template) if name is not None]
        assert all(name.isidentifier() for name in facts), template


def test_no_word_is_kept_that_nobody_says() -> None:
    """Each code and part is named whole, or in a folder that puts its room before it."""
    folders = {path.parent for path in PACKAGE.rglob("*.py")}
    texts = [{text for path in one.glob("*.py") for text in _texts(path)} for one in folders]
    unsaid = [
        f"{one}.{name}"
        for one in rooms()
        for name in _names(one)
        if not any(_is_said(one, name, within) for within in texts)
    ]
    assert unsaid == []


def _texts(path: Path) -> Iterator[str]:
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            yield node.value


def _names(name: str) -> set[str]:
    """Return what the code has to name: remedies are named by the findings beside them."""
    remedies = {one.get("remedy") for one in _raw(name).get("finding", {}).values()}
    return {*room(name).findings, *room(name).parts} - remedies


def _raw(name: str) -> dict[str, Any]:
    return tomllib.loads((PACKAGE / "data" / "words" / f"{name}.toml").read_text(encoding="utf-8"))


def _is_said(name: str, code: str, texts: set[str]) -> bool:
    puts_room_before = any(text.startswith(f"{name}.") for text in texts)
    return f"{name}.{code}" in texts or (puts_room_before and code in texts)


@pytest.mark.parametrize("name", sorted(rooms()))
def test_what_several_findings_ask_for_stands_once(name: str) -> None:
    """It is a part, and each of them names it as its remedy."""
    found = _raw(name)
    asked = [one["do_next"] for one in found.get("finding", {}).values() if "do_next" in one]
    sentences = [*asked, *found.get("part", {}).values()]
    assert sorted(set(sentences)) == sorted(sentences)


def test_words_are_found_by_their_code() -> None:
    """The room comes first, and the facts stand where they are named."""
    assert words_of("reading.held").says.startswith("It held at {current}")
    assert part("reading.at-current", current="30 mA") == " at 30 mA"
    with pytest.raises(KeyError):
        words_of("reading.no-such-code")
