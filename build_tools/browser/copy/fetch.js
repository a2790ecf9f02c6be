import { essenceOf, hasItsType, isOfThisBuild } from "./entries.js";
import { addressOf } from "./cache-keys.js";

/** Why a file is not in the copy, as facts for a page to put into words. */
export class Lacking extends Error {
  constructor(facts) {
    super(JSON.stringify(facts));
    this.facts = facts;
  }
}

/** The facts of whatever went wrong with a file. */
export function factsOf(error, path) {
  return error.facts ?? { path, fault: error.name === "QuotaExceededError" ? "no-room" : "other", text: String(error) };
}

/**
 * Fetch a file of this build.
 *
 * The hash decides, so a file the browser already holds is as good as one fetched anew, and a
 * phone need not fetch the runtime twice. Whatever does not match is asked for past all caches.
 */
export async function fetched(path) {
  const how = { cache: "force-cache", integrity: `sha256-${BUILD.files[path]}` };
  const held = await fetch(addressOf(path), how).catch(() => null);
  return held?.ok ? held : fetchedAnew(path);
}

/** Fetch a file of this build past all caches; rejects with what came instead. */
export async function fetchedAnew(path) {
  const answer = await fetch(addressOf(path), { cache: "reload" }).catch(() => {
    throw new Lacking({ path, fault: "did-not-arrive" });
  });
  if (!answer.ok) {
    throw new Lacking({ path, fault: "refused", status: answer.status });
  }
  if (!await isOfThisBuild(path, answer.clone())) {
    const came = essenceOf(answer.headers.get("Content-Type") ?? "");
    throw new Lacking({ path, ...(hasItsType(path, answer) ? { fault: "changed" } : { fault: "other-type", came }) });
  }
  return answer;
}
