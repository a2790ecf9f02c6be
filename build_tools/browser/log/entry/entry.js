import { ROOT } from "../../shared/site-urls.js";
import { RUNTIME } from "../../generated/runtime.js";

const PATIENCE = 4000; // milliseconds: a host that does not answer must not hold up what is kept

/** The most characters a reader may type into an entry, by field. */
export const MOST = { job: 120, device: 120, note: 2000 };

/**
 * Make an entry of the log: the labels, the request as it was typed, and the whole reply.
 *
 * Inputs: {job, device, note}; {checker, request, reply}; the build that judged.
 */
export function makeEntry({ job, device, note }, { checker, request, reply }, build) {
  const now = new Date().toISOString();
  return {
    id: newId(),
    ...labels({ job, device, note }),
    kept: now,
    changed: now,
    checker,
    build,
    request: plain(request),
    reply: plain(reply),
  };
}

/** The same entry with other labels, changed now; the verdict in it is never edited. */
export function relabelled(entry, { job, device, note }) {
  return { ...entry, ...labels({ job, device, note }), changed: new Date().toISOString() };
}

// Half a character is no text: written as UTF-8 it would come back as another one.
function labels(given) {
  return Object.fromEntries(Object.entries(given).map(([name, text]) => {
    const whole = new TextDecoder().decode(new TextEncoder().encode(text.trim()));
    return [name, [...whole].slice(0, MOST[name]).join("")];
  }));
}

// crypto.randomUUID is missing where the address is not secure; this is not.
function newId() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

// A copy as JSON holds it: what is stored, exported and compared is the same thing.
function plain(value) {
  return JSON.parse(JSON.stringify(value));
}

let build = null;

/** The build that judges on this page: its day and identity, or the checkers' own hash. */
export function currentBuild() {
  build ??= fetch(new URL("build.json", ROOT), { signal: AbortSignal.timeout?.(PATIENCE) })
    .then((response) => response.json())
    .then(({ id }) => id)
    .catch(() => { build = null; return checkersHash(); });
  return build;
}

/** The checkers of this build, whatever else of the build has changed. */
export function checkersHash() {
  const wheel = RUNTIME.archives.find(({ name }) => name.endsWith(".whl"));
  return `checkers ${wheel.hash.slice(0, 12)}`;
}
