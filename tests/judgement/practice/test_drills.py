"""The drills: read strictly, every word known."""

from __future__ import annotations

from collections.abc import Callable
from copy import deepcopy
from typing import Any

import pytest

from checkers.domain.causes import CAUSES
from checkers.domain.errors import DataError
from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.judgement.practice.drills import DRILLS, FILE, load_drills

TEXT = read_toml(data_folder() / FILE, FILE)


def test_every_cause_has_something_that_tells_it() -> None:
    """No cause can be asked for that nothing shows."""
    assert set(CAUSES) == set(DRILLS.told_by)


def test_every_cause_is_met_on_some_level() -> None:
    """A learner can meet all that explain knows."""
    assert set(CAUSES) == {cause for level in DRILLS.levels for cause in level.causes}


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (lambda text: text["do"]["ramp"].update(look="dc"), "either a test or a look"),
        (lambda text: text["do"]["ramp"].pop("test"), "either a test or a look"),
        (lambda text: text["do"]["ramp"].update(speed=3), "unknown key"),
        (lambda text: text["told_by"].pop("button-failed"), "button-failed"),
        (lambda text: text["told_by"].update({"button-failed": ["hammer"]}), "button-failed"),
        (lambda text: text["level"][0].update(causes=["ghosts"]), "ghosts"),
        (lambda text: text["level"][0].update(given=["hammer"]), "hammer"),
        (lambda text: text["level"][0].pop("sound_share"), "sound_share"),
        (lambda text: text["level"][0].update(causes=["in-good-order"]), "at least one other"),
        (lambda text: text["do"]["ramp"].update(waveform="square"), "square"),
        (lambda text: text["scene"][0].update(supply="wind"), "wind"),
        (lambda text: text.pop("level"), "needs scenes and levels"),
    ],
)
def test_a_broken_file_is_refused_by_name(
    change: Callable[[dict[str, Any]], object], words: str
) -> None:
    """File, row and fault are named."""
    text = deepcopy(TEXT)
    change(text)

    with pytest.raises(DataError, match=words) as refused:
        load_drills(text, FILE)

    assert refused.value.file == FILE
