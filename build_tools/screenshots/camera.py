"""Open a view in Chromium and take it at every width, in every scheme, and as it prints."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any, NamedTuple

from playwright.sync_api import Browser, Page
from playwright.sync_api import Error as PlaywrightError

from build_tools.screenshots.blank_picture import is_empty
from build_tools.screenshots.views import FOLDER, View, Views

HEIGHT = 915
DESK = 1024  # px: from this width on a page is seen with a pointer, below it with a finger
PAPER = 703  # px: the width that a sheet of A4 leaves between margins of 12 mm, at 96 to the inch
WAITING = "[data-verdict][data-outcome=waiting]"
# What the bar of each checker says, and whether the page fills its form.
BARS = """() => [...document.querySelectorAll("[data-verdict]")].map((one) => [
  one.dataset.outcome,
  one.querySelector("[data-word]").textContent,
  Boolean(one.closest("[data-given]")),
])"""
NOT_RUNNING = frozenset({"Not running", "Not judged"})
# The copy for use without a network would be made anew for every view.
NO_COPY = "delete Navigator.prototype.serviceWorker"
PALETTES = {"light": "default", "dark": "slate"}  # as the theme calls them
CHOOSE = """(scheme) =>
  document.querySelector(`[name=__palette][data-md-color-scheme=${scheme}]`).click()"""
# What reaches over the right edge of the screen, unless something around it scrolls by itself.
STICKS_OUT = """(width) => [...document.querySelectorAll("body *")]
  .filter((one) => one.getBoundingClientRect().right > width + 0.5 && one.offsetParent)
  .filter((one) => { for (let up = one; up !== document.body; up = up.parentElement) {
    if (getComputedStyle(up).overflowX !== "visible") return false;
  } return true; })
  .slice(0, 3).map((one) => `${one.localName}.${one.className}`)"""


class Picture(NamedTuple):
    """One picture: what it shows in a few words, and its file."""

    shows: str
    file: Path


class Fault(NamedTuple):
    """What is wrong with a view, in words."""

    view: str
    says: str


class Refused(Exception):
    """A page is not in the state that a view is to show."""


class Camera:
    """Takes views of a site that is being served, into a folder."""

    def __init__(self, browser: Browser, origin: str, folder: Path, views: Views) -> None:
        self.browser = browser
        self.origin = origin
        self.folder = folder
        self.views = views

    def take(self, view: View) -> tuple[list[Picture], list[Fault]]:
        """Take every picture of a view, and note what is wrong with it."""
        taken: list[Picture] = []
        try:
            faults = self._on_a_phone(view, taken)
            self._at_a_desk(view, taken)
        except (Refused, PlaywrightError) as error:
            faults = [str(error).splitlines()[0]]
        faults += [f"{one.shows}: empty" for one in taken if is_empty(one.file)]
        return taken, [Fault(view.name, says) for says in faults]

    def _on_a_phone(self, view: View, taken: list[Picture]) -> list[str]:
        with self._opened(view, self.views.narrowest, phone=True) as page:
            faults = self._overflow(page)
            narrow = [width for width in self.views.widths if width < DESK]
            taken += [self._at(view, page, width, scheme) for width, scheme in self._pairs(narrow)]
        return faults

    def _at_a_desk(self, view: View, taken: list[Picture]) -> None:
        with self._opened(view, DESK, phone=False) as page:
            wide = [width for width in self.views.widths if width >= DESK]
            taken += [self._at(view, page, width, scheme) for width, scheme in self._pairs(wide)]
            taken += [self._printed(view, page, scheme) for scheme in self.views.schemes]

    def _pairs(self, widths: list[int]) -> Iterator[tuple[int, str]]:
        return ((width, scheme) for scheme in self.views.schemes for width in widths)

    @contextmanager
    def _opened(self, view: View, width: int, *, phone: bool) -> Iterator[Page]:
        # A browser that knows nothing of the views before: no log, no fields filled.
        with self.browser.new_context(
            viewport=_size(width), has_touch=phone, is_mobile=phone
        ) as context:
            context.add_init_script(NO_COPY)
            page = context.new_page()
            self._reach(view, page)
            yield page

    def _reach(self, view: View, page: Page) -> None:
        page.goto(f"{self.origin}/{view.address}")
        page.locator(WAITING).first.wait_for(state="detached")  # the first of those that are left
        _refuse_unjudged(view, page)
        for step in view.steps:
            self._follow(page, step)

    def _follow(self, page: Page, step: dict[str, str]) -> None:
        action, target = next((key, value) for key, value in step.items() if key != "with")
        found = page.locator(target).first
        actions: dict[str, Callable[[], Any]] = {
            "press": found.click,
            "open": found.click,
            "see": found.wait_for,
            "fill": lambda: found.fill(step["with"]),
            "file": lambda: found.set_input_files(FOLDER / step["with"]),
            "go": lambda: page.goto(f"{self.origin}/{target}"),
        }
        actions[action]()

    def _overflow(self, page: Page) -> list[str]:
        narrowest = self.views.narrowest
        wide = page.evaluate("document.documentElement.scrollWidth")
        if wide <= narrowest:
            return []
        because = ", ".join(page.evaluate(STICKS_OUT, narrowest))
        return [f"{wide} px wide on a screen of {narrowest} px: {because}"]

    def _at(self, view: View, page: Page, width: int, scheme: str) -> Picture:
        page.evaluate(CHOOSE, PALETTES[scheme])
        page.set_viewport_size(_size(width))
        return self._shot(view, page, f"{width} {scheme}")

    def _printed(self, view: View, page: Page, scheme: str) -> Picture:
        page.evaluate(CHOOSE, PALETTES[scheme])
        page.emulate_media(media="print")
        page.set_viewport_size(_size(PAPER))
        page.pdf(path=self.folder / view.name / f"print-{scheme}.pdf", prefer_css_page_size=True)
        return self._shot(view, page, f"print {scheme}")

    def _shot(self, view: View, page: Page, shows: str) -> Picture:
        file = self.folder / view.name / f"{shows.replace(' ', '-')}.png"
        page.evaluate("scrollTo(0, 0)")  # else the header is drawn where the page was scrolled to
        page.wait_for_timeout(150)  # the theme follows a change of size or scheme a moment later
        page.screenshot(path=file, full_page=True, animations="disabled")
        return Picture(shows, file)


def _refuse_unjudged(view: View, page: Page) -> None:
    """Refuse a page with a checker that did not run, or whose form is filled and not judged."""
    for outcome, word, filled in page.evaluate(BARS):
        unlike = view.outcome and outcome not in (view.outcome, "plan")
        if word in NOT_RUNNING or unlike or (filled and outcome == "unfinished"):
            raise Refused(f"a checker has not judged as it should: {word}")


def _size(width: int) -> Any:
    return {"width": width, "height": HEIGHT}
