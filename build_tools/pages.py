"""The pages that are made from data, and what stands at the foot of every page."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from build_tools import browser_files, code_pages, limit_pages, load_pages
from build_tools.browser_shows import browsers_show
from build_tools.checker_shows import checker_show, doors_show, examples_show
from build_tools.contents_shows import contents_show
from build_tools.corrections import corrections_show
from build_tools.credits import credits_show
from build_tools.currents import bands_show, currents_show
from build_tools.log_shows import log_show
from build_tools.number_shows import known_show, limit_show
from build_tools.picture_shows import picture_show
from build_tools.practice_shows import practice_show
from build_tools.reference_shows import (
    causes_show,
    circuits_show,
    electrode_limits_show,
    quantities_show,
    surveys_show,
)
from build_tools.rendering import html, markdown
from build_tools.schedule_shows import schedule_show
from build_tools.shows import Show
from build_tools.source_shows import evidence_show, sources_show
from build_tools.warnings_shown import cautions_show, local_note_for
from checkers.catalogue import CHECKERS
from checkers.domain.codes.registry import CODES
from checkers.domain.loads.registry import LOADS
from checkers.domain.sources.cautions import cautions_against, cautions_for

SHOWS: dict[str, Show] = {
    "bands": bands_show,
    "browsers": browsers_show,
    "causes": causes_show,
    "cautions": cautions_show,
    "checker": checker_show,
    "circuits": circuits_show,
    "code": code_pages.code_show,
    "contents": contents_show,
    "doors": doors_show,
    "electrode-limits": electrode_limits_show,
    "evidence": evidence_show,
    "examples": examples_show,
    "known": known_show,
    "limit": limit_show,
    "limits": limit_pages.limits_show,
    "load": load_pages.load_show,
    "loads": load_pages.loads_show,
    "corrections": corrections_show,
    "credits": credits_show,
    "log": log_show,
    "picture": picture_show,
    "practice": practice_show,
    "quantities": quantities_show,
    "schedule": schedule_show,
    "silent": load_pages.silent_show,
    "sources": sources_show,
    "surveys": surveys_show,
    "test-currents": currents_show,
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
        **limit_pages.limit_pages(),
        **code_pages.code_pages(),
        **load_pages.load_pages(),
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
        "shows/foot.html",
        cautions=dict.fromkeys((*_of_equipment(folder, name), *cautions_for(name))),
        local_note=local_note_for(code),
        root=way_to_root(url),
    )
