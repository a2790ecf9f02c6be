"""What may not be said where no edition of the local code is known for the day asked about."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date

from checkers.domain.codes.registry import Code
from checkers.domain.verdicts import Finding, Judges, Outcome, Result
from checkers.wording.finding import finding


def code_not_known_then(code: Code, day: date) -> Sequence[Finding]:
    """Return a finding where no edition of the code is known for the day, else none."""
    if code.edition_on(day):
        return ()
    return (
        finding(
            "local-code.no-edition-known",
            Outcome.CANNOT_SAY,
            Judges.INSTALLATION_CODE,
            {"country": code.country, "day": day},
        ),
    )


def passed_by_a_known_code(result: Result, code: Code, day: date) -> Result:
    """Return a result that passes only where an edition of the code is known for the day."""
    if result.outcome is not Outcome.PASS:
        return result
    return replace(result, findings=[*result.findings, *code_not_known_then(code, day)])
