import { answerTo, NotRunning } from "../../client/ask-once.js";
import { tryAgain } from "../../client/client.js";
import { element } from "../../basics/element.js";
import { failureParts, helpsToTryAgain } from "../../basics/failure-words.js";
import { currentBuild, makeEntry } from "../entry/entry.js";
import { comparison } from "./comparison.js";
import { dayInWords } from "../entry/words.js";

/** Judge an entry's request again with this build: for its own day, and as if read today. */
export async function judgeAgain(page, entry, place) {
  place.replaceChildren(element("p", { role: "status" }, "Working it out."));
  const day = localDay();
  const days = [...new Set([entry.reply.on, day])];
  const build = await currentBuild();
  try {
    const replies = await Promise.all(days.map((on) => answerTo(entry.checker, { ...entry.request, on }, page.signal)));
    place.replaceChildren(...days.flatMap((on, number) => part(page, entry, { on, build, today: on === day, reply: replies[number] })));
  } catch (error) {
    place.replaceChildren(...whyNot(error, () => judgeAgain(page, entry, place)));
  }
}

function whyNot(error, again) {
  if (!(error instanceof NotRunning)) {
    return []; // the page was left
  }
  const button = element("button", { type: "button", class: "action" }, "Try again");
  button.hidden = !helpsToTryAgain(error.state);
  button.addEventListener("click", () => { tryAgain(); again(); });
  return [element("p", { role: "status" }, ...failureParts(error.state)), element("p", {}, button)];
}

function part(page, entry, again) {
  const { on, build, today, reply } = again;
  const head = today && on !== entry.reply.on ? `As if read today, ${dayInWords(on)}` : `For its own day, ${dayInWords(on)}`;
  const parts = [element("h3", {}, `${head}, by build ${build}`), ...comparison(entry, reply)];
  if (reply.kind === "result") {
    const keep = element("button", { type: "button", class: "action" }, "Keep this verdict too");
    keep.addEventListener("click", () => keepToo(page, entry, again));
    parts.push(element("p", {}, keep));
  }
  return [element("section", { class: "again", role: "status" }, ...parts)];
}

// However often it is asked for, it is one entry.
async function keepToo(page, entry, again) {
  const { on, build, reply } = again;
  const note = [entry.note, `Judged again; first kept on ${dayInWords(entry.kept)}.`].filter(Boolean).join("\n");
  again.made ??= makeEntry({ ...entry, note }, { checker: entry.checker, request: { ...entry.request, on }, reply }, build);
  if (await page.change({ what: `kept ${entry.device || "a verdict"} judged again`, puts: [again.made] })) {
    page.say("Kept beside the first one.");
  }
}

function localDay() {
  const now = new Date();
  const two = (number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
