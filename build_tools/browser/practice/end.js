import { ask } from "../client/client.js";
import { element } from "../basics/element.js";
import { findingItem } from "../reply/findings.js";
import { decisionOf, howItWent, requestOf, STEP_NAMES, STEPS, WENT, wrongIn } from "./case.js";
import { showUnmarked } from "./no-mark.js";

const ENOUGH = { pass: "Enough", borderline: "Not enough" }; // what was done, to tell the cause
const LISTED = 4; // causes, the most likely first

/** Show the end of a case: what it was, whether enough was done, what the readings pointed to. */
export function showEnd(page, isOver) {
  const place = page.part("end");
  if (!isOver) {
    place.hidden = true;
    place.replaceChildren();
    return;
  }
  const { practised } = page;
  ask(showEnd, "practice", requestOf(practised, { decision: decisionOf(practised) }), (reply) => {
    if (page.practised !== practised) {
      return;
    }
    if (reply.kind === "result") {
      place.replaceChildren(...endParts(page, practised, reply));
      place.hidden = false;
    } else {
      showUnmarked(page.root, reply);
    }
  });
}

function endParts(page, practised, { answer, findings, explanations }) {
  const again = element("button", { type: "button", class: "action practice__next" }, "Next case");
  again.addEventListener("click", () => page.next());
  const tests = findings.filter(({ about }) => about === "tests");
  return [
    element("h2", {}, "The end of this case"),
    element("p", {}, "It was: ", element("strong", {}, answer.cause ?? ""), "."),
    summary(practised),
    tests.length ? element("ul", { class: "findings" }, ...tests.map(testsItem)) : "",
    ...chances(explanations),
    element("p", {}, again),
  ].filter(Boolean);
}

// Of what was done, not of a reading: neither passes.
function testsItem(finding) {
  const item = findingItem(finding);
  item.querySelector(".finding__word").textContent = ENOUGH[finding.outcome];
  return item;
}

function summary(practised) {
  const went = STEPS.filter((step) => howItWent(practised, step)).map((step) => {
    const wrong = wrongIn(practised, step);
    const words = `${STEP_NAMES[step]}: ${WENT[howItWent(practised, step)]}`;
    return wrong ? `${words}, wrong answers: ${wrong}` : words;
  });
  return element("ul", {}, ...[...went, `Hints: ${practised.hints.length}`].map((one) => element("li", {}, one)));
}

function chances(explanations) {
  if (explanations.length === 0) {
    return [];
  }
  const items = explanations.slice(0, LISTED).map((one) =>
    element("li", {}, `${one.name}: ${Math.round(100 * one.probability)} %`));
  return [element("h3", {}, "What all that was done points to"), element("ol", {}, ...items)];
}
