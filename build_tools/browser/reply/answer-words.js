import { begun } from "../basics/capital.js";
import { sourceText, testNamed } from "./findings.js";
import { numberText, quantityText } from "../basics/quantity.js";
import { NAMES, RESULTS, VALUES } from "../generated/words.js";

const KEY = /^[a-z][a-z0-9]*(-[a-z0-9]+)+$/; // a value that is a key of a table
const SHARE = "_fraction"; // what the name of a share of a whole ends in
const WRITTEN = { ac: "AC", dc: "DC", rms: "r.m.s. value", id: "name" };

/** A value as text: a figure with its unit, a list, yes or no, a word. */
export function textOf(value) {
  if (isEmpty(value)) {
    return "–";
  }
  if (isFigure(value)) {
    return figureText(value);
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
  return typeof value === "number" ? numberText(value) : wordOf(String(value));
}

/** A share of a whole as per cent; any other value as it is. */
export function inPerCent(name, value) {
  return name.endsWith(SHARE) ? { value: 100 * value.value, unit: "%" } : value;
}

function figureText({ value, unit }) {
  return typeof value === "number" ? quantityText(value, unit) : `${value} ${unit}`.trim();
}

function wordOf(value) {
  const named = VALUES[value] ?? testNamed(value);
  return KEY.test(named) ? inWords(named) : named;
}

/** The name of a result or a column. */
export function nameOf(key) {
  const words = RESULTS[key] ?? NAMES[key] ?? inWords(key);
  return begun(words);
}

function inWords(key) {
  return key.replaceAll(/[_-]/g, " ").replaceAll(/\b(ac|dc|rms|id)\b/g, (short) => WRITTEN[short]);
}

export function isFigure(value) {
  return typeof value === "object" && value !== null && "value" in value && "unit" in value;
}

export function isEmpty(value) {
  return value === null || value === undefined || value === "" || value?.length === 0;
}
