import { leaves } from "../basics/address.js";
import { element } from "../basics/element.js";
import { foldAway, renumber } from "./entries.js";
import { read, write } from "./form.js";

/** Say that something made way, with a button that brings it back. */
export function undoPart(says, back) {
  const button = element("button", { type: "button", class: "action", "data-undo": true }, "Undo");
  button.addEventListener("click", back);
  return element("div", { class: "of-last", "data-told-undo": true }, element("p", { role: "status" }, says), button);
}

/**
 * What a button takes away of what was typed can be had back, until the reader types again.
 *
 * One rule for every button of a form, whatever it does: the form is looked at before and after, and
 * where a value that stood there is gone, the way back is offered.
 */
export function offerUndo(checker, options) {
  const { form } = checker;
  const undo = { checker, form, steps: [], before: null };
  form.addEventListener("click", ({ target }) => {
    const button = target.closest("button");
    undo.before = button && !("undo" in button.dataset) ? { button, says: wordsOf(button), at: placeOf(button), ...taken(checker) } : null;
  }, { ...options, capture: true });
  form.addEventListener("click", () => undo.before && offerIfLost(undo, undo.before), options);
  form.addEventListener("input", ({ isTrusted }) => isTrusted && forget(undo), options);
  return {
    /** Do what puts another case in the place of what was typed, with a way back. */
    replacing(says, action) {
      const before = { button: null, says, at: null, ...taken(checker) };
      forget(undo);
      action();
      offerIfLost(undo, before);
    },
  };
}

function taken({ form, device }) {
  const held = device.whole();
  const lists = [...form.querySelectorAll("[data-entries]")].map((place) => ({ place, entries: [...place.querySelectorAll(":scope > [data-entry]")].map(asItStands) }));
  return { held, lists };
}

function asItStands(entry) {
  return { entry, value: read(entry), untouched: "untouched" in entry.dataset, folded: !entry.querySelector(":scope > [data-rest]")?.open };
}

function offerIfLost(undo, before) {
  const { checker } = undo;
  if (isLost(before.held.request, checker.device.whole().request)) {
    undo.steps.push(before);
    show(undo);
    takesFocus(undo, before);
  }
}

// Which place in its list an entry had is no part of what it says.
function isLost(before, after) {
  const left = new Map();
  for (const one of said(after)) {
    left.set(one, (left.get(one) ?? 0) + 1);
  }
  return said(before).some((one) => {
    left.set(one, (left.get(one) ?? 0) - 1);
    return left.get(one) < 0;
  });
}

function said(request) {
  return [...leaves(request, "")].map(([path, value]) => `${path.replaceAll(/\.\d+(?=\.|$)/g, "")}=${value}`);
}

function show(undo) {
  undo.told?.remove();
  undo.told = null;
  const last = undo.steps.at(-1);
  if (last) {
    undo.told = undoPart(last.says, () => takeBack(undo));
    put(undo, last);
  }
}

// Where what has gone stood; else at the beginning of the form.
function put({ told, form }, { at }) {
  if (at?.list?.isConnected) {
    at.list.insertBefore(told, at.next?.parentElement === at.list ? at.next : null);
  } else if (at?.field?.isConnected) {
    at.field.after(told);
  } else {
    form.prepend(told);
  }
}

function placeOf(button) {
  const entry = "remove" in button.dataset ? button.closest("[data-entry]") : null;
  if (entry) {
    return { list: entry.parentElement, next: entry.nextElementSibling };
  }
  const told = button.closest("[data-of-last]");
  if (told) {
    return { list: told.parentElement, next: told.nextElementSibling };
  }
  return "clear" in button.dataset ? null : { field: button.closest("[data-field], [data-many]") };
}

// Whoever took away a line, or all, goes on from there; a tap beside a field leaves the keys where they are.
function takesFocus({ told }, { button }) {
  if (button && ("remove" in button.dataset || "clear" in button.dataset)) {
    told.querySelector("button").focus();
  }
}

function takeBack(undo) {
  const { held, lists, button } = undo.steps.pop();
  write(undo.form, held.request);
  lists.forEach(({ place, entries }) => {
    place.replaceChildren(...entries.map(({ entry }) => entry));
    entries.forEach(standAgain);
    renumber(place.closest("[data-many]"));
  });
  undo.checker.device.written(held);
  undo.checker.judge();
  show(undo);
  (button?.isConnected ? button : undo.form.querySelector("input, select")).focus();
}

function standAgain({ entry, value, untouched, folded }) {
  write(entry, value);
  entry.toggleAttribute("data-untouched", untouched);
  foldAway(entry, folded);
}

function forget(undo) {
  undo.steps = [];
  show(undo);
}

function wordsOf(button) {
  if ("remove" in button.dataset) {
    return `Removed: ${button.textContent.replace(/^\s*×?\s*Remove/, "").trim()}.`;
  }
  return button.dataset.done ?? "What stood here made way.";
}
