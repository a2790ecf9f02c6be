"""The browser's library holds what can be reached, and says no where that would break something."""

from __future__ import annotations

import ast

import pytest

from build_tools.files.archives import read_archive
from build_tools.runtime.assembly import LIBRARY as LIBRARY_FILE
from build_tools.runtime.npm_package import PYODIDE
from build_tools.runtime.standard_library import Choices, modules_of, read_choices, shims, trimmed

LIBRARY = {
    "re/__init__.py": b"import enum",
    "enum.py": b"",
    "pdb.py": b"",
    "calendar.py": b"def f():\n    import locale",
    "locale.py": b"",
    "re/py.typed": b"",
    "notes.txt": b"",
}


def own(source: bytes) -> dict[str, tuple[bytes, bool]]:
    """Give a package of one module."""
    return modules_of({"checkers/__init__.py": source})


def test_what_our_package_reaches_stays_and_the_rest_goes() -> None:
    """A late import of the library's own is followed; what is no module stays with its package."""
    kept = trimmed(LIBRARY, own(b"import calendar"), Choices(("checkers",), (), {}))

    assert set(kept) == {"calendar.py", "locale.py"}


def test_further_roots_stay_too() -> None:
    """For what the runtime loads by name."""
    kept = trimmed(LIBRARY, own(b""), Choices(("checkers", "re"), (), {}))

    assert set(kept) == {"re/__init__.py", "re/py.typed", "enum.py"}


def test_our_package_may_not_import_what_is_left_out() -> None:
    """Better no build than a visitor's error."""
    with pytest.raises(ValueError, match=r"checkers imports \['pdb'\]"):
        trimmed(
            LIBRARY, own(b"def f():\n    import pdb"), Choices(("checkers",), (), {"pdb": "a tool"})
        )


def test_our_package_may_import_what_the_runtime_carries_in_itself() -> None:
    """No copy of it is needed."""
    kept = trimmed(LIBRARY, own(b"import enum"), Choices(("checkers",), ("enum",), {}))

    assert set(kept) == set()


def test_leaving_out_what_is_not_there_is_an_error() -> None:
    """A slip in the list is found."""
    with pytest.raises(ValueError, match="pbd"):
        trimmed(LIBRARY, own(b""), Choices(("checkers",), (), {"pbd": "a slip"}))


def test_every_choice_has_its_reason() -> None:
    """As every exception in this project has."""
    assert all(len(reason.split()) >= 2 for reason in read_choices().left_out.values())


OF_OUR_OWN = "sitecustomize.py"  # Python looks for it, and the library has none


def test_what_stands_in_for_a_module_lies_where_that_one_does_and_says_why() -> None:
    """So that a new version of the runtime that moves one is noticed."""
    theirs = read_archive(PYODIDE / LIBRARY_FILE)

    assert set(shims()) - {OF_OUR_OWN} <= set(theirs)
    assert OF_OUR_OWN not in theirs
    for source in shims().values():
        assert len((ast.get_docstring(ast.parse(source)) or "").split()) >= 8
