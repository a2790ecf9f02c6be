"""Connected equipment as pages: what each kind calls for, and what it puts to earth."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Mapping
from math import isinf
from typing import NamedTuple

import checkers
from build_tools.drawings.answers import answer_of
from build_tools.pages.rendering import html, markdown
from checkers.domain.device.supply import Supply
from checkers.domain.limits.words import amount_in_words
from checkers.domain.loads.kinds import Load, LoadFigure, LoadRule, Need, Separation, Trap
from checkers.domain.loads.registry import LOADS
from checkers.domain.sources.documents import Citation
from checkers.judgement.equipment.type_order import ORDER
from checkers.physics.converter.circuits import CIRCUITS

ABOUT = {"leakage": "Leakage", "smooth-dc": "Smooth DC"}
SUPPLIES = {one.value: one.label for one in Supply}
SEPARATIONS = {one.value: one.label for one in Separation}


class Paragraph(NamedTuple):
    """A paragraph of a list entry: what it is about, what stands out, and the rest."""

    text: str
    lead: str = ""
    strong: str = ""


class Line(NamedTuple):
    """An entry of a list on a page, with where it stands."""

    says: tuple[Paragraph, ...]
    sources: tuple[str, ...]


class CircuitShown(NamedTuple):
    """A circuit on a page; with an inverter there is a second fault to show, on its link."""

    key: str
    name: str
    has_link: bool


def load_pages() -> dict[str, str]:
    """Return one page a kind of equipment."""
    return {f"dc-sources/{key}.md": _page(load) for key, load in LOADS.items()}


def _page(load: Load) -> str:
    keys = dict.fromkeys(key for keys in load.circuits.values() for key in keys)
    circuits = [
        CircuitShown(key, CIRCUITS[key].name, CIRCUITS[key].inverter is not None) for key in keys
    ]
    case = json.dumps(usual_case(load))
    return markdown("pages/load.md", load=load, circuits=circuits, case=case)


def usual_case(load: Load) -> dict[str, object]:
    """Return the case a page starts with: the type its circuit calls for, its maker silent.

    Where a rule gives it a device of its own, it has one.
    """
    need = load.need(load.usual_supply, Separation.UNKNOWN)
    return {
        "load": load.key,
        "supply": load.usual_supply,
        "maker_says": "silent",
        **({"shared": "no"} if any(rule.own_device for rule in load.rules) else {}),
        "device": {"type": need.type, "rated_residual_current": "30 mA"},
    }


def loads_macro(_: str, root: str) -> str:
    """Show every kind of equipment with the types its circuits call for."""
    listed = [
        {"load": load, "types": " or ".join(sorted({need.type for need in load.needs}))}
        for load in LOADS.values()
    ]
    return html("macros/loads.html", loads=listed, root=root)


def silent_macro(_: str, root: str) -> str:
    """Show which type type-for-load answers for each kind and supply, its manufacturer silent."""
    groups: dict[str, list[dict[str, str]]] = {}
    for key, load in LOADS.items():
        for supply in load.circuits:
            asked = {"load": key, "supply": supply, "maker_says": "silent"}
            answered = answer_of(checkers.run("type-for-load", asked))["type"]
            fed = SUPPLIES[supply] if len(load.circuits) > 1 else ""
            groups.setdefault(answered, []).append(
                {"key": key, "name": load.name, "supply": supply, "fed": fed}
            )
    listed = {kind: groups[kind] for kind in reversed(ORDER) if kind in groups}
    return html("macros/silent.html", groups=listed, root=root)


def load_macro(words: str, root: str) -> str:
    """Show a list about one kind of equipment: its key, then needs, figures, rules or traps.

    Raises KeyError for equipment or a list there is not.
    """
    del root
    key, part = words.split()
    return html("macros/load.html", lines=PARTS[part](LOADS[key]))


def _needs(load: Load) -> list[Line]:
    return [_need(need) for need in load.needs]


def _need(need: Need) -> Line:
    also = (
        Paragraph(f"Type {' or '.join(one.types)} serves too, where {one.where}.")
        for one in need.also
    )
    smooth = f"Smooth DC it can leave on its device unseen: {smooth_dc_in_words(need.smooth_dc)}."
    first = Paragraph(need.says, _where(need), f"Type {need.type}")
    return Line((first, *also, Paragraph(smooth)), _cited((*need.sources, need.smooth_dc_source)))


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


def _figures(load: Load) -> list[Line]:
    return [_figure(figure) for figure in load.figures]


def _figure(figure: LoadFigure) -> Line:
    ends = (("typically", figure.typical), ("at most", figure.at_most))
    amounts = [f"{word} {amount_in_words(end, 'mA')}" for word, end in ends if end is not None]
    says = Paragraph(figure.says, ABOUT[figure.about], ", ".join(amounts))
    return Line((says,), _cited((figure.typical_source, figure.source)))


def _rules(load: Load) -> list[Line]:
    return [_rule(rule) for rule in load.rules]


def _rule(rule: LoadRule) -> Line:
    return Line((Paragraph(rule.says),), _cited((rule.source,)))


def _traps(load: Load) -> list[Line]:
    return [_trap(trap) for trap in load.traps]


def _trap(trap: Trap) -> Line:
    return Line((Paragraph(trap.says),), _cited(trap.sources))


def _cited(sources: Iterable[Citation]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(source.words for source in sources))


PARTS: Mapping[str, Callable[[Load], list[Line]]] = {
    "needs": _needs,
    "figures": _figures,
    "rules": _rules,
    "traps": _traps,
}
