"""Connected equipment as pages: what each kind calls for, and what it puts to earth."""

from __future__ import annotations

from math import isinf

from build_tools.rendering import html, markdown
from checkers.domain.limit_words import amount_in_words
from checkers.domain.load_kinds import LoadFigure, Need, Separation, Supply
from checkers.domain.loads import LOADS

ABOUT = {"leakage": "Leakage", "smooth-dc": "Smooth DC"}
SUPPLIES = {one.value: one.label for one in Supply}
SEPARATIONS = {one.value: one.label for one in Separation}


def load_pages() -> dict[str, str]:
    """Return one page a kind of equipment."""
    return {
        f"dc-sources/{key}.md": markdown("pages/load.md", load=load) for key, load in LOADS.items()
    }


def loads_show(_: str, root: str) -> str:
    """Show every kind of equipment with the types its circuits call for."""
    listed = [
        {"load": load, "types": " or ".join(sorted({need.type for need in load.needs}))}
        for load in LOADS.values()
    ]
    return html("shows/loads.html", loads=listed, root=root)


def load_show(key: str, root: str) -> str:
    """Show what one kind of equipment calls for, by its key. Raises KeyError."""
    load = LOADS[key]
    return html(
        "shows/load.html",
        load=load,
        needs=[_need(need) for need in load.needs],
        figures=[_figure(figure) for figure in load.figures],
        root=root,
    )


def _need(need: Need) -> dict[str, object]:
    return {
        "where": _where(need),
        "need": need,
        "smooth_dc": smooth_dc_in_words(need.smooth_dc),
    }


def _where(need: Need) -> str:
    supplies = [SUPPLIES[key] for key in SUPPLIES if key in need.supplies]
    separations = [SEPARATIONS[key] for key in SEPARATIONS if key in need.separations]
    between = f"separation: {' or '.join(separations)}" if separations else ""
    return "; ".join(part for part in (" or ".join(supplies), between) if part)


def smooth_dc_in_words(value: float) -> str:
    """Return the most smooth DC [mA] left unseen, in words."""
    if isinf(value):
        return "limited by nothing but the resistance of the fault"
    return f"up to {amount_in_words(value, 'mA')}" if value else "none"


def _figure(figure: LoadFigure) -> dict[str, str]:
    typical = "" if figure.typical is None else amount_in_words(figure.typical, "mA")
    most = "" if figure.at_most is None else amount_in_words(figure.at_most, "mA")
    parts = [f"typically {typical}" if typical else "", f"at most {most}" if most else ""]
    sources = dict.fromkeys((figure.typical_source.words, figure.source.words))
    return {
        "about": ABOUT.get(figure.about, figure.about),
        "amount": ", ".join(part for part in parts if part),
        "says": figure.says,
        "sources": "; ".join(sources),
    }
