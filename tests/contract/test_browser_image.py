"""Around an image: a checker is there before its first question, and chance is not repeated."""

from __future__ import annotations

import random
import subprocess
import sys

import pytest

from checkers.catalogue import SLUGS
from checkers.contract import browser_image

ALONE = """
import sys
from checkers.contract import browser_image
browser_image.get_ready({slug!r})
print(*(name for name in sys.modules if name.startswith("checkers.catalogue.")))
"""


def test_one_checker_comes_alone() -> None:
    """A phone that asks one checker does not wait for the others to be imported."""
    program = ALONE.format(slug="dc-bias")
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )

    assert done.stdout.split() == ["checkers.catalogue.dc_bias"]


@pytest.mark.parametrize("slug", SLUGS)
def test_every_checker_can_be_made_ready(slug: str) -> None:
    """The list names nothing that cannot be imported."""
    browser_image.get_ready(slug)


def test_what_is_no_checker_is_refused() -> None:
    """A wrong name is an error where it is given, not at the first question."""
    with pytest.raises(KeyError):
        browser_image.get_ready("no-such-checker")


def test_waking_up_seeds_chance_anew() -> None:
    """Two starts from one image do not draw the same numbers."""
    drawn = []
    for _ in range(2):
        random.seed(1)
        browser_image.wake_up()
        drawn.append(random.random())  # noqa: S311  # it is chance itself that is tested

    assert drawn[0] != drawn[1]


def test_an_image_holds_what_answers() -> None:
    """No file comes with an image, so what answers is imported before one can be taken."""
    names = "checkers.contract.browser_image", "checkers.contract.bridge"
    line = f"import sys, {names[0]}; sys.exit({names[1]!r} not in sys.modules)"

    assert subprocess.run([sys.executable, "-c", line], check=False).returncode == 0
