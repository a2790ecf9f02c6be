import { calendarPart } from "./calendar.js";
import { element } from "./element.js";
import { sourceText } from "./findings.js";
import { plot } from "./plot.js";
import { AXES, NAMES } from "./words.js";

const ELSEWHERE = ["drawing", "calendar"]; // the tree of devices above the findings; a file
const SHORT = 26; // characters that fit beside another figure
const COLUMNS = 4; // as many as a phone shows side by side

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
    ...lists.flatMap(([name, value]) => listParts(checker, name, value)),
    ...calendarPart(answer.calendar),
  ];
}

function figures(entries) {
  const cells = entries.map(([name, value]) => {
    const text = textOf(value);
    const long = text.length > SHORT ? "figures__long" : null;
    return element("div", { class: long }, element("dt", {}, nameOf(name)), element("dd", {}, text));
  });
  return element("dl", { class: "figures figures--answer" }, ...cells);
}

function listParts(checker, name, list) {
  const axes = AXES[checker]?.[name];
  if (axes) {
    return [plot(list, axes)];
  }
  const heading = element("h3", {}, nameOf(name));
  if (list.every((one) => typeof one === "object" && !Array.isArray(one) && !isFigure(one))) {
    return [heading, rows(nameOf(name), list)];
  }
  return [heading, element("ul", {}, ...list.map((one) => element("li", {}, textOf(one))))];
}

function rows(caption, list) {
  const columns = [...new Set(list.flatMap(Object.keys))];
  const filled = columns.filter((column) => list.some((row) => !isEmpty(row[column])));
  return filled.length > COLUMNS ? cards(list) : table(caption, filled, list);
}

function cards(list) {
  const items = list.map((row) =>
    element("li", {}, figures(Object.entries(row).filter(([, value]) => !isEmpty(value)))));
  return element("ol", { class: "cards" }, ...items);
}

function table(caption, columns, list) {
  const head = columns.map((column) => element("th", { scope: "col" }, nameOf(column)));
  const body = list.map((row) =>
    element("tr", {}, ...columns.map((column) => element("td", {}, textOf(row[column])))));
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

/** A value as text: a figure with its unit, a list, yes or no, a word. */
export function textOf(value) {
  if (isEmpty(value)) {
    return "–";
  }
  if (isFigure(value)) {
    return `${number(value.value)} ${value.unit}`.trim();
  }
  if (Array.isArray(value)) {
    return value.map(textOf).join(", ");
  }
  if (typeof value === "boolean") {
    return value ? "yes" : "no";
  }
  if (typeof value === "object" && "evidence" in value) {
    return sourceText(value);
  }
  if (typeof value === "object") {
    return Object.entries(value).map(([name, inner]) => `${nameOf(name)}: ${textOf(inner)}`).join("; ");
  }
  return typeof value === "number" ? number(value) : String(value);
}

function number(value) {
  return typeof value === "number" ? String(Number(value.toPrecision(4))) : String(value);
}

function nameOf(key) {
  const plain = key.replaceAll("_", " ").replaceAll("-", " ");
  const words = NAMES[key] ?? plain.replace(/\b(ac|dc)\b/g, (one) => one.toUpperCase());
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function isFigure(value) {
  return typeof value === "object" && value !== null && "value" in value && "unit" in value;
}

function isEmpty(value) {
  return value === null || value === undefined || value === "" || value?.length === 0;
}
