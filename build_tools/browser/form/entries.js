/** Lists in a form: an entry is a copy of the list's template. */

import { isAsGiven } from "./unknown-values.js";
import { saysSomething, setValue, valueOf } from "./fields.js";
import { fieldsIn, showInWords } from "./entry-summary.js";

let made = 0;

/** Add an empty entry at the end of a list, and give it back. */
export function addEntry(list) {
  const template = list.querySelector(":scope > template");
  const copy = document.createElement("template");
  // Ids and radio groups carry the list's key: each entry gets a number never used before.
  made += 1;
  const { key } = list.dataset;
  copy.innerHTML = template.innerHTML.replaceAll(`${key}[#]`, `${key}[${made}]`);
  const entry = copy.content.querySelector("[data-entry]");
  list.querySelector(":scope > [data-entries]").append(entry);
  renumber(list);
  foldAway(entry, false);
  return entry;
}

/**
 * Add an entry that goes on from the last one, or that begins as one of the usual ones.
 *
 * It counts only once something is typed in it. What the usual ones set, and its other name, is
 * not carried over between them; the rest, such as the day, is. Without one, the start goes from
 * 0° to 180°. A list without usual ones carries nothing: its entries are different things.
 */
export function addNext(list, values = null) {
  const last = [...list.querySelectorAll("[data-entry]")].pop();
  const usual = namesOfStarts(list);
  const carried = last && usual.length ? settingsOf(last) : {};
  if (values) {
    [...usual, "current"].forEach((name) => delete carried[name]);
  }
  if (!values && carried.phase === "0") {
    carried.phase = "180";
  }
  if (last && isBlank(last)) {
    last.remove();
  }
  const entry = addEntry(list);
  for (const field of fieldsIn(entry)) {
    const value = (values ?? {})[field.dataset.field] ?? carried[field.dataset.field];
    if (value !== undefined && field.dataset.field !== list.dataset.folded) {
      setValue(field, value);
      entry.dataset.untouched = "";
    }
  }
  foldAway(entry, "untouched" in entry.dataset);
  return entry;
}

/** Fold an entry, or unfold it while nothing is said in it. */
export function foldAway(entry, folded) {
  const rest = entry.querySelector(":scope > [data-rest]");
  if (rest) {
    const said = showInWords(entry);
    rest.open = !(folded && said);
  }
}

/** Whether an entry still waits for what it is about: whatever has been typed in it counts. */
export function waits(entry) {
  const lead = entry.closest("[data-many]").dataset.folded;
  const leading = fieldsIn(entry).find((field) => field.dataset.field === lead);
  return "untouched" in entry.dataset && !valueOf(leading);
}

function settingsOf(entry) {
  const said = fieldsIn(entry).filter((field) => saysSomething(field) && !isAsGiven(field));
  return Object.fromEntries(said.map((field) => [field.dataset.field, valueOf(field)]));
}

function isBlank(entry) {
  return fieldsIn(entry).every((field) => valueOf(field) === (field.dataset.default ?? ""));
}

function namesOfStarts(list) {
  const starts = [...list.querySelectorAll(":scope > .starts [data-start]")];
  return starts.flatMap((start) => Object.keys(JSON.parse(start.dataset.start)));
}

/** Take an entry away; the last one is emptied by whoever asks, not taken. */
export function removeEntry(entry) {
  const list = entry.closest("[data-many]");
  entry.remove();
  renumber(list);
}

/** Take all entries of a list away. */
export function removeEntries(list) {
  list.querySelector(":scope > [data-entries]").replaceChildren();
}

/** Number the entries of a list anew, and tell its buttons whether there is room for another. */
export function renumber(list) {
  const entries = list.querySelectorAll(":scope > [data-entries] > [data-entry]");
  [...entries].forEach((entry, place) => {
    for (const number of entry.querySelectorAll("[data-number]")) {
      if (number.closest("[data-entry]") === entry) {
        number.textContent = String(place + 1);
      }
    }
  });
  const full = entries.length >= Number(list.dataset.most);
  list.querySelectorAll(":scope > [data-add], :scope > .starts button").forEach((button) => {
    button.disabled = full;
  });
}
