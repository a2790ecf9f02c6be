import { element } from "../basics/element.js";

/**
 * What was given to a field that its control cannot hold, or to a name that has no field.
 *
 * It is kept as it came, sent as it came, so that Python takes or refuses it, and shown as it came,
 * until the reader chooses otherwise or leaves it out. It never becomes another value.
 */
const held = new WeakMap();
const SHOWN = 80; // characters

/** Hold a value as it was given to a field, and show it there, with a way to leave it out. */
export function holdAsGiven(field, value, leave) {
  const button = element("button", { type: "button", class: "suggestion", "data-done": "Left out." }, "Leave it out");
  button.addEventListener("click", () => leaveOut(field, leave));
  held.set(field, value);
  field.querySelector("[data-problem]").before(
    element("p", { class: "as-given", "data-as-given": true }, `Given: “${inShort(value)}” `, button),
  );
}

function leaveOut(field, leave) {
  const scope = field.parentElement;
  leave();
  (field.isConnected ? field : scope).querySelector("input, select, textarea").focus();
  ["input", "change"].forEach((kind) => scope.dispatchEvent(new Event(kind, { bubbles: true })));
}

/** Whether a field holds a value as it was given. */
export function isAsGiven(field) {
  return held.has(field);
}

/** The value that a field holds as it was given. */
export function asGiven(field) {
  return held.get(field);
}

/** Hold no more what was given to a field. */
export function letGo(field) {
  if (held.delete(field)) {
    field.querySelector("[data-as-given]").remove();
  }
}

/** Make a field for what was given under a name that has none, or that is no such group or list. */
export function strangeField(name, value) {
  const field = element("fieldset", { class: "field field--strange", "data-field": name, "data-strange": true },
    element("legend", { class: "field__label" }, cut(name)),
    element("p", { class: "field__problem", "data-problem": true, hidden: true }));
  holdAsGiven(field, value, () => field.remove());
  return field;
}

/** A value in so few letters that it can be shown. */
export function inShort(value) {
  const text = typeof value === "string" ? value : JSON.stringify(value);
  const isLong = text.length > SHOWN && Array.isArray(value);
  return cut(isLong ? `${value.length.toLocaleString("en-GB")} entries: ${text}` : text);
}

/** A text as Python shows it where it is long. */
export function cut(text) {
  return text.length > SHOWN ? `${text.slice(0, SHOWN - 1)}…` : text;
}
