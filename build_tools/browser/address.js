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

function* leaves(value, path) {
  if (typeof value !== "object" || value === null) {
    yield [path, String(value)];
    return;
  }
  for (const [name, inner] of Object.entries(value)) {
    yield* leaves(inner, path ? `${path}.${name}` : name);
  }
}

/** Read a fragment; an anchor, or nothing at all, gives null. */
export function fromFragment(fragment) {
  const text = fragment.replace(/^#/, "");
  if (!text.includes("=")) {
    return null;
  }
  const request = empty();
  for (const [path, value] of new URLSearchParams(text)) {
    place(request, path.split("."), value);
  }
  return lists(request);
}

// Without a prototype, a name such as __proto__ in an address is a name like any other.
function empty() {
  return Object.create(null);
}

function place(target, names, value) {
  const [name, ...rest] = names;
  if (rest.length === 0) {
    target[name] = value;
    return;
  }
  if (typeof target[name] !== "object") {
    target[name] = empty();
  }
  place(target[name], rest, value);
}

/** Turn what is numbered 0, 1, 2 … into lists. */
function lists(value) {
  if (typeof value !== "object") {
    return value;
  }
  const names = Object.keys(value);
  if (names.length > 0 && names.every((name) => /^\d{1,4}$/.test(name))) {
    return names.sort((one, other) => one - other).map((name) => lists(value[name]));
  }
  const made = empty();
  for (const name of names) {
    made[name] = lists(value[name]);
  }
  return made;
}
