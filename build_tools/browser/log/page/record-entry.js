import { answerParts } from "../../reply/answer.js";
import { assumedWords } from "../../basics/assumptions.js";
import { element } from "../../basics/element.js";
import { begun } from "../../basics/capital.js";
import { aboutOf, valueName } from "../../reply/findings.js";
import { givenList } from "./request-list.js";
import { dayInWords, momentInWords, placeOf } from "../entry/words.js";
import { outcomeOf, outcomeOfFinding, toDoText, wordOf } from "../../basics/outcomes.js";
import { shapeOf } from "../../basics/verdict-shapes.js";
import { JUDGES, PASS } from "../../generated/words.js";

const COLUMNS = ["Finding", "Value", "Limit", "Verdict", "Where the limit stands"];

/**
 * Everything of one entry, laid out to be read and printed.
 *
 * Inputs: the entry; the tag of its headings; what is said elsewhere on the sheet, once for all.
 */
export function entryParts(entry, heading, saidElsewhere = []) {
  try {
    return parts(entry, heading, saidElsewhere);
  } catch {
    // From a newer build, a reply may hold what this one cannot lay out: better raw than not.
    return [element("pre", {}, JSON.stringify(entry, null, 1))];
  }
}

function parts({ checker, request, reply, kept, build, note }, heading, saidElsewhere) {
  const cautions = (reply.cautions ?? []).filter((one) => !saidElsewhere.includes(one));
  return [
    ...toDo(reply.still_to_do ?? []),
    element("p", { class: "sheet__about" },
      `${outcomeOf(reply) === "plan" ? "Planned" : "Judged"} for ${dayInWords(reply.on)} under ${reply.edition || reply.code} (${reply.code}). Kept ${momentInWords(kept)}. Build ${build}.`),
    note ? element("p", { class: "sheet__note" }, element("strong", {}, "Note: "), note) : "",
    element(heading, {}, "As typed"),
    givenList(checker, request),
    ...findings(reply.findings, heading),
    ...figures(reply.answer ?? {}, checker, heading),
    ...explanations(reply.explanations ?? [], heading),
    reply.next_test && !reply.still_to_do?.length ? element("p", {}, element("strong", {}, "Next test: "), `${reply.next_test.test}. ${reply.next_test.why}`) : "",
    cautions.length ? element("ul", { class: "cautions" }, ...cautions.map((one) => element("li", {}, one))) : "",
    reply.local_note && !saidElsewhere.includes(reply.local_note) ? element("p", { class: "local-note" }, reply.local_note) : "",
    reply.assumed?.length ? element("p", { class: "assumed" }, assumedWords(reply.assumed)) : "",
  ].filter(Boolean);
}

function toDo(missing) {
  return missing.length ? [element("p", {}, element("strong", {}, `${begun(PASS.still_to_do)}: `), `${missing.map(toDoText).join("; ")}.`)] : [];
}

function findings(all, heading) {
  if (all.length === 0) {
    return [element("p", {}, "Nothing was judged.")];
  }
  const head = COLUMNS.map((name) => element("th", { role: "columnheader", scope: "col" }, name));
  return [
    element(heading, {}, "Findings"),
    element("table", { class: "sheet__findings", role: "table" },
      element("thead", { role: "rowgroup" }, element("tr", { role: "row" }, ...head)),
      element("tbody", { role: "rowgroup" }, ...all.map(row))),
  ];
}

function row(finding) {
  const { says, judges, measured, limit, do_next: next, sources = [] } = finding;
  const outcome = outcomeOfFinding(finding);
  const cells = [
    [element("strong", {}, aboutOf(finding, { begins: true })), ` (${JUDGES[judges] ?? judges}). ${says}${next ? ` Next: ${next}` : ""}`],
    [measured ? `${measured} (${valueName(finding).toLowerCase()})` : "–"],
    [limit || "–"],
    [element("span", { class: "sheet__verdict", "data-outcome": outcome }, shapeOf(outcome), ` ${wordOf(outcome)}`)],
    [sources.map(placeOf).join("; ") || "–"],
  ];
  return element("tr", { role: "row" }, ...cells.map((cell, place) =>
    element("td", { role: "cell", "data-heading": COLUMNS[place] }, element("span", { class: "sheet__cell" }, ...cell))));
}

// A checker's page has other levels of headings than a sheet.
function figures(answer, checker, heading) {
  return answerParts(answer, checker).map((part) => (/^H\d$/.test(part.tagName) ? element(heading, {}, part.textContent) : part));
}

function explanations(all, heading) {
  const one = ({ name, probability, do_next: next }) =>
    element("li", {}, `${name}: ${Math.round(probability * 100)} %.${next ? ` Next: ${next}` : ""}`);
  return all.length ? [element(heading, {}, "What would explain it"), element("ol", {}, ...all.map(one))] : [];
}
