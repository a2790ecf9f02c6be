"""An answer that gets no mark is told of in words: it looks neither marked nor lost."""

from __future__ import annotations

import json

import pytest
from playwright.sync_api import expect

from tests.browser.phone import Phone
from tests.browser.practice.practising import Case, Learner

# What asks for a mark is answered as by a checker that fails on it, or refuses it.
INSTEAD = """
const post = Worker.prototype.postMessage;
Worker.prototype.postMessage = function (data, ...more) {
  if (!data.request?.includes('"trying"')) {
    return post.call(this, data, ...more);
  }
  const heard = { number: data.number, reply: JSON.stringify(REPLY) };
  queueMicrotask(() => this.dispatchEvent(new MessageEvent("message", { data: heard })));
};
"""
REFUSED = [
    ({"kind": "crash", "code": "E1F", "text": "This checker failed."}, "Code: E1F"),
    ({"kind": "damaged", "text": "Its data is damaged: loads.toml, row 2"}, "loads.toml, row 2"),
    ({"kind": "invalid", "errors": {"decision": "This is no answer."}}, "This is no answer."),
]


@pytest.mark.parametrize(("reply", "words"), REFUSED)
def test_an_answer_without_a_mark_is_told_of(
    phone: Phone, reply: dict[str, object], words: str
) -> None:
    """In the bar, with the reason; no mark is shown, and the step stays open."""
    phone.page.add_init_script(INSTEAD.replace("REPLY", json.dumps(reply)))
    learner = Learner(phone, Case(1, 1))
    learner.opens()
    learner.choice("limits", "pass").tap()

    expect(phone.verdict).to_contain_text(words)
    expect(learner.marks("limits")).to_have_count(0)
    expect(learner.choice("limits", "fail")).to_be_visible()
