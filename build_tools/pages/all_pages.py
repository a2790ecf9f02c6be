"""The pages that are made from data, and what stands at the foot of every page."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from build_tools.pages import codes, limits, loads
from build_tools.pages.credits.works import credits_macro
from build_tools.pages.macros.browsers import browsers_macro
from build_tools.pages.macros.cautions import cautions_macro, local_note_for
from build_tools.pages.macros.checkers import checker_macro, doors_macro, examples_macro
from build_tools.pages.macros.contents import contents_macro
from build_tools.pages.macros.corrections import corrections_macro
from build_tools.pages.macros.currents import bands_macro, currents_macro
from build_tools.pages.macros.log import log_macro
from build_tools.pages.macros.numbers import known_macro, limit_macro
from build_tools.pages.macros.pictures import picture_macro
from build_tools.pages.macros.practice import practice_macro
from build_tools.pages.macros.reference import (
    causes_macro,
    circuits_macro,
    electrode_limits_macro,
    quantities_macro,
    surveys_macro,
)
from build_tools.pages.macros.schedule import schedule_macro
from build_tools.pages.macros.sources import evidence_macro, sources_macro
from build_tools.pages.marks import Macro
from build_tools.pages.rendering import html, markdown
from build_tools.site import browser_files
from checkers.catalogue import CHECKERS
from checkers.domain.codes.registry import CODES
from checkers.domain.loads.registry import LOADS
from checkers.domain.sources.cautions import cautions_against, cautions_for

MACROS: dict[str, Macro] = {
    "bands": bands_macro,
    "browsers": browsers_macro,
    "causes": causes_macro,
    "cautions": cautions_macro,
    "checker": checker_macro,
    "circuits": circuits_macro,
    "code": codes.code_macro,
    "contents": contents_macro,
    "doors": doors_macro,
    "electrode-limits": electrode_limits_macro,
    "evidence": evidence_macro,
    "examples": examples_macro,
    "known": known_macro,
    "limit": limit_macro,
    "limits": limits.limits_macro,
    "load": loads.load_macro,
    "loads": loads.loads_macro,
    "corrections": corrections_macro,
    "credits": credits_macro,
    "log": log_macro,
    "picture": picture_macro,
    "practice": practice_macro,
    "quantities": quantities_macro,
    "schedule": schedule_macro,
    "silent": loads.silent_macro,
    "sources": sources_macro,
    "surveys": surveys_macro,
    "test-currents": currents_macro,
}
INDEX = "index.md"
ALL_OF = "/*"


def made_files(docs: Path) -> dict[str, str | bytes]:
    """Return what joins the written files: pages made from data, and the browser's files.

    A page that somebody wrote by hand under the same name stays as it is written.
    """
    pages = {place: text for place, text in made_pages().items() if not (docs / place).exists()}
    folder = browser_files.browser_folder()
    scripts = {f"{folder}/{name}": text for name, text in browser_files.browser_files().items()}
    return {**pages, **scripts}


def made_pages() -> dict[str, str]:
    """Return the Markdown of every page made from data, in reading order."""
    checkers = {
        f"checkers/{checker.slug}.md": markdown("pages/checker.md", checker=checker)
        for checker in CHECKERS
    }
    return {
        "checkers/index.md": markdown("pages/checkers.md", checkers=CHECKERS),
        **checkers,
        **limits.limit_pages(),
        **codes.code_pages(),
        **loads.load_pages(),
    }


def whole_navigation(navigation: list[Any] | None, docs: Path) -> list[Any]:
    """Return the navigation with `folder/*` replaced by the folder's pages, its index first."""
    return [_whole(item, docs) for item in navigation or []]


def _whole(item: Any, docs: Path) -> Any:
    if not isinstance(item, dict):
        return item
    return {
        title: pages_in(target.removesuffix(ALL_OF), docs)
        if isinstance(target, str) and target.endswith(ALL_OF)
        else (whole_navigation(target, docs) if isinstance(target, list) else target)
        for title, target in item.items()
    }


def pages_in(folder: str, docs: Path) -> list[str]:
    """Return the pages of a folder: its index, then the made ones in order, then the written."""
    made = [place for place in made_pages() if place.startswith(f"{folder}/")]
    written = sorted(path.relative_to(docs).as_posix() for path in docs.glob(f"{folder}/*.md"))
    listed = dict.fromkeys([*made, *written])
    return sorted(listed, key=lambda place: not place.endswith(f"/{INDEX}"))


def way_to_root(url: str) -> str:
    """Return the relative way from a page, by its address in the site, to the site's root."""
    return "../" * url.count("/") or "./"


def _of_equipment(folder: str, name: str) -> tuple[str, ...]:
    """Return the cautions against what a page's equipment brings with it."""
    load = LOADS.get(name) if folder == "dc-sources" else None
    return cautions_against(load.hazards) if load else ()


def foot(place: str, url: str) -> str:
    """Return what stands under every page: cautions, local codes, the copy, the credits.

    Inputs: the page's place among the sources, as codes/gb.md, and its address in the site.
    """
    folder, _, name = place.removesuffix(".md").rpartition("/")
    code = CODES.get(name) if folder == "codes" else None
    return html(
        "macros/foot.html",
        cautions=dict.fromkeys((*_of_equipment(folder, name), *cautions_for(name))),
        local_note=local_note_for(code),
        root=way_to_root(url),
    )
