"""A second build of the site, which corrects verdicts: other pages, scripts and wheel."""

from __future__ import annotations

import base64
import hashlib
import re
import shutil
import zipfile
from pathlib import Path

from build_tools.site import integrity, policy
from build_tools.site.corrections import corrected_days
from build_tools.site.offline import write_precache

DAY = "2031-12-24"
MARK = "Second build. "
POLICY = re.compile(r'<meta http-equiv="Content-Security-Policy" content="[^"]*">')


def make_second_build(first: Path, folder: Path, day: str = DAY) -> Path:
    """Copy a built site and change what a new build changes, its day too; give back its folder."""
    shutil.copytree(first, folder, ignore=shutil.ignore_patterns("*.br", "*.gz"))
    (scripts,) = (folder / "browser").iterdir()
    changed = scripts.rename(scripts.with_name("secondbuild"))
    for page in folder.rglob("*.html"):
        text = page.read_text(encoding="utf-8").replace(f"/{scripts.name}/", f"/{changed.name}/")
        page.write_text(text.replace("<h1", f"<p>{MARK}</p><h1", 1), encoding="utf-8")
    (wheel,) = folder.glob("runtime/*.whl")
    old = _hash(wheel)
    with zipfile.ZipFile(wheel, "a") as archive:
        archive.comment = MARK.encode()
    runtime = changed / "worker.js"
    size = wheel.stat().st_size
    listed = runtime.read_text(encoding="utf-8").replace(old, _hash(wheel))
    listed = listed.replace(f'"bytes": {size - len(MARK)}', f'"bytes": {size}')
    before = _hash(runtime)
    runtime.write_text(listed, encoding="utf-8")
    starter = changed / "page.js"
    compared = starter.read_text(encoding="utf-8").replace(before, _hash(runtime))
    starter.write_text(compared, encoding="utf-8")
    for script in changed.glob("*.js"):
        text = script.read_text(encoding="utf-8")
        script.write_text(text.replace("CORRECTS = [", f'CORRECTS = ["{DAY}", '), encoding="utf-8")
    for page in folder.rglob("*.html"):
        page.write_text(POLICY.sub("", page.read_text(encoding="utf-8")), encoding="utf-8")
    integrity.bind(folder)
    policy.protect(folder)
    write_precache(folder, f"{day}-second", [DAY, *corrected_days()])
    return folder


def _hash(path: Path) -> str:
    return base64.b64encode(hashlib.sha256(path.read_bytes()).digest()).decode()
