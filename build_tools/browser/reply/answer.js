import { calendarPart } from "./calendar.js";
import { element } from "../basics/element.js";
import { begun } from "../basics/capital.js";
import { inPerCent, isEmpty, isFigure, nameOf, textOf } from "./answer-words.js";
import { plot } from "../drawings/plot.js";
import { stepsPart } from "./steps.js";
import { AXES } from "../generated/words.js";

const ELSEWHERE = ["drawing", "calendar"]; // the tree of devices above the findings; a file
const SHORT = 26; // characters that fit beside another figure
const COLUMNS = 4; // as many as a phone shows side by side
const LONGEST = 40; // characters of a cell; a longer text wants the whole width
const SOURCE = "_source"; // what a figure's source is called after the figure

/** What a checker worked out: figures, words, lists, tables and curves, each by its shape. */
export function answerParts(answer, checker = "") {
  const entries = Object.entries(answer).filter(([name, value]) => !ELSEWHERE.includes(name) && !isEmpty(value));
  const single = entries.filter(([, value]) => !Array.isArray(value));
  const lists = entries.filter(([, value]) => Array.isArray(value));
  if (entries.length === 0) {
    return [];
  }
  return [
    element("h2", {}, "Figures"),
    ...(single.length ? [figures(single)] : []),
    ...lists.flatMap(([name, value]) => listParts({ checker, answer, name }, value)),
    ...calendarPart(answer.calendar),
  ];
}

function figures(entries) {
  const all = Object.fromEntries(entries);
  const shown = entries.filter(([name]) => !(name.endsWith(SOURCE) && name.slice(0, -SOURCE.length) in all));
  const cells = shown.map(([name, value]) => figure(name, textOf(inPerCent(name, value)), all[name + SOURCE]));
  return element("dl", { class: "figures figures--answer" }, ...cells);
}

function figure(name, text, source) {
  const wide = text.length > SHORT ? "figures__long" : source ? "figures__sourced" : null;
  return element(
    "div",
    { class: wide },
    element("dt", {}, nameOf(name)),
    element("dd", {}, text),
    source ? element("dd", { class: "figures__source" }, textOf(source)) : "",
  );
}

function listParts({ checker, answer, name }, list) {
  const axes = AXES[checker]?.[name];
  if (axes) {
    return [plot(list, axes, besides(axes, answer))];
  }
  if (name === "steps" && list.every(({ test }) => test)) {
    return [stepsPart(list)];
  }
  const drawn = Object.values(AXES[checker] ?? {}).some(({ band }) => band === name);
  const parts = [element("h3", {}, nameOf(name)), listed(name, list)];
  return drawn ? [element("details", { class: "further" }, element("summary", {}, `${nameOf(name)}, in figures`), parts[1])] : parts;
}

/** What is drawn beside a line: the band about it, and the points that are known. */
function besides({ band, known }, answer) {
  const numbers = (row) => Object.values(row).map((value) => (isFigure(value) ? value.value : value));
  const points = answer[known] ?? [];
  return {
    band: (answer[band] ?? []).map(numbers),
    known: points.filter(({ kind }) => kind !== "declared").map(numbers),
    declared: points.filter(({ kind }) => kind === "declared").map(numbers),
  };
}

function listed(name, list) {
  if (list.every((one) => typeof one === "object" && !Array.isArray(one) && !isFigure(one))) {
    return rows(nameOf(name), list);
  }
  const inOrder = name === "steps";
  return element(inOrder ? "ol" : "ul", {}, ...list.map((one) => element("li", {}, begun(textOf(one)))));
}

function rows(caption, list) {
  const columns = [...new Set(list.flatMap(Object.keys))];
  const filled = columns.filter((column) => list.some((row) => !isEmpty(row[column])));
  const wordy = list.some((row) => filled.some((column) => textOf(row[column]).length > LONGEST));
  return wordy || filled.length > COLUMNS ? cards(list) : table(caption, filled, list);
}

function cards(list) {
  const items = list.map((row) =>
    element("li", {}, figures(Object.entries(row).filter(([, value]) => !isEmpty(value)))));
  return element("ol", { class: "cards" }, ...items);
}

function cell(text, leads) {
  return leads ? element("th", { scope: "row" }, text) : element("td", {}, text);
}

function table(caption, columns, list) {
  const head = columns.map((column) => element("th", { scope: "col" }, nameOf(column)));
  const body = list.map((row) =>
    element("tr", {}, ...columns.map((column, place) => cell(textOf(row[column]), place === 0))));
  return element(
    "div",
    { class: "table", tabindex: 0, role: "region", "aria-label": caption },
    element(
      "table",
      { class: "sheet__table" },
      element("thead", {}, element("tr", {}, ...head)),
      element("tbody", {}, ...body),
    ),
  );
}
