"""What could be done next: read strictly."""

from __future__ import annotations

from collections.abc import Callable
from copy import deepcopy
from typing import Any

import pytest

from checkers.domain.device.inspection import STRANGE
from checkers.domain.errors import DataError
from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.judgement.inference.candidates import CANDIDATES, FILE, load_candidates
from checkers.judgement.inference.observables import PREDICATES

TEXT = read_toml(data_folder() / FILE, FILE)


def test_everything_to_look_at_is_known_to_the_model_and_to_the_form() -> None:
    """What is proposed can be answered: clamps with the circuit, the rest as looked at."""
    proposed = {one.what for one in CANDIDATES.observations}

    assert proposed == set(PREDICATES)
    assert proposed - {"dc", "leakage"} == set(STRANGE)


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (lambda text: text.pop("observation"), "needs a table"),
        (lambda text: text["observation"].update(error=0.7), "below a half"),
        (lambda text: text["reading"][0].update(test="smell"), "smell"),
        (lambda text: text["reading"][0].update(place="moon"), "moon"),
        (lambda text: text["observation_of"][0].update(what="aura"), "aura"),
        (lambda text: text["watch"][0].pop("own"), "needs 'own'"),
        (lambda text: text["watch"][0].update(colour="red"), "unknown key"),
    ],
)
def test_a_broken_file_is_refused_by_name(
    change: Callable[[dict[str, Any]], object], words: str
) -> None:
    """File, row and fault are named."""
    text = deepcopy(TEXT)
    change(text)

    with pytest.raises(DataError, match=words) as refused:
        load_candidates(text, FILE)

    assert refused.value.file == FILE
