"""The causes: read strictly, with sources for what is common."""

from __future__ import annotations

from collections.abc import Callable
from copy import deepcopy
from typing import Any

import pytest

from checkers.domain.causes import ACTIONS, CAUSES, FILE, REMAINDER, load_causes
from checkers.domain.data_files import data_folder, read_toml
from checkers.domain.devices import DeviceType
from checkers.domain.errors import DataError

TEXT = read_toml(data_folder() / FILE, FILE)
NOT_SAID = frozenset({DeviceType.UNKNOWN})


def changed(change: Callable[[dict[str, Any]], object]) -> dict[str, Any]:
    """Return the file's content, changed."""
    text = deepcopy(TEXT)
    change(text)
    return text


def test_every_cause_has_its_words_and_a_known_action() -> None:
    """A practitioner can act on each of them."""
    for cause in CAUSES.values():
        assert cause.name
        assert cause.means.endswith(".")
        assert cause.do_next in ACTIONS.values()
        assert cause.why


def test_every_prior_says_where_it_comes_from() -> None:
    """Only what the others leave has no source of its own."""
    assert [code for code, cause in CAUSES.items() if cause.citation is None] == [REMAINDER]


@pytest.mark.parametrize("code", ["blinded-by-dc", "type-too-low"])
def test_the_more_dc_a_type_bears_the_rarer_its_dc_causes(code: str) -> None:
    """Type AC before A, A before F, F before B."""
    shares = [CAUSES[code].prior_for(kind) for kind in DeviceType if kind not in NOT_SAID]

    assert shares == sorted(shares, reverse=True)


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (lambda text: text["cause"]["button-failed"].update(prior=1.5), "share from 0 to 1"),
        (lambda text: text["cause"]["button-failed"].pop("prior"), "share from 0 to 1"),
        (lambda text: text["cause"]["button-failed"].update(action="hammer"), "hammer"),
        (lambda text: text["cause"]["button-failed"].update(colour="red"), "unknown key"),
        (lambda text: text["cause"]["button-failed"].update(document="hearsay"), "hearsay"),
        (lambda text: text["cause"]["button-failed"].update(prior=0.9), "leave nothing"),
        (lambda text: text["cause"][REMAINDER].pop("remainder"), "needs 'prior'"),
        (lambda text: text["cause"].pop(REMAINDER), "exactly one cause"),
        (lambda text: text.pop("stated"), "needs a table"),
    ],
)
def test_a_broken_file_is_refused_by_name(
    change: Callable[[dict[str, Any]], object], words: str
) -> None:
    """File, row and fault are named."""
    with pytest.raises(DataError, match=words) as refused:
        load_causes(changed(change), FILE)

    assert refused.value.file == FILE
