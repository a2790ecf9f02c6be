"""The page's own scripts and styles, in a folder named for what they and the runtime hold.

A page names that folder, its scripts name the runtime's files with their hashes: so a page only
ever runs scripts, runtime and checkers of its own build.
"""

from __future__ import annotations

import json
import re
import tomllib
from collections.abc import Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import Any

from build_tools.files import fingerprints
from build_tools.runtime.assembly import LOCK, MANIFEST, PREPARED
from build_tools.site.browser_needs import in_words, needs
from build_tools.site.bundling import bundle
from build_tools.site.corrections import corrected_days
from build_tools.site.input_labels import input_labels
from build_tools.site.script_floors import SOURCES, runs_on
from build_tools.site.start_list import probe, runtime_list, start_scripts
from checkers.catalogue import CHECKERS
from checkers.command_line.printing import ABOUT, HEADLINES
from checkers.domain.device.readings import Test
from checkers.domain.device.supply import Supply
from checkers.domain.quantities.quantity import LARGER
from checkers.domain.sources.documents import Evidence
from checkers.domain.tables.glossary import QUANTITIES
from checkers.judgement.device.still_to_test import SO_FAR, STILL_TO_DO
from checkers.physics.converter.circuits import CIRCUITS

PAGE_SOURCE = "site/page.js"
WORKER_SOURCE = "worker/worker.js"
SERVICE_WORKER_SOURCE = "copy/service-worker.js"
SERVICE_WORKER = "service-worker.js"  # served from the site's root, by offline.py
ENTRY = "page.js"
WORKER = "worker.js"
STYLE = "style.css"
COLOURS, PRINTED = "page.css", "print.css"  # the first of the styles, and the last
COMMENT = re.compile(r"/\*.*?\*/\s*", re.DOTALL)
CHECKER = re.compile(r'data-checker="(?P<slug>[\w-]+)"')
AXES = Path(__file__).with_name("axes.toml")
RESULT_NAMES = Path(__file__).with_name("result_names.toml")


@cache
def sources() -> dict[str, bytes]:
    """Return every script as it is written, and those that the build writes, by its place."""
    compared = start_scripts(_runtime(), _worker()[WORKER])
    return {
        **_sources_of_worker(),
        "generated/start-scripts.js": constants({"SCRIPTS": compared}),
    }


@cache
def browser_files() -> dict[str, bytes]:
    """Return every script and style of the site by its name in the folder."""
    styles = {path.name: path.read_text("utf-8") for path in _written(".css")}
    return {**bundle(sources(), PAGE_SOURCE), **_worker(), STYLE: style_sheet(styles)}


@cache
def service_worker() -> bytes:
    """Return the script that keeps the copy, without the list of the build it is for."""
    return bundle(sources(), SERVICE_WORKER_SOURCE)[SERVICE_WORKER]


@cache
def _worker() -> dict[str, bytes]:
    return bundle(_sources_of_worker(), WORKER_SOURCE)


@cache
def _sources_of_worker() -> dict[str, bytes]:
    return {
        **_scripts(),
        "generated/corrections.js": constants({"CORRECTS": corrected_days()}),
        "generated/input-labels.js": constants({"LABELS": input_labels()}),
        "generated/runtime.js": constants({"RUNTIME": _runtime(), "PROBE": probe()}),
        "generated/needs.js": constants(
            {
                "ENOUGH": in_words("checkers"),
                "NEEDS": {key: need["name"] for key, need in needs().items()},
            }
        ),
        "generated/words.js": constants(words()),
    }


@cache
def _runtime() -> dict[str, Any]:
    manifest, lock = (json.loads((PREPARED / x).read_bytes()) for x in (MANIFEST, LOCK))
    return runtime_list(manifest, lock, runs_on("worker", _scripts()))


def _scripts() -> dict[str, bytes]:
    return {x.relative_to(SOURCES).as_posix(): x.read_bytes() for x in _written(".js")}


def _written(suffix: str) -> list[Path]:
    return [path for path in fingerprints.files_under(SOURCES) if path.suffix == suffix]


@cache
def browser_folder() -> str:
    """Return the folder's place in the site."""
    parts = [part for name, content in browser_files().items() for part in (name, content)]
    return f"browser/{fingerprints.fingerprint(parts)[:12]}"


def entry() -> str:
    """Return the script that brings a page to life, as a place in the site."""
    return f"{browser_folder()}/{ENTRY}"


def worker() -> str:
    """Return the script that runs the checkers, as a place in the site."""
    return f"{browser_folder()}/{WORKER}"


def first_checker(page: str) -> str:
    """Return the slug of the first checker on a page, as HTML; empty where there is none."""
    found = CHECKER.search(page)
    return found["slug"] if found else ""


def style_sheet(files: Mapping[str, str]) -> bytes:
    """Return all styles as one file, which a page asks for once; comments stay behind."""
    names = sorted(files)
    names.sort(key=lambda name: (name != COLOURS, name == PRINTED))
    return COMMENT.sub("", "".join(files[name] for name in names)).encode()


def styles() -> list[str]:
    """Return the style sheet as a place in the site."""
    return [f"{browser_folder()}/{STYLE}"]


def words() -> dict[str, Mapping[str, Any]]:
    """Return the words a page shows for what stands in a reply."""
    return {
        "OUTCOMES": {key: word.capitalize() for key, word in HEADLINES.items()},
        "JUDGES": {key: f"{word[0].upper()}{word[1:]}" for key, word in ABOUT.items()},
        "EVIDENCE": {word.value: word.meaning for word in Evidence},
        "PASS": {"so_far": SO_FAR, "still_to_do": STILL_TO_DO},
        "LARGER": LARGER,
        "NAMES": {key: quantity.name for key, quantity in QUANTITIES.items()},
        "RESULTS": tomllib.loads(RESULT_NAMES.read_text(encoding="utf-8")),
        "VALUES": {key: circuit.name for key, circuit in CIRCUITS.items()}
        | {one.value: one.label for one in Supply},
        "AXES": tomllib.loads(AXES.read_text(encoding="utf-8")),
        "TESTS": {test.value: test.label for test in Test if test is not Test.UNKNOWN},
        "TITLES": {checker.slug: checker.title for checker in CHECKERS},
    }


def constants(values: Mapping[str, Mapping[str, Any] | Sequence[Any]]) -> bytes:
    """Return a script that exports the values under their names.

    Its records have no prototype: asked for `constructor`, as a file from outside may ask, they
    hold nothing.
    """
    lines = [
        f"export const {name} = {json.dumps(_bare(value), ensure_ascii=False)};\n"
        for name, value in values.items()
    ]
    return "".join(lines).encode()


def _bare(value: Any) -> Any:
    if isinstance(value, Mapping):
        return {"__proto__": None} | {name: _bare(one) for name, one in value.items()}
    return [_bare(one) for one in value] if isinstance(value, list | tuple) else value
