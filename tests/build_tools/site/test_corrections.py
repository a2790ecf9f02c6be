"""A build that judges otherwise says so: in its identity, on a page, and to older copies."""

from __future__ import annotations

from build_tools.files.identity import day_of_sources
from build_tools.pages.macros.corrections import corrections_macro
from build_tools.site.browser_files import sources
from build_tools.site.corrections import corrected_days, corrections


def test_corrections_stand_newest_first_and_none_is_of_a_later_build() -> None:
    """Each day stands once for the same codes, and no build tells of what it does not hold."""
    days = [one.on for one in corrections()]

    assert days == sorted(days, reverse=True)
    assert len({(one.on, one.codes) for one in corrections()}) == len(days)
    assert days[0] <= day_of_sources()


def test_every_correction_says_what_was_wrong() -> None:
    """Each is a sentence, and the page shows it."""
    shown = corrections_macro("", "")

    for one in corrections():
        assert one.wrong
        for text in one.wrong:
            assert text[0].isupper() or text[0] in "×.", text
            assert text.endswith("."), text
            assert text in shown
        assert all(name in shown for name in one.codes or ["every local code"])


def test_the_page_knows_the_corrections_of_its_own_build() -> None:
    """Without them it could not tell that a newer build has more."""
    script = sources()["generated/corrections.js"].decode()

    assert all(f'"{day}"' in script for day in corrected_days())
