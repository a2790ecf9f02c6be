import { isAsGiven } from "../form/unknown-values.js";
import { element } from "../basics/element.js";
import { saysSomething, valueOf } from "../form/fields.js";
import { read, write } from "../form/form.js";

/**
 * Readings of the last device are not counted for the next one that is typed over it.
 *
 * Each reading, and what is said of the circuit, remembers under which device it was typed. It
 * waits where a name, a type or a rating that stood then is another one now, or where the verdict
 * was kept and something is typed since, until the reader says that it is of this device too.
 */
const LISTS = '[data-many="readings"], [data-many="history"]';
const READINGS = ["readings", "history"].map((name) => `[data-many="${name}"] > [data-entries] > [data-entry]`).join();
const CIRCUIT = '[data-group="circuit"] [data-field]';
const DEVICE = '[data-group="device"]';

const typedUnder = new WeakMap();

/** The same of a case in a lesson: it is an example and no reading, and nothing in it waits. */
export function watchNoDevice(checker) {
  const nothing = () => {};
  return { typed: nothing, written: nothing, kept: nothing, mark: nothing, whole: () => ({ request: checker.request, under: [] }) };
}

/** Watch one form; gives what its checker tells: of typing, of what was written, of what was kept. */
export function watchDevice(checker, options) {
  const { root, form } = checker;
  const label = root.querySelector("[data-keep] [name=device]");
  const watch = { checker, form, label, verdicts: 0, labelled: 0, isKept: false };
  form.addEventListener("change", ({ target }) => target.closest(DEVICE) && settle(watch), options);
  label?.addEventListener("change", () => settle(watch), options);
  label?.addEventListener("input", () => labelTyped(watch), options);
  return {
    typed: (target) => typed(watch, target),
    written: (held) => written(watch, held),
    kept: () => { watch.isKept = true; },
    mark: () => mark(watch),
    whole: () => whole(watch),
  };
}

function typed(watch, target) {
  const item = target.closest(`${READINGS}, ${CIRCUIT}`);
  if (item || target.closest(`${DEVICE}, ${LISTS}`)) {
    next(watch);
  }
  item && typedUnder.set(item, deviceIn(watch));
}

// A label that makes nothing wait leaves the verdict as it stands, ready to be kept.
function labelTyped(watch) {
  next(watch);
  watch.labelled = watch.verdicts;
  if (waiting(watch).length !== watch.form.querySelectorAll("[data-last]").length) {
    watch.checker.judge();
  }
}

// What is typed after a verdict was kept may be of the next device.
function next(watch) {
  watch.verdicts += watch.isKept ? 1 : 0;
  watch.isKept = false;
}

function written(watch, held) {
  next(watch); // a case that is written in after one was kept is another one
  watch.verdicts = held?.verdicts ?? watch.verdicts;
  filled(watch.form).forEach((item, place) => typedUnder.set(item, held?.under[place] ?? deviceIn(watch)));
}

// What is filled in of the device later on is of the device that the readings were typed under.
function settle(watch) {
  const now = deviceIn(watch);
  for (const item of filled(watch.form).filter((one) => !waits(now, one))) {
    typedUnder.set(item, { ...now, ...typedUnder.get(item) });
  }
}

// The label under which a verdict was kept is that one's, until it is typed anew.
function deviceIn({ form, label, verdicts, labelled }) {
  const fields = [...form.querySelectorAll(`${DEVICE} [data-field], :scope > [data-field="label"]`)].filter((field) => saysSomething(field) && !isAsGiven(field));
  const said = fields.map((field) => [field.dataset.field, plain(valueOf(field))]);
  const name = labelled === verdicts ? plain(label?.value ?? "") : "";
  return { ...Object.fromEntries(said), ...(name && { "kept as": name }), verdicts };
}

function plain(value) {
  return JSON.stringify(value).toLowerCase().replaceAll(/[\s"]/g, "");
}

function waits(now, item) {
  const then = typedUnder.get(item) ?? now;
  return Object.keys(then).some((name) => name in now && then[name] !== now[name]);
}

function waiting(watch) {
  const now = deviceIn(watch);
  return filled(watch.form).filter((item) => waits(now, item));
}

function filled(form) {
  const entries = [...form.querySelectorAll(READINGS)].filter((entry) => Object.keys(read(entry)).length > 0);
  return [...entries, ...[...form.querySelectorAll(CIRCUIT)].filter(saysSomething)];
}

function mark(watch) {
  const { form } = watch;
  const those = new Set(waiting(watch));
  for (const item of form.querySelectorAll(`${READINGS}, ${CIRCUIT}`)) {
    item.toggleAttribute("data-last", those.has(item));
  }
  const list = form.querySelector(LISTS);
  const told = form.querySelector("[data-of-last]");
  if (those.size === 0) {
    told?.remove();
  } else if (list) {
    told?.remove();
    list.before(question(watch, [...those]));
  }
}

function question(watch, waiting) {
  const readings = waiting.filter((item) => item.matches("[data-entry]")).length;
  const circuit = waiting.length - readings;
  const what = [
    readings && `${readings} ${readings === 1 ? "reading" : "readings"}`,
    circuit && `${circuit} ${circuit === 1 ? "entry" : "entries"} on the circuit`,
  ].filter(Boolean).join(" and ");
  return element("div", { class: "of-last", role: "status", "data-of-last": true },
    element("p", {}, `Of the last device, and not counted for this one: ${what}.`),
    button("Count for this device", {}, () => count(watch, waiting)),
    button("Clear", { "data-done": "Cleared what was of the last device." }, () => clear(watch)));
}

function count(watch, waiting) {
  waiting.forEach((item) => typedUnder.set(item, deviceIn(watch)));
  goOn(watch);
}

function clear(watch) {
  write(watch.form, read(watch.form));
  written(watch);
  goOn(watch);
}

/** The whole form, with what waits in it. */
function whole({ checker, form, verdicts }) {
  return { request: form.querySelector("[data-last]") ? readWhole(form) : checker.request, verdicts, under: filled(form).map((item) => typedUnder.get(item)) };
}

function readWhole(form) {
  const waiting = [...form.querySelectorAll("[data-last]")];
  waiting.forEach((item) => item.removeAttribute("data-last"));
  const request = read(form);
  waiting.forEach((item) => item.toggleAttribute("data-last", true));
  read(form); // what is asked is what does not wait: problems are shown by that
  return request;
}

function goOn({ checker, form }) {
  checker.judge();
  form.querySelector(LISTS).querySelector("input").focus();
}

function button(name, attributes, action) {
  const made = element("button", { type: "button", class: "action", ...attributes }, name);
  made.addEventListener("click", action);
  return made;
}
