"""What nobody asks for is not in the built site, and nothing names it."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.site.build import ensure_site
from build_tools.theme.unused_files import leave_out


def _written(site: Path) -> Path:
    texts = {
        "javascripts/lunr/min/lunr.de.min.js": "another language",
        "javascripts/bundle.js": "run();\n//# sourceMappingURL=bundle.js.map\n",
        "javascripts/bundle.js.map": "{}",
        "stylesheets/main.css": "a{}\n/*# sourceMappingURL=main.css.map */",
        "stylesheets/main.css.map": "{}",
    }
    for name, text in texts.items():
        (site / "assets" / name).parent.mkdir(parents=True, exist_ok=True)
        (site / "assets" / name).write_text(text, encoding="utf-8")
    return site / "assets"


def test_they_are_taken_out_with_what_names_them(tmp_path: Path) -> None:
    """The rest of each file stays as it is."""
    assets = _written(tmp_path)

    leave_out(tmp_path)

    assert {x.name for x in assets.rglob("*") if x.is_file()} == {"bundle.js", "main.css"}
    assert (assets / "javascripts" / "bundle.js").read_text(encoding="utf-8") == "run();\n"
    assert (assets / "stylesheets" / "main.css").read_text(encoding="utf-8") == "a{}\n"


def test_another_theme_stops_the_build(tmp_path: Path) -> None:
    """Nothing is guessed at."""
    with pytest.raises(FileNotFoundError):
        leave_out(tmp_path)


def test_the_built_site_has_none() -> None:
    """Neither them nor a script that names them."""
    site = ensure_site()

    assert not [x for x in site.rglob("*") if x.suffix == ".map" or "lunr" in x.parts]
    for file in (*site.glob("assets/**/*.js"), *site.glob("assets/**/*.css")):
        assert "sourceMappingURL" not in file.read_text(encoding="utf-8"), file
