import { ROOT } from "./places.js";

/** What this device remembers between visits; it is sent nowhere, and may be refused. */
export function remember(name, value) {
  try {
    localStorage.setItem(key(name), JSON.stringify(value));
  } catch {
    // Storage may be full or forbidden: the page works without.
  }
}

export function recall(name) {
  try {
    return JSON.parse(localStorage.getItem(key(name)));
  } catch {
    return null;
  }
}

// Two sites under one origin share its storage: keep them apart by path.
function key(name) {
  return `${ROOT.pathname} ${name}`;
}
