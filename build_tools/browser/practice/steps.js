import { ask } from "../client/client.js";
import { element } from "../basics/element.js";
import { findingItem } from "../reply/findings.js";
import { ROOT } from "../shared/site-urls.js";
import { decisionOf, requestOf, resultOf, settledBy, STEPS } from "./case.js";
import { showEnd } from "./end.js";
import { keepEnded, keepHalfDone } from "./progress-store.js";
import { showKept } from "./progress.js";
import { showUnmarked } from "./no-mark.js";
import { showState } from "../reply/verdict.js";

const MOST = 20; // things done with one device; the checker takes no more
const WORDS = { pass: "Right", fail: "Not right", borderline: "Not right, though near", "cannot-say": "Told" };

/** Let the learner do things, answer, and ask for hints. */
export function offerSteps(page) {
  page.root.addEventListener("click", ({ target }) => {
    const button = target.closest("button");
    if (button?.dataset.do) {
      take(page, button.dataset.do);
    } else if (button?.dataset.answer) {
      answer(page, button.closest("[data-step]").dataset.step, button.dataset.answer);
    } else if (button?.dataset.hint) {
      hint(page, button.dataset.hint);
    }
  }, { signal: page.signal });
}

function take(page, key) {
  const { practised } = page;
  if (practised.actions.length < MOST && !settledBy(practised, "cause")) {
    practised.actions.push(key);
    page.show();
  } else {
    showState(page.root, "unfinished", "Enough done", `${MOST} things were done with this device: decide now.`);
  }
}

function answer(page, step, said) {
  const { practised } = page;
  const isMarked = (one) => one.step === step && one.answer === said && one.after === practised.actions.length;
  if (practised.tries.some(isMarked)) {
    showState(page.root, "unfinished", "Marked already", "It has not changed since: the mark stands below.");
    return;
  }
  judged(page, { trying: "yes", decision: { [step]: said } }, (mark) => {
    practised.tries.push({ step, answer: said, after: practised.actions.length, mark });
    showState(page.root, mark.outcome, WORDS[mark.outcome], settledBy(practised, step) ? whatIsNext(page) : mark.says);
    marked(page, step);
  });
}

// The mark that settles a step takes the focus, and is read there: the bar does not say it too.
function whatIsNext(page) {
  const open = stepsAsked(page).find((step) => !settledBy(page.practised, step));
  return open ? `Next: ${page.root.querySelector(`[data-step="${open}"] > h2`).textContent}` : "The end of this case stands below.";
}

function hint(page, about) {
  const { practised } = page;
  judged(page, { hint: about, decision: decisionOf(practised) }, (mark) => {
    practised.hints.push({ about, after: practised.actions.length, mark });
    showState(page.root, "unfinished", "Hint", mark.says);
    marked(page, "");
  });
}

/** Ask for a mark; while one is awaited, or once another case is open, nothing is marked. */
function judged(page, also, heard) {
  const { practised } = page;
  if (page.awaits) {
    return;
  }
  page.awaits = true;
  ask(offerSteps, "practice", requestOf(practised, also), (reply) => {
    page.awaits = false;
    if (page.practised !== practised) {
      return;
    }
    if (reply.kind === "result") {
      heard(reply.findings[0]);
    } else {
      showUnmarked(page.root, reply);
    }
  });
}

function marked(page, step) {
  const { practised } = page;
  keepHalfDone(practised);
  const asked = stepsAsked(page);
  if (step && asked.every((one) => settledBy(practised, one))) {
    keepEnded(resultOf(practised, asked));
  }
  showSteps(page);
  showKept(page);
  if (settledBy(practised, step)) {
    page.root.querySelector(`[data-marks="${step}"]`).lastElementChild.focus();
  }
}

/** Which steps the level of the case asks for. */
function stepsAsked({ root, practised }) {
  return STEPS.filter((step) => root.querySelector(`[data-step="${step}"]`).dataset.levels.split(" ").includes(practised.level));
}

/** Show each step with its marks: one after the other, each once the one before it is settled. */
export function showSteps(page) {
  const { practised } = page;
  const asked = stepsAsked(page);
  asked.forEach((step, at) => {
    const section = page.root.querySelector(`[data-step="${step}"]`);
    section.hidden = at > 0 && !settledBy(practised, asked[at - 1]);
    section.querySelector("[data-open]").hidden = Boolean(settledBy(practised, step));
    showMarks(page, section, step);
  });
  showHints(page, "test");
  page.part("doing").hidden = !asked.includes("cause") || Boolean(settledBy(practised, "cause"));
  showEnd(page, asked.every((step) => settledBy(practised, step)));
}

function showMarks(page, section, step) {
  const tries = page.practised.tries.filter((one) => one.step === step);
  section.querySelector("[data-marks]").replaceChildren(...tries.map(({ mark }) => markItem(page, step, mark)));
  for (const button of section.querySelectorAll("[data-answer]")) {
    const isTried = tries.some((one) => one.answer === button.dataset.answer);
    button.toggleAttribute("data-tried", isTried);
  }
  showHints(page, step);
}

function showHints(page, about) {
  const hints = page.practised.hints.filter((one) => one.about === about);
  page.root.querySelector(`[data-hints="${about}"]`).replaceChildren(...hints.map(({ mark }) => hintItem(page, mark)));
}

function hintItem(page, mark) {
  const item = element("li", { class: "finding" }, element("p", {}, element("strong", {}, "Hint "), mark.says));
  item.append(...links(page, mark));
  return item;
}

/**
 * A mark with its word and shape, its reason, and the page of the table it rests on.
 *
 * Its outcome is that of the answer, not of the reading: no strip that would call the reading so.
 */
function markItem(page, step, mark) {
  const item = findingItem({ ...mark, numbers: null });
  item.tabIndex = -1;
  item.querySelector(".finding__word").textContent = WORDS[mark.outcome];
  item.querySelector(".finding__about").textContent = "";
  if (step === "limits") {
    item.append(...links(page, mark));
    return item;
  }
  item.append(link("troubleshooting/", "All causes, and what they rest on"));
  return item;
}

function links(page, { sources = [] }) {
  const named = [...new Set(sources.map((one) => one.document))].filter((name) => page.tables[name]);
  return named.map((name) => link(page.tables[name], `Limit tables of ${name}`));
}

function link(place, words) {
  return element("p", { class: "practice__link" }, element("a", { href: new URL(place, ROOT).href }, words));
}
