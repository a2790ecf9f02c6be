import { valueOf, setValue, mark } from "./fields.js";
import { addEntry, foldAway, removeEntries, waits } from "./entries.js";

const PARTS = "[data-field], [data-group], [data-many]";
const NOTHING_SAID = ["", "unknown"];
const SCOPES = `${PARTS}, [data-entry], [data-inputs]`;

// Which entries of a list went into the last request, since empty ones are left out.
const included = new WeakMap();

/** The parts that stand directly in a form, a group or an entry. */
export function partsOf(scope) {
  return [...scope.querySelectorAll(PARTS)].filter(
    (part) => part.parentElement.closest(SCOPES) === scope,
  );
}

/** Read a form, a group or an entry as a request; what is empty or as it began is left out. */
export function read(scope) {
  const request = {};
  for (const part of partsOf(scope)) {
    const value = readPart(part);
    if (!isEmpty(value) && value !== part.dataset.default) {
      request[nameOf(part)] = value;
    }
  }
  return request;
}

function readPart(part) {
  if (part.dataset.field) {
    return valueOf(part);
  }
  if (part.dataset.group) {
    return read(part);
  }
  const begun = entriesOf(part).filter((entry) => !waits(entry));
  const entries = begun.map((entry) => ({ entry, value: read(entry) }));
  const filled = entries.filter(({ value }) => !isEmpty(value));
  included.set(part, filled.map(({ entry }) => entry));
  return filled.map(({ value }) => value);
}

/** Fill a form, a group or an entry from a request; what the request lacks is set back. */
export function write(scope, request) {
  for (const part of partsOf(scope)) {
    const value = request?.[nameOf(part)];
    if (part.dataset.field) {
      setValue(part, value ?? "");
    } else if (part.dataset.group) {
      write(part, value ?? {});
    } else {
      writeEntries(part, Array.isArray(value) ? value : []);
    }
  }
  openWhereFilled(scope);
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
      homeless.push(problem);
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
  const rest = part.closest("[data-rest]");
  if (rest) {
    rest.open = true;
  }
}

function isUntouched(part) {
  return part.dataset.many
    ? included.get(part).length === 0
    : valueOf(part) === (part.dataset.default ?? "");
}

/** Find the part of a form at a path. */
export function partAt(form, path) {
  let scope = form;
  for (const step of path.matchAll(/([^.[\]]+)|\[(\d+)\]/g)) {
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
export function labelOf(part) {
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
