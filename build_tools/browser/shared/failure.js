import { lacking } from "./abilities.js";

/** The detail of a file that failed, and was right when it was looked at again. */
export const RIGHT_NOW = "right now";

/**
 * Why the checkers do not run, made where it happens: `kind`, the `file` it is about, a `detail`.
 *
 * As `value` it goes from the worker to the page; `failure-words.js` alone turns it into sentences.
 */
export class Failure extends Error {
  constructor(kind, file = "", detail = "") {
    super([kind, file, detail].filter(Boolean).join(", "));
    this.value = { kind, file, detail: String(detail) };
  }
}

// What browsers and the runtime say, each in words of their own, where they have no value for it.
const SIGNS = [
  ["memory", /\bMemoryError\b/],
  ["fault", /PythonError/],
  ["policy", /content.security.policy|\bCSP\b|unsafe-eval/i],
  ["memory", /out of memory|\bOOM\b|(could not|cannot) allocate|allocation (failed|size)|invalid (typed )?array length/i],
];

/** The value of whatever was thrown: what the browser lacks comes before what followed from it. */
export function failureOf(error) {
  if (error instanceof Failure) {
    return error.value;
  }
  const lacks = lacking();
  if (lacks) {
    return new Failure(lacks === "webassembly" ? "no-webassembly" : "too-old", "", lacks).value;
  }
  const said = String(error?.message ? `${error.name}: ${error.message}` : error);
  const [kind] = SIGNS.find(([, sign]) => sign.test(said)) ?? ["unknown"];
  return new Failure(kind, "", said).value;
}
