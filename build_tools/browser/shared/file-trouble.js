import { Failure } from "./failure.js";

/** The types with which a browser runs a script. */
export const SCRIPT = /^(text|application)\/(x-)?(java|ecma)script\b/;

const SOON = 100; // milliseconds
const GONE = [404, 410];
const fetchReally = globalThis.fetch.bind(globalThis); // the runtime is given another while it starts
const forbidden = new Set(); // addresses that a policy kept from being fetched

globalThis.addEventListener("securitypolicyviolation", ({ blockedURI }) => forbidden.add(blockedURI));

/**
 * Find out why a file did not do, by asking for it once more, past the browser's own caches.
 *
 * An import or a worker that fails tells nothing of its cause. Inputs: its address; the types it
 * may have and its SHA-256 in base64, where they are known. Result: a Failure, or null where the file is
 * as it should be.
 */
export async function troubleWith(url, { type = null, hash = "" } = {}) {
  const file = url.pathname.slice(url.pathname.lastIndexOf("/") + 1);
  const response = await fetchReally(url, { cache: "reload" }).catch(toldOf);
  if (forbidden.has(url.href)) {
    return new Failure("policy", file);
  }
  if (!response) {
    return new Failure(navigator.onLine ? "unreachable" : "offline", file);
  }
  const bytes = await response.clone().arrayBuffer().catch(() => null);
  return troubleOf(response, file, type) ?? (bytes && await isHashed(bytes, hash) ? null : new Failure("changed", file));
}

// Of a policy that forbade it the browser tells apart, and later.
function toldOf() {
  return new Promise((resolve) => setTimeout(() => resolve(null), SOON));
}

/** What an answer tells by itself: a status that refuses, or another type than asked for. */
export function troubleOf({ ok, status, headers }, file, type) {
  const sent = headers.get("Content-Type") ?? "";
  if (!ok) {
    return new Failure(GONE.includes(status) ? "missing" : "refused", file, status);
  }
  return type && !type.test(sent) ? new Failure("wrong-type", file, sent) : null;
}

/** Tell whether bytes have this SHA-256; not known where the browser cannot compute it. */
export async function isHashed(bytes, hash) {
  const digests = globalThis.crypto?.subtle;
  if (!digests || !hash) {
    return true;
  }
  return btoa(String.fromCharCode(...new Uint8Array(await digests.digest("SHA-256", bytes)))) === hash;
}
