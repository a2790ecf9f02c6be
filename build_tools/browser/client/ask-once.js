import { ask, follow, forget, start } from "./client.js";
import { inWords } from "../basics/failure-words.js";

/** Thrown where the checkers do not run: why, in words and as the state that `failureParts` shows. */
export class NotRunning extends Error {
  constructor(state) {
    super(inWords(state));
    this.state = { ...state };
  }
}

/** Ask a checker for one reply; rejects where the checkers cannot start, or once the signal says so. */
export function answerTo(checker, request, signal = null) {
  return new Promise((resolve, reject) => {
    const who = {};
    start();
    const stop = follow((state) => state.stage === "failed" && done(reject, new NotRunning(state)));
    const done = (settle, value) => { stop(); forget(who); settle(value); };
    signal?.addEventListener("abort", () => done(reject, new Error("the page was left")));
    ask(who, checker, request, (reply) => done(resolve, reply));
  });
}
