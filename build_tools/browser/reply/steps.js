import { element } from "../basics/element.js";
import { isEmpty, nameOf, textOf } from "./answer-words.js";
import { TESTS } from "../generated/words.js";

const FIRST = ["limit", "loads", "required_by"]; // what is wanted at the board beside what to do
const SAID = ["test", "do", "multiple", "current", "waveform", "phase", "standing"]; // in "do" already

/** The steps of a plan: what to do and the limit in view, the rest of each a tap away. */
export function stepsPart(steps) {
  return element("ol", { class: "steps" }, ...steps.map(step));
}

function step(one, place) {
  const rest = Object.entries(one).filter(([name, value]) =>
    ![...FIRST, ...SAID, "sources"].includes(name) && !isEmpty(value));
  return element(
    "li",
    { class: "step" },
    element("h3", { class: "step__test" }, numbered(place), TESTS[one.test] ?? nameOf(one.test)),
    element("p", { class: "step__do" }, one.do),
    pairs(FIRST.filter((name) => !isEmpty(one[name])).map((name) => [name, one[name]]), "figures"),
    rest.length + one.sources.length
      ? element(
        "details",
        { class: "sources" },
        element("summary", {}, "How, why, and what if it fails", element("span", { class: "unseen" }, `: step ${place + 1}`)),
        pairs(rest, "step__rest"),
        one.sources.length ? element("ul", {}, ...one.sources.map((source) => element("li", {}, textOf(source)))) : "",
      )
      : "",
  );
}

// Whoever hears headings alone would hear the same test several times: the list's numbers are apart.
function numbered(place) {
  return element("span", { class: "unseen" }, `Step ${place + 1}: `);
}

function pairs(entries, kind) {
  const cells = entries.map(([name, value]) =>
    element("div", {}, element("dt", {}, nameOf(name)), element("dd", {}, textOf(value))));
  return element("dl", { class: kind }, ...cells);
}
