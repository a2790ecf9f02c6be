"""The page for a whole schedule: where the file goes in, and what a column may be taken for."""

from __future__ import annotations

import json

from build_tools.pages.far_days import far_days
from build_tools.pages.forms import form_fields
from build_tools.pages.rendering import html
from checkers.catalogue.schedule import CHECKER, Inputs
from checkers.judgement.schedule.headings.headings import meaning_of
from checkers.judgement.schedule.headings.meaning import column_name
from checkers.judgement.schedule.headings.vocabulary import VOCABULARY

ASKED_ELSEWHERE = ("text", "mapping")
READINGS = (
    "trip time x1 (ms)",
    "trip time x1 0° (ms)",
    "trip time x1 180° (ms)",
    "trip time x1 0°/180° (ms)",
    "trip time x1/x5 (ms)",
    "trip time x5 (ms)",
    "trip time x5 0° (ms)",
    "trip time x5 180° (ms)",
    "trip time x5 0°/180° (ms)",
    "trip time (ms)",
    "trip time x1 half-wave (ms)",
    "no-trip test x1/2 (ms)",
    "ramp (mA)",
    "ramp half-wave (mA)",
    "ramp smooth-dc (mA)",
    "button",
)


def schedule_macro(_: str, root: str) -> str:
    """Show the place where a schedule is judged, on the reader's own device."""
    return html(
        "macros/schedule.html",
        checker=CHECKER,
        fields=form_fields(Inputs, CHECKER.slug, leave_out=ASKED_ELSEWHERE),
        meanings=json.dumps(meanings(), ensure_ascii=False),
        far=far_days(),
        root=root,
    )


def meanings() -> list[str]:
    """Return what a person may say that a column holds, in the words it is shown in."""
    readings = [str(meaning_of(one)) for one in READINGS]
    return [*readings, *(column_name(kind) for kind in VOCABULARY.names)]
