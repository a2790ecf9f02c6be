import { ROOT } from "../shared/site-urls.js";

/** Keep what this device remembers between visits; false where the browser refuses. */
export function remember(name, value) {
  try {
    localStorage.setItem(key(name), JSON.stringify(value));
    return true;
  } catch {
    return false; // storage may be full or forbidden: the page works without
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
