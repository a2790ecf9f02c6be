"""A result is made once, and again when its inputs change or it was left half-finished."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.files import build_markers, fingerprints


def test_a_result_without_its_stamp_is_not_finished(tmp_path: Path) -> None:
    """Whatever files lie there, the marker comes last."""
    assert not build_markers.is_marked(tmp_path / "finished", "abc")


def test_a_stamp_holds_for_its_own_inputs_only(tmp_path: Path) -> None:
    """Changed inputs give another value."""
    build_markers.write_marker(tmp_path / "deep" / "finished", "abc")

    assert build_markers.is_marked(tmp_path / "deep" / "finished", "abc")
    assert not build_markers.is_marked(tmp_path / "deep" / "finished", "abd")


def test_a_removed_stamp_no_longer_holds(tmp_path: Path) -> None:
    """Removing one that is not there is no error."""
    build_markers.write_marker(tmp_path / "finished", "abc")
    build_markers.remove_marker(tmp_path / "finished")
    build_markers.remove_marker(tmp_path / "finished")

    assert not build_markers.is_marked(tmp_path / "finished", "abc")


@pytest.mark.parametrize("change", ["contents", "name", "another file", "also"])
def test_any_change_of_the_inputs_changes_the_fingerprint(change: str, tmp_path: Path) -> None:
    """Contents, names, the list of files and the further texts all count."""
    file = tmp_path / "data" / "a.toml"
    file.parent.mkdir()
    file.write_text("x = 1")
    before = fingerprints.fingerprint_of_files(tmp_path, tmp_path / "data", also=["1"])

    if change == "contents":
        file.write_text("x = 2")
    elif change == "name":
        file.rename(file.with_name("b.toml"))
    elif change == "another file":
        file.with_name("c.toml").touch()
    also = ["2"] if change == "also" else ["1"]

    assert before != fingerprints.fingerprint_of_files(tmp_path, tmp_path / "data", also=also)


def test_two_clones_have_one_fingerprint(tmp_path: Path) -> None:
    """The place of the work tree and what programs leave beside sources do not count."""
    for clone in ("one", "two"):
        folder = tmp_path / clone / "data"
        (folder / "__pycache__").mkdir(parents=True)
        (folder / "__pycache__" / "a.pyc").write_text(clone)
        (folder / "a.toml").write_text("x = 1")

    one, two = (
        fingerprints.fingerprint_of_files(tmp_path / x, tmp_path / x) for x in ("one", "two")
    )

    assert one == two


def test_moving_a_letter_from_one_text_to_the_next_changes_the_fingerprint() -> None:
    """Each text is kept apart."""
    assert fingerprints.fingerprint(["ab", "c"]) != fingerprints.fingerprint(["a", "bc"])
