"""`screenshots`: pictures of the key pages at each width, in light, dark and print."""

from __future__ import annotations

import argparse
from collections.abc import Sequence

from build_tools.files import paths
from build_tools.files.folders import replacing
from build_tools.machine.browser_driver import browser_driver
from build_tools.machine.chromium import LEAN, find_chromium
from build_tools.machine.progress import say, show_count
from build_tools.screenshots.camera import Camera, Fault
from build_tools.screenshots.contact_sheet import write_contact_sheet
from build_tools.screenshots.views import Views, read_views
from build_tools.site.build import ensure_site
from build_tools.site.server import served

FOLDER = paths.BUILD / "screenshots"


def run(arguments: Sequence[str]) -> int:
    """Take the named views, or all, and give status 1 if something is wrong with one."""
    views = read_views()
    known = [view.name for view in views.views]
    parser = argparse.ArgumentParser(prog="python3 -m build_tools screenshots")
    parser.add_argument("names", nargs="*", metavar="VIEW", help=f"any of: {', '.join(known)}")
    names = parser.parse_args(arguments).names or known
    if unknown := set(names) - set(known):
        parser.error(f"there is no view {', '.join(sorted(unknown))}")
    faults = _take(views, names)
    for one in faults:
        say(f"{one.view}: {one.says}")
    say(f"The pictures are in {FOLDER / 'index.html'}")
    return 1 if faults else 0


def _take(views: Views, names: Sequence[str]) -> list[Fault]:
    taken, faults = {}, list[Fault]()
    chosen = [view for view in views.views if view.name in names]
    with browser_driver() as playwright, served(ensure_site()) as origin:
        browser = playwright.chromium.launch(executable_path=find_chromium(), args=[LEAN])
        with replacing(FOLDER) as folder:
            camera = Camera(browser, origin, folder, views)
            for number, view in enumerate(chosen, start=1):
                show_count(number, len(chosen), view.name)
                taken[view.name], found = camera.take(view)
                faults += found
            write_contact_sheet(folder, taken, faults)
        browser.close()
    return faults
