"""What is known of a kind of connected equipment: circuits, currents, needs and rules."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from checkers.domain.codes.rules import Code
from checkers.domain.inputs.fields import Labelled
from checkers.domain.sources.documents import Citation


class Separation(Labelled):
    """What stands between the DC side of equipment and the mains."""

    NONE = "none", "none"
    SIMPLE = "simple", "at least simple, or a transformer"
    UNKNOWN = "unknown", "not known"


class MetBy(Labelled):
    """What can meet the condition under which a narrower type serves."""

    MAKER = "maker", "a statement of the equipment's maker on the device type"
    DECLARATION = "declaration", "its maker's word that type B is not needed"
    SEPARATION = "separation", "separation from the mains"
    DETECTION = "detection", "6 mA DC detection"


@dataclass(frozen=True, slots=True)
class Also:
    """Narrower types that serve where a condition is met, and what can meet it.

    `besides` is a further condition of the installation, which no statement of a maker meets.
    """

    types: tuple[str, ...]
    where: str
    when: str
    besides: str


@dataclass(frozen=True, slots=True)
class Need:
    """The device type a circuit calls for, with a supply and a separation.

    `smooth_dc` is the most smooth DC [mA] it can leave on its device unseen, infinite where
    only the fault loop limits it; `smooth_dc_met` the same once a condition of `also` is met.
    """

    supplies: frozenset[str]
    separations: frozenset[str]
    type: str
    also: tuple[Also, ...]
    smooth_dc: float
    smooth_dc_source: Citation
    smooth_dc_met: float
    smooth_dc_met_source: Citation
    says: str
    sources: tuple[Citation, ...]

    def holds(self, supply: str, separation: str) -> bool:
        """Tell whether it is the need of a supply and separation; empty sets hold for all."""
        fed = not self.supplies or supply in self.supplies
        return fed and (not self.separations or separation in self.separations)


@dataclass(frozen=True, slots=True)
class LoadFigure:
    """A current of the equipment [mA]: leakage or smooth-dc, typical and at most.

    `source` is where the greatest value stands, and the typical one too unless it has its own.
    """

    about: str
    typical: float | None
    at_most: float | None
    says: str
    source: Citation
    typical_source: Citation


@dataclass(frozen=True, slots=True)
class LoadRule:
    """What an installation rule asks where it names the equipment.

    It is judged under `codes` (and those that follow one): the rating [mA] on the circuits
    that `only_for` names, and whether the device may be shared. `unasked` is what it asks
    besides, which no input tells.
    """

    codes: frozenset[str]
    rated_at_most: float | None
    only_for: str
    own_device: bool
    says: str
    unasked: str
    source: Citation

    def binds(self, code: Code) -> bool:
        """Tell whether it is judged under a code: named for it, or for the one it follows."""
        return bool(self.codes & {code.key, code.follows})


@dataclass(frozen=True, slots=True)
class Trap:
    """What catches people on site, in a sentence or two."""

    says: str
    sources: tuple[Citation, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Load:
    """One kind of connected equipment; `words` are what people call it.

    `hazards` are what it brings with it that a caution answers; `detects` tells whether its own
    standard gives it 6 mA DC detection.
    """

    key: str
    name: str
    what: str
    words: tuple[str, ...]
    waveform: str
    circuits: Mapping[str, tuple[str, ...]]
    contains_converter: bool
    detects: bool
    two_way: bool
    two_way_note: str
    island: str
    maker_declares: tuple[str, ...]
    with_type_ac: str
    hazards: frozenset[str]
    needs: tuple[Need, ...]
    figures: tuple[LoadFigure, ...]
    rules: tuple[LoadRule, ...]
    traps: tuple[Trap, ...]

    @property
    def usual_supply(self) -> str:
        """The supply it is taken to have if nothing is said."""
        return next(iter(self.circuits))

    def need(self, supply: str, separation: str) -> Need:
        """Return what its circuit calls for; the loader has made sure that there is one."""
        return next(need for need in self.needs if need.holds(supply, separation))

    def figure(self, about: str) -> LoadFigure | None:
        """Return its figure of leakage or of smooth-dc, or None."""
        return next((one for one in self.figures if one.about == about), None)
