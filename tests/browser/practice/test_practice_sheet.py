"""A sheet for a class prints its questions first and its answers on pages of their own."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Page, expect

from tests.browser.phone import Phone
from tests.browser.practice.practising import Case, Learner
from tests.browser.settled import page_width

CASE = Case(3, 21)
COUNT = 6
PAGE_OBJECT = re.compile(rb"/Type\s*/Page\b")  # ISO 32000-1, 7.7.3.3


@pytest.fixture
def learner(phone: Phone) -> Learner:
    """A teacher with a sheet of six questions on the screen."""
    made = Learner(phone, CASE)
    made.page.add_init_script("globalThis.print = () => {};")  # what opens there cannot be pressed
    made.opens()
    made.page.locator("[data-class] > summary").tap()
    made.page.get_by_label("Questions, 1 to 30").fill(str(COUNT))
    made.button("Make the sheet").tap()
    expect(made.page.locator("[data-sheet]")).to_be_visible()
    return made


def part(page: Page, name: str) -> str:
    """Return the words of a part of the sheet, one space between them."""
    return " ".join(page.locator(f"[data-sheet] [data-part={name}]").inner_text().split())


def test_it_holds_what_the_checker_draws(learner: Learner, page: Page) -> None:
    """Questions have no answer, answers reason and table; a number that cannot be is told."""
    made = CASE.reply(sheet=COUNT)["answer"]
    questions, answers = part(page, "questions"), part(page, "answers")

    for one in made["questions"]:
        assert f"{one['number']}. {one['scene']}" in questions
        assert all(shown in questions for shown in one["readings"])
    for one in made["answers"]:
        assert one["because"] in answers
        assert all(source in answers for source in one["sources"])
        assert one["action"] in answers
        assert one["because"] not in questions
    assert "Name" in questions
    page.get_by_label("Questions, 1 to 30").fill("99")
    learner.button("Make the sheet").tap()
    expect(page.locator("#practice-questions-problem")).to_be_visible()
    expect(page.get_by_label("Questions, 1 to 30")).to_have_attribute("aria-invalid", "true")
    expect(page.locator("[data-part=questions] .sheet__entry")).to_have_count(COUNT)


def test_it_prints_alone_with_its_answers_on_pages_of_their_own(
    learner: Learner, page: Page
) -> None:
    """Both parts take as many pages as each alone: none holds a question and an answer."""
    pages = {}
    for words in ("Print both", "Print the answers", "Print the questions"):
        learner.button(words).tap()
        pages[words] = len(PAGE_OBJECT.findall(page.pdf(format="A4")))
    assert all(pages.values())
    assert pages["Print both"] == pages["Print the questions"] + pages["Print the answers"]

    page.emulate_media(media="print", color_scheme="dark")
    page.set_viewport_size({"width": 794, "height": 1123})
    expect(page.locator("[data-part=questions]")).to_be_visible()
    for other in (".md-header", ".foot", "h1", "[data-inputs]", "[data-case]", "[data-verdict]"):
        expect(page.locator(other).first).to_be_hidden()
    for other in ("[data-part=answers]", ".sheet__controls", "[data-kept]", "[data-class]"):
        expect(page.locator(other).first).to_be_hidden()
    expect(page.locator("[data-part=questions] h2")).to_have_css("color", "rgb(0, 0, 0)")
    assert page_width(page) <= 794
