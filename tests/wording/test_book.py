"""The book of words is whole, and refuses a file that is not."""

from __future__ import annotations

from pathlib import Path
from string import Formatter
from typing import Any

import pytest

from checkers.domain.errors import DataError
from checkers.wording.book import load_room, part, room, rooms, words_of

SENTENCE = {"says": "It held at {current}.", "cites": "always"}


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        ({"finding": {"held": {"says": "It held."}}}, "cites"),
        ({"finding": {"held": SENTENCE | {"says": ""}}}, "says"),
        ({"finding": {"held": SENTENCE | {"cites": "often"}}}, "often"),
        ({"finding": {"held": SENTENCE | {"say": "twice"}}}, "say"),
        ({"finding": {"held": "It held."}}, "held"),
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
    """Every code and every part is named somewhere in the package."""
    package = Path(__file__).parents[2] / "checkers"
    code = "\n".join(path.read_text(encoding="utf-8") for path in package.rglob("*.py"))
    kept = [name for one in rooms() for name in (*room(one).findings, *room(one).parts)]
    assert [name for name in kept if name not in code] == []


def test_words_are_found_by_their_code() -> None:
    """The room comes first, and the facts stand where they are named."""
    assert words_of("reading.held").says.startswith("It held at {current}")
    assert part("reading.at-current", current="30 mA") == " at 30 mA"
    with pytest.raises(KeyError):
        words_of("reading.no-such-code")
