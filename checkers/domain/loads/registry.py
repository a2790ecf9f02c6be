"""The catalogue of connected equipment, read from data/loads.toml."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from checkers.domain.loads.kinds import Load
from checkers.domain.loads.loading import load_equipment
from checkers.domain.tables.data_files import data_folder, read_toml

FILE = "loads.toml"

LOADS: Mapping[str, Load] = MappingProxyType(
    load_equipment(read_toml(data_folder() / FILE, FILE), FILE)
)
LOAD_CHOICES = tuple((key, load.name) for key, load in LOADS.items())
