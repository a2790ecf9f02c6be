import { element } from "./element.js";
import { ENOUGH, NEEDS } from "../generated/needs.js";
import { ROOT } from "../shared/site-urls.js";

const NEWER = `The checkers run in ${ENOUGH}, and newer.`;
const USELESS = ["too-old", "no-webassembly", "policy", "fault"]; // to try again: only another browser or build helps

/** By kind: what happened, and what to do. */
const SENTENCES = {
  "too-old": ({ detail }) => `this browser is too old${NEEDS[detail] ? `, it lacks ${NEEDS[detail]}` : ""}. ${NEWER} Update it, or take another.`,
  "no-webassembly": () => `WebAssembly is switched off in this browser, by a setting for high security or by whoever manages this device, or the browser is too old. ${NEWER}`,
  "no-worker": () => "this browser does not let this page start its worker. Allow this site to keep data (cookies and site data), or open the page by itself if it stands in a frame.",
  "wrong-type": ({ file, detail }) => `the host sends the file ${file} ${detail ? `as ${detail}` : "without its type"}, and no browser runs it so. Whoever runs the host has to set the right type.`,
  "changed": ({ file }) => `the file ${file} did not arrive whole, or is not the one of this build. A new build may just be put there, or something on the way changes files. Load the page anew.`,
  "refused": ({ file, detail }) => `the host refuses the file ${file} (status ${detail}).`,
  "missing": ({ file, detail }) => `the host does not have the file ${file} (status ${detail}). A new build may just be put there: load the page anew.`,
  "offline": ({ file }) => `there is no network, and this device does not hold the file ${file} yet. Connect once.`,
  "unreachable": ({ file }) => `the file ${file} could not be fetched: the host does not answer, or a filter or an extension of the browser blocks it.`,
  "memory": () => "there is not enough memory. Close other tabs and programs.",
  "ended": () => "they ended without a word, as where memory runs short. Close other tabs and programs.",
  "policy": ({ file }) => `a policy of the host, or of whoever manages this browser, forbids ${file ? `the file ${file}` : "them"}.`,
  "fault": () => "this build has a fault.",
  "unknown": ({ detail }) => `the browser says: ${detail || "nothing"}.`,
};

/** Why the checkers do not run, in a sentence or two. */
export function inWords({ failure, ran }) {
  const begins = failure.kind === "ended" || ran ? "The checkers stopped" : "The checkers could not start";
  return `${begins}: ${SENTENCES[failure.kind](failure)}`;
}

/** Tell whether to try again can help, once the cause is gone. */
export function helpsToTryAgain({ failure }) {
  return !USELESS.includes(failure.kind);
}

/** The same for a place on the page, with the way to what needs no checker. */
export function failureParts(state) {
  const limits = element("a", { href: new URL("limits/", ROOT).href }, "The limit tables");
  return [`${inWords(state)} What you typed is kept. `, limits, " need no checker."];
}
