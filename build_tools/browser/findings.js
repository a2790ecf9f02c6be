import { element } from "./element.js";
import { shapeOf } from "./shapes.js";
import { EVIDENCE, OUTCOMES } from "./words.js";

/** One finding: its outcome in word and shape, the figures, one sentence, what to do, sources. */
export function findingItem(finding) {
  return element(
    "li",
    { class: "finding", "data-outcome": finding.outcome },
    element(
      "p",
      { class: "finding__head" },
      shapeOf(finding.outcome),
      element("strong", { class: "finding__word" }, OUTCOMES[finding.outcome]),
      " ",
      element("span", { class: "finding__about" }, aboutOf(finding)),
    ),
    figures(finding),
    element("p", { class: "finding__says" }, finding.says),
    finding.do_next ? element("p", { class: "next" }, `Next: ${finding.do_next}`) : "",
    sources(finding.sources ?? []),
  );
}

/** What a finding is about, with the device where there are several. */
export function aboutOf({ device, about }) {
  return device ? `${device}: ${about}` : about;
}

function figures({ measured, limit }) {
  const pairs = [["Measured", measured], ["Limit", limit]].filter(([, value]) => value);
  if (pairs.length === 0) {
    return "";
  }
  const cells = pairs.map(([name, value]) =>
    element("div", {}, element("dt", {}, name), element("dd", {}, value)));
  return element("dl", { class: "figures" }, ...cells);
}

function sources(all) {
  if (all.length === 0) {
    return "";
  }
  return element(
    "details",
    { class: "sources" },
    element("summary", {}, "Where the limit comes from"),
    element("ul", {}, ...all.map((one) => element("li", {}, sourceText(one)))),
  );
}

export function sourceText({ document: name, edition, clause, evidence }) {
  const place = [name, edition, clause].filter(Boolean).join(", ");
  return `${place} (${EVIDENCE[evidence]})`;
}
