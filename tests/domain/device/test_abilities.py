"""What a form of device can do stands in one table, and nothing else decides it."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from checkers.domain.device.abilities import Ability, load_abilities
from checkers.domain.device.device import ABILITIES, Form
from checkers.domain.errors import DataError
from checkers.judgement.electrode.findings import DO_NOT_PROTECT
from checkers.judgement.equipment.device_fit import NOT_JUDGED
from checkers.judgement.equipment.fault_fit import NOT_PROTECTIVE

PACKAGE = Path(__file__).parents[3] / "checkers"
FORMS = [form.value for form in Form]
WHOLE: dict[str, Any] = {form: {"abilities": ["opens"]} for form in FORMS}


@pytest.mark.parametrize(
    "wrong",
    [
        {**WHOLE, "fuse": {"abilities": ["opens"]}},
        {**WHOLE, "rccb": {"abilities": ["sings"]}},
        {**WHOLE, "rccb": {"abilities": []}},
        {**WHOLE, "rccb": {}},
        {**WHOLE, "rccb": {"abilities": ["opens"], "colour": "white"}},
        {form: abilities for form, abilities in WHOLE.items() if form != "monitor"},
    ],
    ids=["unknown form", "unknown ability", "empty", "nothing said", "unknown key", "left out"],
)
def test_a_table_that_is_not_whole_is_refused(wrong: dict[str, Any]) -> None:
    """The file is named in the complaint."""
    with pytest.raises(DataError, match="here"):
        load_abilities(wrong, "here", FORMS)


def test_only_what_opens_protects() -> None:
    """A device that warns is never taken for one that disconnects; 6 mA detection only helps."""
    protecting = {form for form, able in ABILITIES.items() if Ability.PROTECTS in able}
    opening = {form for form, able in ABILITIES.items() if Ability.OPENS in able}

    assert protecting == opening - {Form.RDC_DD}
    assert opening == set(FORMS) - {Form.MONITOR}


def test_every_form_that_does_not_protect_has_words_for_it() -> None:
    """Else it would be judged as protection, or end in a crash."""
    helping = {form for form, able in ABILITIES.items() if Ability.PROTECTS not in able}

    assert set(NOT_PROTECTIVE) == set(NOT_JUDGED) == set(DO_NOT_PROTECT) == helping


def _is_of_enum(node: ast.AST) -> bool:
    """Tell whether an expression is Form.RCCB or a brother of it."""
    of_name = isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name)
    return of_name and ast.unparse(node).startswith("Form.")


def _is_word(node: ast.AST) -> bool:
    return isinstance(node, ast.Constant) and node.value in FORMS


def deciding_by_form(source: str) -> Iterator[int]:
    """Yield the lines of a module that compare with a form, or gather forms in a set.

    One word alone in a set is let pass: portable is a word for equipment, too.
    """
    yield from (
        node.lineno
        for node in ast.walk(ast.parse(source))
        if isinstance(node, ast.expr | ast.MatchValue) and _decides(node)
    )


def _decides(node: ast.expr | ast.MatchValue) -> bool:
    if isinstance(node, ast.Compare | ast.MatchValue):
        return any(_is_of_enum(one) or _is_word(one) for one in ast.walk(node))
    if isinstance(node, ast.Set | ast.List | ast.Tuple):
        return any(map(_is_of_enum, node.elts)) or sum(map(_is_word, node.elts)) > 1
    return False


@pytest.mark.parametrize(
    "source",
    [
        "if device.form == Form.RCCB: pass",
        "if device.form in ('gfci', 'rdc-dd'): pass",
        "if device.form != 'monitor': pass",
        "PLAIN = frozenset({Form.RCCB, Form.RCBO})",
        "PLAIN = ('rccb', 'rcbo')",
        "match device.form:\n    case Form.CBR: pass",
    ],
)
def test_a_decision_by_form_is_seen(source: str) -> None:
    """In every way that Python can compare, so that the walk below is no empty one."""
    assert list(deciding_by_form(source))


def test_no_module_decides_by_the_name_of_a_form() -> None:
    """They ask for the ability that they mean, and a new form is one row of a table."""
    found = {
        str(path.relative_to(PACKAGE)): lines
        for path in PACKAGE.rglob("*.py")
        if (lines := list(deciding_by_form(path.read_text(encoding="utf-8"))))
    }

    assert found == {}
