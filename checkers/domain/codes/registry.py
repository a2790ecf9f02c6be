"""What each jurisdiction asks of a residual current device, and from which day to which."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from checkers.domain.codes.loading import load_codes
from checkers.domain.codes.rules import Code, CodeTest, Edition, Interval, Rule, TypeRule
from checkers.domain.limits.tables import TABLES
from checkers.domain.tables.data_files import data_folder

__all__ = ["CODES", "Code", "CodeTest", "Edition", "Interval", "Rule", "TypeRule"]

CODES: Mapping[str, Code] = MappingProxyType(load_codes(data_folder() / "codes", TABLES))
