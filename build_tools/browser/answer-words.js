import { sourceText, testNamed } from "./findings.js";
import { NAMES } from "./words.js";

const KEY = /^[a-z][a-z0-9]*(-[a-z0-9]+)+$/; // a value that is a key of a table

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
  return typeof value === "number" ? number(value) : wordOf(String(value));
}

function number(value) {
  return typeof value === "number" ? String(Number(value.toPrecision(4))) : String(value);
}

function wordOf(value) {
  const named = testNamed(value);
  return KEY.test(named) ? named.replaceAll("-", " ") : named;
}

/** The name of a result or a column. */
export function nameOf(key) {
  const plain = key.replaceAll("_", " ").replaceAll("-", " ");
  const words = NAMES[key] ?? plain.replace(/\b(ac|dc)\b/g, (one) => one.toUpperCase());
  return words.charAt(0).toUpperCase() + words.slice(1);
}

export function isFigure(value) {
  return typeof value === "object" && value !== null && "value" in value && "unit" in value;
}

export function isEmpty(value) {
  return value === null || value === undefined || value === "" || value?.length === 0;
}
