import { begun } from "../basics/capital.js";
import { element } from "../basics/element.js";
import { isPlan, outcomeOfFinding, wordOf } from "../basics/outcomes.js";
import { quantityText } from "../basics/quantity.js";
import { shapeOf } from "../basics/verdict-shapes.js";
import { stripOf, updateStrip } from "../drawings/strip.js";
import { EVIDENCE, OUTCOMES, TESTS } from "../generated/words.js";

/**
 * One finding: its outcome in word and shape, the figures, where they lie, one sentence, what to
 * do, sources.
 *
 * `former` is what showed the same finding before: its strip moves on, and what was open stays.
 */
export function findingItem(finding, former = null) {
  return element(
    "li",
    { class: "finding", "data-outcome": outcomeOfFinding(finding) },
    head(finding),
    figures(finding),
    strip(finding, former?.querySelector(".strip")),
    element("p", { class: "finding__says" }, finding.says),
    finding.do_next ? element("p", { class: "next" }, `Next: ${finding.do_next}`) : "",
    sources(finding.sources ?? [], former?.querySelector(".sources")?.open ?? false),
  );
}

function head(finding) {
  const outcome = outcomeOfFinding(finding);
  const about = isPlan(finding) ? [] : [" ", element("span", { class: "finding__about" }, aboutOf(finding, { begins: true }))];
  const word = element("strong", { class: "finding__word" }, wordOf(outcome));
  return element("p", { class: "finding__head" }, shapeOf(outcome), word, ...about);
}

/** What a finding is about, with the device unless that is named in it. */
export function aboutOf({ device, about }, { begins = false } = {}) {
  const named = testNamed(about);
  if (device && !names(about, device)) {
    return `${device}: ${named}`;
  }
  return begins && !(device && about.startsWith(device)) ? begun(named) : named;
}

function names(about, device) {
  return about.startsWith(`${device} before `) || about.endsWith(` through ${device}`);
}

/** What a finding is about, its test under the name that a reader knows: first, or after a word. */
export function testNamed(about) {
  const [test, ...rest] = about.split(" ");
  return test in TESTS
    ? [TESTS[test], ...rest.map(inASentence)].join(" ")
    : inASentence(about);
}

function inASentence(text) {
  return text.replace(/\b[a-z]+-[a-z]+\b/g, (key) => TESTS[key]?.toLowerCase() ?? key);
}

/** What the figure of a finding is called: measured only where it was; a reply kept before this was said has a subject then. */
export function valueName({ measured_as: how, subject }) {
  return begun(how ?? (subject ? "measured" : "value"));
}

function figures(finding) {
  const { measured, limit, margin, numbers } = finding;
  const room = typeof margin === "number" && numbers ? quantityText(margin, numbers.unit) : "";
  const pairs = [[valueName(finding), measured], ["Limit", limit], ["Margin", room]].filter(([, value]) => value);
  if (pairs.length === 0) {
    return "";
  }
  const cells = pairs.map(([name, value]) =>
    element("div", {}, element("dt", {}, name), element("dd", {}, value)));
  return element("dl", { class: "figures" }, ...cells);
}

function strip({ numbers, measured, limit, outcome }, former) {
  if (!numbers) {
    return "";
  }
  const said = `${measured}${spanOf(numbers)}; limit ${limit}: ${OUTCOMES[outcome]}`;
  if (!former) {
    return stripOf(numbers, said);
  }
  updateStrip(former, numbers, said);
  return former;
}

function spanOf({ unit, value, least, most }) {
  if (value === null || least === most) {
    return "";
  }
  if (least === null || most === null) {
    return least === null ? ", anywhere up to that" : ", anywhere from that on";
  }
  return `, may be ${quantityText(least, unit)} to ${quantityText(most, unit)}`;
}

function sources(all, open) {
  if (all.length === 0) {
    return "";
  }
  const more = all.length > 1 ? ` and ${all.length - 1} more` : "";
  return element(
    "details",
    { class: "sources", open },
    element("summary", {}, `Source: ${placeOf(all[0])}${more}`),
    element("ul", {}, ...all.map((one) => element("li", {}, sourceText(one)))),
  );
}

export function sourceText(source) {
  return `${placeOf(source)} (${EVIDENCE[source.evidence]})`;
}

function placeOf({ document: name, edition, clause }) {
  return [name, edition, clause].filter(Boolean).join(", ");
}
