"""What a learner does on the page for practice, and what the same case comes to in this Python."""

from __future__ import annotations

from datetime import date
from typing import Any

from playwright.sync_api import Locator, Page, expect

from checkers import run
from checkers.catalogue.practice import fit_of
from checkers.domain.causes import CAUSES
from checkers.domain.codes.registry import CODES
from checkers.judgement.practice.drills import DRILLS
from checkers.judgement.practice.exercise import draw
from tests.browser.phone import PATIENCE, Phone

DAY = date(2026, 11, 24)
VERDICTS = ("pass", "fail", "borderline", "cannot-say")


class Case:
    """A case by level and number, as this Python knows it."""

    def __init__(self, level: int, seed: int) -> None:
        self.asked = {"code": "gb", "on": str(DAY), "level": str(level), "seed": seed}
        self.cause = draw(seed, DRILLS.levels[level - 1], CODES["gb"], DAY, fit_of).cause
        self.action = CAUSES[self.cause].action

    @property
    def address(self) -> str:
        """The address of the case on the site."""
        return "checkers/practice/#" + "&".join(f"{key}={one}" for key, one in self.asked.items())

    def readings(self, *done: str) -> list[str]:
        """Return what is shown after what was done, as the page words it."""
        answer = self.reply(*done)["answer"]
        return [f"{one['done']} {one['shows']}" for one in answer["readings"]]

    def limits(self, *done: str) -> str:
        """Return the verdict that is right after what was done."""
        return next(one for one in VERDICTS if self.mark("limits", one, *done) == "pass")

    def wrong_limits(self, *done: str) -> str:
        """Return a verdict that is not right after what was done."""
        return next(one for one in VERDICTS if self.mark("limits", one, *done) == "fail")

    def sources(self, *done: str) -> list[str]:
        """Return the documents that the verdict after what was done rests on."""
        reply = self.reply(*done, trying="yes", decision={"limits": self.limits(*done)})
        return [str(one["document"]) for one in reply["findings"][0]["sources"]]

    def hint(self, about: str, *done: str) -> str:
        """Return the words of a hint after what was done."""
        return str(self.reply(*done, hint=about)["findings"][0]["says"])

    def mark(self, step: str, said: str, *done: str) -> str:
        """Return how an answer to a step is marked."""
        reply = self.reply(*done, trying="yes", decision={step: said})
        return str(reply["findings"][0]["outcome"])

    def says(self, step: str, said: str) -> str:
        """Return the reason that comes with the mark of an answer."""
        return str(self.reply(trying="yes", decision={step: said})["findings"][0]["says"])

    def reply(self, *done: str, **also: Any) -> dict[str, Any]:
        """Return the checker's reply after what was done."""
        return run("practice", {**self.asked, "actions": [{"do": one} for one in done], **also})


class Learner:
    """A learner with a phone, on the page for practice."""

    def __init__(self, phone: Phone, case: Case) -> None:
        self.phone = phone
        self.page: Page = phone.page
        self.case = case

    def opens(self, case: Case | None = None) -> None:
        """Open a case by its address and wait for what it shows at first."""
        self.case = case or self.case
        self.page.goto("about:blank")  # an address that differs after its # is not opened anew
        self.phone.open(self.case.address)
        self.sees()

    def sees(self, *done: str) -> None:
        """Wait until exactly that is shown which this Python shows after what was done."""
        expect(self.readings).to_have_text(self.case.readings(*done), timeout=PATIENCE)

    @property
    def readings(self) -> Locator:
        """What was done and what it shows."""
        return self.page.locator("[data-readings] > li")

    def thing(self, key: str) -> Locator:
        """Find the button for something that can be done, its group unfolded."""
        button = self.page.locator(f"[data-do={key}]")
        group = self.page.locator("details", has=button)
        if group.get_attribute("open") is None:
            group.locator("summary").tap()
        return button

    def does(self, *keys: str) -> None:
        """Tap things to do, one after the other."""
        for at, key in enumerate(keys, start=1):
            self.thing(key).tap()
            self.sees(*keys[:at])

    def step(self, step: str) -> Locator:
        """Find the part of the page for a step."""
        return self.page.locator(f"[data-step={step}]")

    def choice(self, step: str, said: str) -> Locator:
        """Find the button for an answer."""
        return self.step(step).locator(f"[data-answer={said}]")

    def marks(self, step: str) -> Locator:
        """Find the marks of a step."""
        return self.step(step).locator("[data-marks] > li")

    def answers(self, step: str, said: str, outcome: str) -> None:
        """Tap an answer and wait for its mark."""
        before = self.marks(step).count()
        self.choice(step, said).tap()
        expect(self.marks(step)).to_have_count(before + 1)
        expect(self.marks(step).last).to_have_attribute("data-outcome", outcome)

    @property
    def end(self) -> Locator:
        """What stands at the end of a case."""
        return self.page.locator("[data-end]")

    @property
    def kept(self) -> Locator:
        """What this device keeps."""
        return self.page.locator("[data-kept]")

    def button(self, name: str) -> Locator:
        """Find a button by its words."""
        return self.page.locator("[data-practice]").get_by_role("button", name=name, exact=True)
