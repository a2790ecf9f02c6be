"""The causes: read strictly, with sources for what is common."""

from __future__ import annotations

from collections.abc import Callable
from copy import deepcopy
from typing import Any

import pytest

from checkers.domain.causes import (
    ACTIONS,
    CAUSES,
    FILE,
    NO_REMEDY,
    REMAINDER,
    SAFETY_FIRST,
    load_causes,
)
from checkers.domain.device.device import DeviceType
from checkers.domain.errors import DataError
from checkers.domain.tables.data_files import data_folder, read_toml

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
        assert cause.do_next.removeprefix(SAFETY_FIRST).strip() == ACTIONS[cause.action]
        assert cause.why


@pytest.mark.parametrize("code", [code for code, cause in CAUSES.items() if cause.danger])
def test_a_dangerous_cause_says_first_to_take_the_circuit_out_of_use(code: str) -> None:
    """Out of use, made safe, told in writing: before anything else, for each of its remedies."""
    cause = CAUSES[code]
    for action in (cause.action, *cause.also):
        first, _, remedy = cause.in_words(action).partition(". ")

        assert all(word in first for word in ("First", "out of use", "make it safe", "in writing"))
        assert remedy == ACTIONS[action]


def test_a_cause_without_danger_does_not_take_anything_out_of_use() -> None:
    """Where nobody is without protection the remedy stands alone."""
    assert CAUSES[REMAINDER].do_next == ACTIONS["nothing"]
    assert not any(
        cause.do_next.startswith(SAFETY_FIRST) for cause in CAUSES.values() if not cause.danger
    )


def test_operating_a_device_until_it_is_quick_is_no_remedy() -> None:
    """In a fault there is one operation, the first: a device that failed it is replaced."""
    slow = CAUSES["slow-mechanism"]

    assert (slow.action, slow.also, slow.tempting) == ("replace", (), ("exercise",))
    assert "first operation that failed stands" in NO_REMEDY["exercise"]
    assert not any("exercise" in (one.action, *one.also) for one in CAUSES.values())


def test_the_test_leads_are_both_on_the_load_side() -> None:
    """The test current must pass the core once, and nothing else may feed the instrument."""
    words = CAUSES["timer-ran-on"].do_next

    for part in ("both on the load side", "earth lead to the protective conductor", "other supply"):
        assert part in words


def test_a_dead_button_is_measured_before_the_device_is_blamed() -> None:
    """Common practice: on fewer poles than it has, its button may lie between dead ones."""
    assert "diagram" in CAUSES["button-failed"].do_next
    assert "voltage" in CAUSES["button-failed"].do_next


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
        (lambda text: text.pop("safety"), "needs a table"),
        (lambda text: text["safety"].clear(), "safety asks for first"),
        (lambda text: text["cause"]["slow-mechanism"].update(also=["exercise"]), "no_remedy"),
        (lambda text: text["cause"]["slow-mechanism"].update(tempting=["replace"]), "no_remedy"),
    ],
)
def test_a_broken_file_is_refused_by_name(
    change: Callable[[dict[str, Any]], object], words: str
) -> None:
    """File, row and fault are named."""
    with pytest.raises(DataError, match=words) as refused:
        load_causes(changed(change), FILE)

    assert refused.value.file == FILE
