import { cut, inShort, isAsGiven, strangeField } from "./unknown-values.js";
import { mark, saysSomething, setValue, valueOf } from "./fields.js";
import { addEntry, foldAway, removeEntries, waits } from "./entries.js";

const PARTS = "[data-field], [data-group], [data-many]";
const MOST_STRANGE = 10; // names without a field that get one of their own
const NOTHING_SAID = ["", "unknown"];
const SCOPES = `${PARTS}, [data-entry], [data-inputs]`;

// Which entries of a list went into the last request, since empty ones are left out.
const included = new WeakMap();

/** The parts that stand directly in a form, a group or an entry. */
function partsOf(scope) {
  return [...scope.querySelectorAll(PARTS)].filter(
    (part) => part.parentElement.closest(SCOPES) === scope,
  );
}

/**
 * Read a form, a group or an entry as a request; what is empty or as it began is left out, and
 * so is what is still of the last device.
 *
 * What was given under a name stands before a group or a list of that name, until it is left out.
 */
export function read(scope) {
  const request = Object.create(null); // in which __proto__ is a name like any other
  for (const part of partsOf(scope).filter((one) => !("last" in one.dataset))) {
    const name = nameOf(part);
    const value = readPart(part);
    if (!(name in request) && saysAnything(part, value)) {
      request[name] = value;
    }
  }
  return request;
}

function saysAnything(part, value) {
  return part.dataset.field ? isAsGiven(part) || saysSomething(part) : !isEmpty(value);
}

function readPart(part) {
  if (part.dataset.field) {
    return valueOf(part);
  }
  if (part.dataset.group) {
    return read(part);
  }
  const begun = entriesOf(part).filter((entry) => !waits(entry) && !("last" in entry.dataset));
  const entries = begun.map((entry) => ({ entry, value: read(entry) }));
  const filled = entries.filter(({ value }) => !isEmpty(value));
  included.set(part, filled.map(({ entry }) => entry));
  return filled.map(({ value }) => value);
}

/**
 * Fill a form, a group or an entry from a request; what the request lacks is set back.
 *
 * What has no place here gets one of its own, so that nothing that was given is lost or changed.
 */
export function write(scope, request) {
  partsOf(scope).filter((part) => "strange" in part.dataset).forEach((part) => part.remove());
  const parts = partsOf(scope);
  for (const part of parts) {
    const value = valueFor(part, request) ?? "";
    if (part.dataset.field) {
      setValue(part, value);
    } else if (part.dataset.group) {
      write(part, value || {});
    } else {
      writeEntries(part, value || []);
    }
  }
  const strange = Object.entries(request).filter(([name, value]) => !hasPlace(parts, name, value));
  putFirst(scope, inFew(strange).map(([name, value]) => strangeField(name, value ?? "")));
  openWhereFilled(scope);
}

// Nobody reads or leaves out hundreds one by one: together they are refused as well.
function inFew(strange) {
  return strange.length > MOST_STRANGE ? [[`${strange.length} names`, Object.fromEntries(strange)]] : strange;
}

function valueFor(part, request) {
  const name = nameOf(part);
  return Object.hasOwn(request, name) && fits(part, request[name]) ? request[name] : null;
}

function hasPlace(parts, name, value) {
  return parts.some((part) => nameOf(part) === name && fits(part, value));
}

// What is null or empty counts as left out, as Python counts it.
function fits(part, value) {
  if (part.dataset.field || value === null || value === "") {
    return true;
  }
  return part.dataset.group ? isRecord(value) : fitsList(part, value);
}

function fitsList(list, value) {
  return Array.isArray(value) && value.length <= Number(list.dataset.most) && value.every((one) => isRecord(one) && !isEmpty(one));
}

function isRecord(value) {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function putFirst(scope, fields) {
  const title = scope.querySelector(":scope > legend");
  const inside = scope.querySelector(":scope > [data-rest] > .entry__fields") ?? scope;
  title && inside === scope ? title.after(...fields) : inside.prepend(...fields);
}

/** The part of a remembered request that a form has names for. */
export function known(form, request) {
  const parts = partsOf(form);
  const entries = Object.entries(request).filter(([name, value]) => value && hasPlace(parts, name, value));
  return Object.fromEntries(entries.map(([name, value]) => {
    const part = parts.find((one) => nameOf(one) === name);
    return [name, part.dataset.group ? known(part, value) : value];
  }));
}

function writeEntries(list, values) {
  removeEntries(list);
  for (const value of values.length ? values : [{}]) {
    const entry = addEntry(list);
    write(entry, value);
    foldAway(entry, !isEmpty(value));
  }
}

/** Make a form ready for paper: what is filled in opens, what says nothing is marked. */
export function readyForPaper(form) {
  openWhereFilled(form);
  for (const field of form.querySelectorAll("[data-field]")) {
    field.toggleAttribute("data-unsaid", NOTHING_SAID.includes(valueOf(field)));
  }
}

function openWhereFilled(scope) {
  for (const further of scope.querySelectorAll("details.further")) {
    const fields = [...further.querySelectorAll("[data-field]")];
    if (fields.some((field) => valueOf(field) !== (field.dataset.default ?? ""))) {
      further.open = true;
    }
  }
}

/**
 * Show problems at their fields, by path as in readings[1].value.
 *
 * Gives back the problems that have no field, and the labels of fields that are still empty:
 * an empty field is not wrong yet, and is not marked.
 */
export function showProblems(form, problems) {
  for (const part of form.querySelectorAll("[data-field], [data-many]")) {
    mark(part, "");
  }
  const homeless = [];
  const empty = [];
  for (const [path, problem] of Object.entries(problems)) {
    const part = partAt(form, path);
    if (!part) {
      homeless.push(`${inShort(path)}: ${problem}`);
    } else if (isUntouched(part)) {
      empty.push(labelOf(part));
    } else {
      mark(part, problem);
      unfold(part);
    }
  }
  return { homeless, empty };
}

function unfold(part) {
  for (let shut = part.closest("details"); shut; shut = shut.parentElement.closest("details")) {
    shut.open = true;
  }
}

function isUntouched(part) {
  if (isAsGiven(part)) {
    return false;
  }
  return part.dataset.many
    ? included.get(part).length === 0
    : valueOf(part) === (part.dataset.default ?? "");
}

/** Find the part of a form at a path; what is wrong inside a value as given is wrong with it. */
export function partAt(form, path) {
  let scope = form;
  const whole = partsOf(form).find((part) => [nameOf(part), cut(nameOf(part))].includes(path));
  if (whole) {
    return whole;
  }
  for (const step of path.matchAll(/([^.[\]]+)|\[(\d+)\]/g)) {
    if (isAsGiven(scope)) {
      return scope;
    }
    scope = step[2] === undefined
      ? partsOf(scope).find((part) => nameOf(part) === step[1])
      : included.get(scope)?.[Number(step[2])];
    if (!scope) {
      return null;
    }
  }
  return scope;
}

/** The label of a part, as a person reads it. */
function labelOf(part) {
  return part.querySelector("label, legend").textContent.trim();
}

function entriesOf(list) {
  return [...list.querySelectorAll("[data-entry]")].filter(
    (entry) => entry.closest("[data-many]") === list,
  );
}

function nameOf(part) {
  return part.dataset.field ?? part.dataset.group ?? part.dataset.many;
}

function isEmpty(value) {
  return value === "" || (typeof value === "object" && Object.keys(value).length === 0);
}
