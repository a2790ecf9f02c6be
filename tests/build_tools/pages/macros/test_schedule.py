"""What the page for a schedule offers is what the program understands."""

from __future__ import annotations

import json
import re
from html import unescape

import pytest

from build_tools.pages.macros.schedule import meanings, schedule_macro
from checkers.judgement.schedule.headings.headings import NOTHING, meaning_of


@pytest.mark.parametrize("words", meanings())
def test_a_meaning_that_is_offered_is_understood(words: str) -> None:
    """It is read back as the same, with nothing to ask."""
    assert str(meaning_of(words)) == words
    assert meaning_of(words).is_sure
    assert meaning_of(words) != NOTHING


def test_the_page_asks_for_everything_but_what_the_file_tells() -> None:
    """Code, day, device and circuit are in its form; text and columns are asked for elsewhere."""
    page = str(schedule_macro("", "../"))
    fields = set(re.findall(r'data-(?:field|group|many)="([a-z_]+)"', page))

    assert {"code", "on", "device", "rated_residual_current", "waveform", "n_t"} <= fields
    assert not {"text", "mapping"} & fields


def test_the_meanings_stand_on_the_page() -> None:
    """The page's script reads them from there."""
    page = str(schedule_macro("", "../"))
    found = re.search(r'data-meanings="([^"]*)"', page)

    assert found is not None
    assert json.loads(unescape(found[1])) == meanings()
