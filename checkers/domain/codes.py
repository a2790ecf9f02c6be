"""What each jurisdiction asks of a residual current device, and from which day to which."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from checkers.domain.code_loading import load_codes
from checkers.domain.code_rules import Code, CodeTest, Edition, Interval, Rule, TypeRule
from checkers.domain.data_files import data_folder
from checkers.domain.limits import TABLES

__all__ = ["CODES", "Code", "CodeTest", "Edition", "Interval", "Rule", "TypeRule"]

CODES: Mapping[str, Code] = MappingProxyType(load_codes(data_folder() / "codes", TABLES))
