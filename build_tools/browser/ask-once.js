import { ask, follow, forget, start } from "./client.js";

/** Ask a checker for one reply; rejects where the checkers cannot start, or once the signal says so. */
export function answerTo(checker, request, signal = null) {
  return new Promise((resolve, reject) => {
    const who = {};
    start();
    const stop = follow(({ stage, why }) => stage === "failed" && done(reject, new Error(why)));
    const done = (settle, value) => { stop(); forget(who); settle(value); };
    signal?.addEventListener("abort", () => done(reject, new Error("the page was left")));
    ask(who, checker, request, (reply) => done(resolve, reply));
  });
}
