import { isNoAnswer } from "../basics/outcomes.js";
import { showCrash, showState } from "../reply/verdict.js";

/** Say in the bar why an answer, or the end of a case, got no mark: nothing of it is counted. */
export function showUnmarked(root, reply) {
  if (isNoAnswer(reply)) {
    showCrash(root, reply);
  } else {
    const reasons = [...new Set(Object.values(reply.errors))].join(" ");
    showState(root, "unfinished", "Not marked", `${reasons} Choose another answer, or the next case.`);
  }
}
