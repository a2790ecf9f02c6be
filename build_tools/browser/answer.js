import { element } from "./element.js";
import { plot } from "./plot.js";
import { NAMES } from "./words.js";

/** What a checker worked out: figures, words, lists, tables and curves, each by its shape. */
export function answerParts(answer) {
  const entries = Object.entries(answer);
  const single = entries.filter(([, value]) => !Array.isArray(value) && !isEmpty(value));
  const lists = entries.filter(([, value]) => Array.isArray(value) && value.length > 0);
  if (single.length === 0 && lists.length === 0) {
    return [];
  }
  const figures = single.map(([name, value]) =>
    element("div", {}, element("dt", {}, nameOf(name)), element("dd", {}, textOf(value))));
  return [
    element("h2", {}, "Figures"),
    ...(figures.length ? [element("dl", { class: "figures figures--answer" }, ...figures)] : []),
    ...lists.flatMap(([name, value]) => listParts(name, value)),
  ];
}

function listParts(name, list) {
  if (name === "points" || list.every(isPoint)) {
    return [plot(nameOf(name), list)];
  }
  const heading = element("h3", {}, nameOf(name));
  if (list.every((one) => typeof one === "object" && !isFigure(one))) {
    return [heading, table(nameOf(name), list)];
  }
  return [heading, element("ul", {}, ...list.map((one) => element("li", {}, textOf(one))))];
}

function table(caption, rows) {
  const columns = [...new Set(rows.flatMap(Object.keys))];
  const filled = columns.filter((column) => rows.some((row) => !isEmpty(row[column])));
  const head = filled.map((column) => element("th", { scope: "col" }, nameOf(column)));
  const body = rows.map((row) =>
    element("tr", {}, ...filled.map((column) => element("td", {}, textOf(row[column])))));
  return element(
    "div",
    { class: "table", tabindex: 0, role: "region", "aria-label": caption },
    element("table", { class: "sheet__table" }, element("thead", {}, element("tr", {}, ...head)), element("tbody", {}, ...body)),
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
  if (typeof value === "object") {
    return Object.entries(value).map(([name, inner]) => `${nameOf(name)}: ${textOf(inner)}`).join("; ");
  }
  return typeof value === "number" ? number(value) : String(value);
}

function number(value) {
  return typeof value === "number" ? String(Number(value.toPrecision(4))) : String(value);
}

function nameOf(key) {
  const words = NAMES[key] ?? key.replaceAll("_", " ").replaceAll("-", " ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function isFigure(value) {
  return typeof value === "object" && value !== null && "value" in value && "unit" in value;
}

function isPoint(value) {
  return Array.isArray(value) && value.length === 2 && value.every((one) => typeof one === "number");
}

function isEmpty(value) {
  return value === null || value === undefined || value === "";
}
