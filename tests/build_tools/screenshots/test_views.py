"""The list of what pictures are taken of is read strictly, and the sheet shows every picture."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.machine.problems import Problem
from build_tools.screenshots.camera import Fault, Picture
from build_tools.screenshots.contact_sheet import write_contact_sheet
from build_tools.screenshots.views import FOLDER, read_views

HEAD = 'widths = [412]\nnarrowest = 320\nschemes = ["light"]\n[view.one]\n'


def test_an_example_fills_the_form_of_its_view() -> None:
    """By the part of the address after the #, as a shared case does."""
    views = {view.name: view for view in read_views().views}

    assert views["readings-fail"].address.startswith("checkers/readings/#")
    assert views["readings-fail"].outcome == "fail"
    assert views["front"].address == ""


def test_every_file_that_a_step_gives_is_there() -> None:
    """It lies beside the list."""
    given = {step["with"] for view in read_views().views for step in view.steps if "file" in step}

    assert given
    assert all((FOLDER / name).is_file() for name in given)


@pytest.mark.parametrize(
    "row",
    [
        'place = ""\npage = ""',
        'place = ""\nsteps = [{ tap = "a" }]',
        'place = ""\nsteps = [{ press = "a", see = "b" }]',
        'place = "checkers/readings/"\nexample = "pass"\nwhich = 9',
    ],
)
def test_what_cannot_be_followed_is_refused_by_name(row: str, tmp_path: Path) -> None:
    """An unknown key, an unknown step, two steps in one, an example that there is not."""
    path = tmp_path / "views.toml"
    path.write_text(HEAD + row)

    with pytest.raises(Problem, match="one"):
        read_views(path)


def test_the_sheet_shows_every_picture_and_what_is_wrong(tmp_path: Path) -> None:
    """Each by its place beside the sheet, so that the folder can be moved."""
    picture = Picture("412 dark", tmp_path / "front" / "412-dark.png")
    fault = Fault("front", "412 dark: empty")

    page = write_contact_sheet(tmp_path, {"front": [picture]}, [fault])

    assert 'src="front/412-dark.png"' in page.read_text()
    assert "front: 412 dark: empty" in page.read_text()
