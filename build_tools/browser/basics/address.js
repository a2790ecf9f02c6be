/**
 * A request as the part of an address after the #, and back.
 *
 * Every value stands under its path: device.type=A&readings.0.value=28+ms. Part of an
 * address after the # never leaves the device.
 */
export function toFragment(request) {
  const pairs = new URLSearchParams();
  for (const [path, value] of leaves(request, "")) {
    pairs.append(path, value);
  }
  return pairs.toString();
}

/** Every value of a request with its path; what is empty or null is given too, as an empty value. */
export function* leaves(value, path) {
  const inner = typeof value === "object" && value !== null ? Object.entries(value) : [];
  if (inner.length === 0 && path) {
    yield [path, typeof value === "object" ? "" : String(value)];
    return;
  }
  for (const [name, one] of inner) {
    yield* leaves(one, path ? `${path}.${name}` : name);
  }
}

const DEEPEST = 8; // names in a path; no input lies as deep
const MOST = { characters: 200_000, values: 3000 }; // above the fullest form there is

/**
 * Read a fragment; an anchor, or nothing at all, gives null.
 *
 * Of more than any form takes nothing is read but how much it is: that is refused by its name.
 */
export function fromFragment(fragment) {
  const text = fragment.replace(/^#/, "");
  if (!text.includes("=")) {
    return null;
  }
  const pairs = text.length > MOST.characters ? [] : [...new URLSearchParams(text)];
  if (pairs.length === 0 || pairs.length > MOST.values) {
    return { "the address": excess(text, pairs.length) };
  }
  const request = empty();
  for (const [path, value] of pairs) {
    const names = path.split(".");
    place(request, names.length > DEEPEST ? [path] : names, value);
  }
  return members(request);
}

function excess({ length }, values) {
  const what = values ? "values" : "characters";
  const [held, most] = [values || length, MOST[what]].map((one) => one.toLocaleString("en-GB"));
  return `${held} ${what}; a form takes ${most} at most, so nothing was filled in`;
}

// Without a prototype, a name such as __proto__ in an address is a name like any other.
function empty() {
  return Object.create(null);
}

/** All that was given for one place, where there is more than one: no checker takes that. */
class Several extends Array {}

function place(target, [name, ...rest], value) {
  const there = target[name];
  if (there instanceof Several) {
    there.push(rest.length ? placed(rest, value) : value);
  } else if (there === undefined) {
    target[name] = rest.length ? placed(rest, value) : value;
  } else if (rest.length && typeof there === "object") {
    place(there, rest, value);
  } else {
    target[name] = Several.of(there, rest.length ? placed(rest, value) : value);
  }
}

function placed(names, value) {
  const made = empty();
  place(made, names, value);
  return made;
}

/** Turn what is numbered 0, 1, 2 … into lists. */
function lists(value) {
  if (value instanceof Several) {
    return Array.from(value, lists);
  }
  if (typeof value !== "object") {
    return value;
  }
  const names = Object.keys(value);
  if (names.length > 0 && names.every((name) => /^\d{1,4}$/.test(name))) {
    return names.sort((one, other) => one - other).map((name) => lists(value[name]));
  }
  return members(value);
}

function members(value) {
  const made = empty();
  for (const name of Object.keys(value)) {
    made[name] = lists(value[name]);
  }
  return made;
}
