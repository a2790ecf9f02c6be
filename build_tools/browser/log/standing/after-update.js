import { follow } from "../../client/client.js";
import { element } from "../../basics/element.js";
import { fetchedLater } from "../../client/lazy-import.js";
import { recall, remember } from "../../basics/memory.js";
import { notice } from "../../basics/notice.js";
import { ROOT, SCRIPTS } from "../../shared/site-urls.js";
import { reached } from "../../shared/refusable.js";

const QUIET = 3000; // milliseconds after the first verdict: what the reader waits for comes first
const DONE = "judged again by"; // the folder of a build's scripts, which is named for what they hold

const standing = fetchedLater(() => import("./standing.js"));

let isLooking = false;

/**
 * Once the checkers run, have the log judge what it keeps again if this build is new here.
 *
 * The log's own page does so by itself; elsewhere its scripts are fetched only where a log is.
 */
export function judgeKeptOnce() {
  if (isLooking || recall(DONE) === SCRIPTS) {
    return;
  }
  isLooking = true;
  let timer = 0;
  const stop = follow(({ answered }) => {
    if (answered) {
      timer ||= setTimeout(() => { stop(); look(); }, QUIET);
    }
  });
}

async function look() {
  if (!(await hasLog())) {
    remember(DONE, SCRIPTS);
    return;
  }
  try {
    const { isLost, judgeKept } = await standing();
    const { known, unwritten } = await judgeKept();
    unwritten || remember(DONE, SCRIPTS);
    tell([...known.values()].filter((one) => isLost(one) && !one.seen).length);
  } catch {
    // Nobody has asked for it: the log's own page says so, and the next one tries again.
  }
}

async function hasLog() {
  try {
    const all = await indexedDB.databases();
    return all.some(({ name }) => name === `${ROOT.pathname} job log`);
  } catch {
    return Boolean(reached(() => indexedDB)); // a browser that does not tell: the log itself will
  }
}

function tell(count) {
  if (count > 0 && !document.querySelector("[data-log]")) {
    const link = element("a", { class: "action", href: new URL("log/", ROOT).href }, "See them in the job log");
    notice(`${count} ${count === 1 ? "verdict" : "verdicts"} kept in the job log no longer ${count === 1 ? "stands" : "stand"} with this build.`, link);
  }
}
