"""The catalogue of connected equipment, read from data/loads.toml."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from checkers.domain.data_files import data_folder, read_toml
from checkers.domain.load_kinds import Load
from checkers.domain.load_loading import load_equipment

FILE = "loads.toml"

LOADS: Mapping[str, Load] = MappingProxyType(
    load_equipment(read_toml(data_folder() / FILE, FILE), FILE)
)
LOAD_CHOICES = tuple((key, load.name) for key, load in LOADS.items())
