"""Every module that can be reached is found, however late its import comes."""

from __future__ import annotations

import pytest

from build_tools.runtime.import_closure import closure, imports_of, module_name


def library(**sources: str) -> dict[str, tuple[bytes, bool]]:
    """Make a library; `__` in a name stands for a dot, and a trailing one for a package."""
    return {
        name.rstrip("_").replace("__", "."): (source.encode(), name.endswith("_"))
        for name, source in sources.items()
    }


@pytest.mark.parametrize(
    ("path", "name"),
    [("json/__init__.py", "json"), ("json/decoder.py", "json.decoder"), ("re.py", "re")],
)
def test_a_path_names_its_module(path: str, name: str) -> None:
    """A package by its folder."""
    assert module_name(path) == name


@pytest.mark.parametrize(
    "source",
    [
        "import locale",
        "def f():\n    import locale",
        "try:\n    import fast\nexcept ImportError:\n    import locale",
        "class A:\n    def f(self):\n        from locale import day",
        "if x:\n    pass\nelse:\n    import locale",
        "if not TYPE_CHECKING:\n    import locale",
        "if TYPE_CHECKING:\n    pass\nelse:\n    import locale",
        "with a:\n    for b in c:\n        import locale",
    ],
)
def test_an_import_counts_wherever_it_stands(source: str) -> None:
    """Also one that runs only when a function is called."""
    modules = library(a=source, locale="")

    assert closure(modules, ["a"]) == {"a", "locale"}


@pytest.mark.parametrize(
    "source",
    [
        "if TYPE_CHECKING:\n    import locale",
        "if typing.TYPE_CHECKING:\n    import locale",
        "if __name__ == '__main__':\n    import locale",
    ],
)
def test_an_import_that_never_runs_does_not_count(source: str) -> None:
    """Blocks for type checkers, and for a module started as a program."""
    assert closure(library(a=source, locale=""), ["a"]) == {"a"}


@pytest.mark.parametrize(
    ("module", "source", "is_package", "expected"),
    [
        ("a.b", "from . import c", False, {"a", "a.c"}),
        ("a.b", "from .c import d", False, {"a.c", "a.c.d"}),
        ("a.b.c", "from ..d import e", False, {"a.d", "a.d.e"}),
        ("a.b", "from . import c", True, {"a.b", "a.b.c"}),
        ("a", "from b import c as d", False, {"b", "b.c"}),
    ],
)
def test_relative_imports_count_from_where_they_stand(
    module: str, source: str, expected: set[str], *, is_package: bool
) -> None:
    """A package's own file counts from the package, another from its folder."""
    assert imports_of(module, source.encode(), is_package=is_package) == expected


def test_a_reached_module_brings_the_packages_it_lies_in() -> None:
    """Python runs those first."""
    modules = library(a="import b.c.d", b_="import e", b__c_="", b__c__d="", e="")

    assert closure(modules, ["a"]) == {"a", "b", "b.c", "b.c.d", "e"}


def test_a_package_and_all_in_it_may_be_a_root() -> None:
    """For what is loaded by name."""
    assert closure(library(a_="", a__b="import c", c="", d=""), ["a.*"]) == {"a", "a.b", "c"}


def test_what_is_left_out_is_not_followed() -> None:
    """Nor anything in it."""
    modules = library(a="import b.c\nimport d", b_="", b__c="import e", d="", e="")

    assert closure(modules, ["a"], ["b"]) == {"a", "d"}


def test_imports_in_a_ring_end() -> None:
    """Each module is read once."""
    assert closure(library(a="import b", b="import a"), ["a"]) == {"a", "b"}


def test_a_root_that_is_not_there_is_an_error() -> None:
    """A slip in the list must not make the library smaller."""
    with pytest.raises(KeyError):
        closure(library(a=""), ["b"])
