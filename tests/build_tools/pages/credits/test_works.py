"""Every file of the built site belongs to a work that is credited, with its licence in full."""

from __future__ import annotations

import json
import re
from html import unescape
from importlib.metadata import distribution, version
from pathlib import Path
from urllib.parse import unquote

import pytest

from build_tools.pages.credits.works import Work, licence_text, works
from build_tools.runtime.npm_package import PYODIDE, read_pins
from build_tools.site.build import ensure_site
from build_tools.site.offline import precache

OURS, *OTHERS = works()
PATH = re.compile(r"""\bd=["']([^"']+)["']""")
# What in the runtime's own bytes tells of a work inside it.
TRACES = {
    "Software incorporated into CPython": b"_decimal/libmpdec/",
    "HACL*": b"./Modules/_hacl/Hacl_",
    "mimalloc": b"mimalloc: error",
    "Expat": b"EXPAT_ENTROPY_DEBUG",
    "zlib": b"inflate 1.3.1 Copyright",
    "bzip2": b"BZ2_bzCompress",
    "libffi": b"ffi_prep_cif",
    "Emscripten": b"emscripten_fiber_init",
    "LLVM: compiler-rt, libc++, libc++abi, libunwind": b"/system/lib/libcxxabi/src/",
    "CPython": b"Stichting Mathematisch Centrum",
    "Pyodide": b"src/core/python2js.c",
    "musl": b"__get_temp_ret",
}


@pytest.fixture(scope="module")
def site() -> Path:
    """The built site's folder."""
    return ensure_site()


@pytest.fixture(scope="module")
def files(site: Path) -> set[str]:
    """Every file of the site by its place, without the compressed copies."""
    found = {path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file()}
    return {name for name in found if not name.endswith((".br", ".gz"))}


def test_every_file_belongs_to_a_work(files: set[str]) -> None:
    """A file that nobody credits is a file whose licence nobody has read."""
    lost = {file for file in files if not any(work.holds(file) for work in works())}

    assert len(files) > 180
    assert lost == set()


@pytest.mark.parametrize("work", works(), ids=lambda work: work.name)
def test_a_work_is_there(files: set[str], work: Work) -> None:
    """Each line of the list still says something about the site."""
    for pattern in work.files:
        assert any(work._replace(files=(pattern,)).holds(file) for file in files), pattern


@pytest.mark.parametrize("work", works(), ids=lambda work: work.name)
def test_a_work_stands_on_the_page_with_its_licence(site: Path, work: Work) -> None:
    """Word for word, and with the way to its source."""
    page = unescape((site / "credits" / "index.html").read_text(encoding="utf-8"))

    assert len(work.text.split()) > 30
    assert f'<pre class="credit__licence">{work.text}</pre>' in page
    assert work.source in page


def test_each_licence_is_the_one_that_is_named() -> None:
    """A text put beside the wrong work would be found by its first words."""
    words = {
        "MPL-2.0": "Mozilla Public License",
        "Apache-2.0": "Apache",
        "PSF-2.0": "PYTHON SOFTWARE FOUNDATION LICENSE VERSION 2",
        "MIT": "Permission is hereby granted, free of charge",
        "Zlib": "provided 'as-is'",
        "0BSD": "with or without fee is hereby granted",
        "CC-BY-4.0": "CC BY 4.0",
        "W3C": "W3C Software and Document",
        "bzip2": "Julian R Seward",
        "BSD": "Redistribution and use in source and binary forms",
    }
    for work in works():
        (named,) = [key for key in words if work.licence.startswith(key)]
        assert words[named] in " ".join(work.text.split()), work.name


def test_the_source_of_mozilla_works_is_told() -> None:
    """Mozilla Public License 2.0, 3.2 (a): how to obtain the source, at no charge."""
    (pyodide,) = [work for work in OTHERS if work.licence.startswith("MPL")]

    assert f"github.com/pyodide/pyodide, tag {read_pins().version}" in pyodide.source
    assert "free of charge" in pyodide.source


def test_a_newer_runtime_or_theme_is_looked_through_again() -> None:
    """The list names the version that it was made for."""
    versions = {work.name: work.version for work in OTHERS}

    assert versions["Pyodide"] == read_pins().version
    assert versions["CPython"].startswith(f"{read_pins().python}.")
    assert versions["Material for MkDocs"] == version("mkdocs-material")


@pytest.mark.parametrize("name", TRACES)
def test_what_the_runtime_holds_is_listed(name: str) -> None:
    """Its machine code tells, by functions that it exports and by its notices."""
    code = (PYODIDE / "pyodide.asm.wasm").read_bytes()
    (work,) = [work for work in OTHERS if work.name == name]

    assert TRACES[name] in code
    assert work.holds("runtime/pyodide.asm.wasm")


def test_the_modules_inside_the_themes_files_are_the_listed_ones() -> None:
    """The maps beside the theme's files, as they come, tell which packages are inside."""
    maps = [x.locate() for x in distribution("mkdocs-material").files or [] if x.suffix == ".map"]
    read = [source for map_ in maps for source in json.loads(Path(map_).read_text())["sources"]]
    inside = {
        x.rpartition("node_modules/")[2].partition("/")[0] for x in read if "node_modules/" in x
    }

    assert inside == {work.module for work in OTHERS if work.module}


def test_the_themes_signs_are_of_the_listed_sets(site: Path) -> None:
    """Each sign in a style or on a page is of a set that is credited, or drawn here."""
    found = distribution("mkdocs-material").files or []
    paths = {
        path: file.parts[file.parts.index(".icons") + 1]
        for file in found
        if ".icons" in file.parts and file.suffix == ".svg"
        for path in PATH.findall(Path(file.locate()).read_text(encoding="utf-8"))
    }
    styles = [unquote(x.read_text(encoding="utf-8")) for x in site.glob("assets/**/*.css")]
    front = (site / "index.html").read_text(encoding="utf-8")
    used = {paths[path] for text in styles for path in PATH.findall(text)}
    used |= {paths[path] for path in PATH.findall(front) if path in paths}

    assert used == {work.icons for work in OTHERS if work.icons}


def test_no_letter_type_is_sent(files: set[str], site: Path) -> None:
    """A font would be a work of its own."""
    assert not [file for file in files if re.search(r"\.(woff2?|ttf|otf|eot)$", file)]
    for style in site.glob("**/*.css"):
        assert "@font-face" not in style.read_text(encoding="utf-8")


def test_every_page_leads_to_the_credits_and_the_copy_holds_them(
    files: set[str], site: Path
) -> None:
    """At the foot, so that it is found offline too."""
    for file in files:
        if file.endswith(".html"):
            assert "Credits and licences</a>" in (site / file).read_text(encoding="utf-8"), file
    assert "credits/index.html" in precache(site)


@pytest.mark.parametrize("place", ["licences/none.txt", "mkdocs-material:none.txt"])
def test_a_text_that_is_not_there_stops_the_build(place: str) -> None:
    """No work is listed with a licence that nobody can read."""
    with pytest.raises(LookupError, match="names 0 texts"):
        licence_text(place)
