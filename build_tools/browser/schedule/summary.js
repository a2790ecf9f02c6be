import { element } from "../basics/element.js";
import { rowItem } from "./rows.js";
import { sentences } from "./words.js";

const SHOWN = 20; // rows that come first

/** Show what a schedule comes to: devices by outcome, the rate of failures, the surveys. */
export function showTotals(place, reply) {
  const { answer, findings } = reply;
  place.replaceChildren(
    element("h2", {}, "What it comes to"),
    element("p", {}, findings[0].says),
    element("p", {}, rateOf(answer)),
    listed("Asked back", answer.questions),
    listed("Taken for granted", answer.assumed),
  );
}

function rateOf({ failure_rate: rate, failure_rate_at_least: low, failure_rate_at_most: high, devices }) {
  if (!rate) {
    return "";
  }
  const judged = devices.pass + devices.borderline + devices.fail;
  return `${devices.fail} of ${judged} judged devices fail: ${rate.value} % (95 % interval ${low.value} to ${high.value} %).`;
}

/** Show the rows that need a person, the most dangerous first. */
export function showFirst(place, reply, rows, headings) {
  const { first, need_a_person: count } = reply.answer;
  if (first.length === 0) {
    place.replaceChildren();
    return;
  }
  const byLine = new Map(rows.map((row) => [row.line, row]));
  const items = first.slice(0, SHOWN).map(({ line }) => rowItem(byLine.get(line), headings));
  const more = count > items.length ? element("p", {}, `And ${count - items.length} more among the rows below.`) : "";
  place.replaceChildren(element("h2", {}, "These rows first"), element("ul", { class: "findings" }, ...items), more);
}

/** Show what stands beside the figures: surveys, and the cautions that the page has not. */
export function showNotes(place, reply) {
  const surveys = reply.answer.surveys.map((one) => `${one.failed.value} %: ${one.says}. ${one.source}.`);
  place.replaceChildren(
    element("h2", {}, "Published surveys, to set the rate beside"),
    sentences(surveys),
    element("h2", {}, "For this case"),
    sentences(reply.cautions.slice(0, 1)),
    element("p", { class: "local-note" }, reply.local_note),
  );
}

function listed(title, all) {
  return all.length ? element("div", {}, element("h3", {}, title), sentences(all)) : "";
}
