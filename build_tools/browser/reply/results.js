import { answerParts } from "./answer.js";
import { assumedWords } from "../basics/assumptions.js";
import { element } from "../basics/element.js";
import { findingGroups } from "./finding-groups.js";
import { begun } from "../basics/capital.js";
import { toDoText } from "../basics/outcomes.js";
import { treeParts } from "../drawings/arrangement.js";
import { PASS } from "../generated/words.js";

/** Everything of a reply below the bar; without a reply, nothing. */
export function showResults(root, reply) {
  const place = root.querySelector("[data-results]");
  place.replaceChildren(...(reply ? parts(place, reply) : []));
}

function parts(place, reply) {
  return [
    ...treeParts(reply.answer?.drawing),
    ...findingGroups(place, reply.findings),
    ...answerParts(reply.answer ?? {}, reply.checker),
    ...explanations(reply.explanations ?? []),
    ...toDo(reply),
    ...cautions(reply),
    ...assumed(reply.assumed),
  ];
}

function explanations(all) {
  if (all.length === 0) {
    return [];
  }
  return [element("h2", {}, "What would explain it"), element("ol", { class: "causes" }, ...all.map(cause))];
}

function cause(one) {
  const share = `${Math.round(one.probability * 100)}\u00a0%`;
  return element(
    "li",
    { class: "cause" },
    element("p", { class: "cause__name" }, element("strong", {}, one.name), ` ${share}`),
    element("meter", { class: "cause__share", min: 0, max: 1, value: one.probability, "aria-label": `${one.name}: ${share}` }),
    ...reasons("Speaks for it", one.for),
    ...reasons("Speaks against it", one.against),
    one.do_next ? element("p", { class: "next" }, `Next: ${one.do_next}`) : "",
  );
}

function reasons(title, list = []) {
  return list.length ? [element("p", {}, `${title}: ${list.join("; ")}.`)] : [];
}

function toDo({ still_to_do: missing = [], next_test: test }) {
  if (missing.length > 0) {
    return [element("h2", {}, begun(PASS.still_to_do)), element("ul", {}, ...missing.map((one) => element("li", {}, toDoText(one))))];
  }
  return test
    ? [element("h2", {}, "The test that would tell most"), element("p", {}, element("strong", {}, `${begun(test.test)}.`), ` ${test.why}`)]
    : [];
}

// What stands at the foot of the page already is not said twice.
function cautions({ cautions: all = [], local_note: note }) {
  const said = [...document.querySelectorAll(".foot :is(li, p)")].map((one) => one.textContent);
  const own = all.filter((caution) => !said.includes(caution));
  if (own.length === 0 && said.includes(note)) {
    return [];
  }
  return [
    element("h2", {}, "For this case"),
    own.length ? element("ul", { class: "cautions" }, ...own.map((caution) => element("li", {}, caution))) : "",
    said.includes(note) ? "" : element("p", { class: "local-note" }, note),
  ];
}

// In the log stand replies of older builds, which do not name what they took.
function assumed(all = []) {
  return all.length ? [element("p", { class: "assumed" }, assumedWords(all))] : [];
}
