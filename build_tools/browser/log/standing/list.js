import { element, say } from "../../basics/element.js";
import { whyNotKept } from "../store/reasons.js";
import { isLost, judgeKept, noteSeen } from "./standing.js";
import { counted, dayInWords, titleOf } from "../entry/words.js";
import { toneOf, verdictOf } from "../../basics/outcomes.js";
import { verdictShape } from "../../basics/verdict-shapes.js";

const AT_ONCE = 100; // lines; the rest is marked in the list of entries as well
const WORST = ["fail", "borderline", "cannot-say"];

/** Judge what is kept again where this build has not yet, and list what no longer stands. */
export async function judgeAndList(page) {
  try {
    const { known, unwritten } = await judgeKept((far) => say(page.part("standing-said"), progress(far)));
    page.standings = known;
    say(page.part("standing-said"), unwritten ? `The kept verdicts were judged again, and what was found could not be kept: ${whyNotKept(unwritten)}. It is looked for again on the next visit.` : "");
  } catch (error) {
    say(page.part("standing-said"), `The kept verdicts could not be judged again. ${error.message} It is tried again on the next visit.`);
    return;
  }
  showStandings(page);
}

/** Show the list as it is known, for the entries that are there. */
export function showStandings(page) {
  const place = page.part("standing");
  const lost = page.entries
    .map((entry) => ({ entry, standing: page.standings.get(entry.id) }))
    .filter(({ standing }) => isLost(standing))
    .sort((one, other) => weight(one) - weight(other));
  place.hidden = lost.length === 0;
  if (lost.length === 0) {
    return;
  }
  const isNew = lost.some(({ standing }) => !standing.seen);
  place.open ||= isNew;
  place.replaceChildren(
    element("summary", {}, `${counted(lost.length, "kept verdict no longer stands", "kept verdicts no longer stand")}`),
    element("p", {}, `Judged again with this build, of ${dayInWords(page.build.slice(0, 10))}: each for its own day and local code. The records stay as they were kept.`),
    element("ul", { class: "standing__list" }, ...lost.slice(0, AT_ONCE).map((one) => line(page, one))),
    lost.length > AT_ONCE ? element("p", {}, `And ${lost.length - AT_ONCE} more, marked in the list below.`) : "",
    ...(isNew ? [seenButton(page, place, lost)] : []),
  );
}

/** A line about an entry that no longer stands, for where it is shown itself; else nothing. */
export function standingLine(standing) {
  if (!isLost(standing)) {
    return "";
  }
  return standing.is === "refused"
    ? "Can no longer be judged with this build. Retest."
    : `No longer stands: with this build, ${standing.word}.${standing.now === "pass" ? "" : " Retest."}`;
}

// A pass that is none comes first.
function weight({ entry, standing }) {
  const passed = entry.reply.outcome === "pass" ? 0 : 10;
  return passed + (standing.is === "refused" ? 5 : WORST.indexOf(standing.now) + 1 || 6);
}

function line(page, { entry, standing }) {
  const name = [entry.job, entry.device].filter(Boolean).join(", ") || "Without a label";
  const show = element("button", { type: "button", class: "action" }, "Show it", element("span", { class: "unseen" }, `: ${name}`));
  show.addEventListener("click", () => page.showEntry(entry));
  return element("li", {},
    element("p", {}, element("strong", {}, name), `. ${titleOf(entry)}, ${dayInWords(entry.reply.on)}.`),
    element("p", { class: "standing__verdicts" }, ...verdict(verdictOf(entry.reply)), " → ", ...after(standing)),
    element("p", {}, standing.is === "refused" ? `Can no longer be judged: ${standing.why}` : standing.why),
    element("p", {}, standing.now === "pass" ? "" : element("strong", {}, "Retest. "), show));
}

function after({ is, now, ...rest }) {
  return is === "refused" ? ["not judged"] : verdict({ outcome: now, ...rest });
}

function verdict(shown) {
  return [element("span", toneOf(shown), verdictShape(shown), ` ${shown.word}`)];
}

function seenButton(page, place, lost) {
  const button = element("button", { type: "button", class: "action" }, "I have seen these");
  button.addEventListener("click", async () => {
    const standings = lost.map(({ standing }) => standing);
    try {
      await noteSeen(standings);
    } catch (error) {
      say(page.part("standing-said"), `It could not be noted that you have seen these: ${whyNotKept(error)}.`);
      return;
    }
    standings.forEach((one) => { one.seen = true; });
    place.open = false;
    showStandings(page);
    place.querySelector("summary").focus();
  });
  return element("p", {}, button);
}

function progress({ done, total }) {
  return `Judging ${counted(total, "kept verdict", "kept verdicts")} again with this build: ${done} done.`;
}
