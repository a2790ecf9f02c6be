import { Failure, failureOf } from "../shared/failure.js";
import { SCRIPT, troubleWith } from "../shared/file-trouble.js";
import { SCRIPTS } from "../generated/start-scripts.js";

const FILE = "worker.js";
const { hash: HASH } = SCRIPTS.find(({ name }) => name === FILE);
const UNREADABLE = /SyntaxError|\bimport\b|\bmodule\b/i; // where it was taken for a script of the old kind

/** Why no worker could be made at all: what was thrown as it was made. */
export function whyNotMade(error) {
  return error?.name === "SecurityError" ? new Failure("no-worker").value : failureOf(error);
}

/**
 * Why a worker failed before it could tell: the browser says little of it, or nothing.
 *
 * Inputs: what it says; the worker's address; whether the browser has heard of module workers.
 */
export async function whyNotRun(said, url, knowsModules) {
  const trouble = await troubleWith(url, { type: SCRIPT, hash: HASH });
  if (trouble) {
    return trouble.value;
  }
  if (!said && knowsModules) {
    return new Failure("unreachable", FILE).value; // it did not come at first, and does now
  }
  const failure = failureOf(said);
  if (failure.kind === "unknown" && (!knowsModules || UNREADABLE.test(said))) {
    return new Failure("too-old", "", "module-workers").value;
  }
  return failure;
}
