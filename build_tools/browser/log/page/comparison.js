import { element } from "../../basics/element.js";
import { findingLine } from "../entry/words.js";
import { toneOf, verdictOf } from "../../basics/outcomes.js";
import { verdictShape } from "../../basics/verdict-shapes.js";

/** What a new reply says beside a kept one: both verdicts, and each finding that changed. */
export function comparison(entry, reply) {
  if (reply.kind !== "result") {
    const why = reply.kind === "invalid" ? Object.values(reply.errors).join("; ") : reply.text;
    return [element("p", {}, `This build does not judge what was typed: ${why}. The kept verdict stands as it was.`)];
  }
  const changes = changed(entry.reply.findings, reply.findings);
  const same = verdictOf(entry.reply).words === verdictOf(reply).words;
  return [
    element("p", { class: "again__verdicts" },
      ...verdict("Kept", entry.reply), " ", ...verdict("Now", reply), " ",
      element("strong", {}, same ? (changes.length ? "Same verdict, for other reasons." : "Unchanged.") : "The verdict has changed.")),
    changes.length ? element("ul", {}, ...changes.map((text) => element("li", {}, text))) : "",
  ];
}

function verdict(when, reply) {
  const shown = verdictOf(reply);
  return [`${when}: `, element("span", toneOf(shown), verdictShape(shown), ` ${shown.words}.`)];
}

function changed(before, after) {
  const [old, now] = [byKey(before), byKey(after)];
  const gone = [...old].filter(([key]) => !now.has(key)).map(([, one]) => `No longer said: ${findingLine(one)}`);
  const fresh = [...now].filter(([key]) => !old.has(key)).map(([, one]) => `New: ${findingLine(one)}`);
  const other = [...now]
    .filter(([key, one]) => old.has(key) && differs(old.get(key), one))
    .map(([key, one]) => `Was ${findingLine(old.get(key))} Now ${findingLine(one)}`);
  return [...other, ...fresh, ...gone];
}

function byKey(findings) {
  const seen = new Map();
  return new Map(findings.map((one) => {
    const key = JSON.stringify([one.judges, one.about, one.device ?? ""]);
    seen.set(key, (seen.get(key) ?? 0) + 1);
    return [`${key} ${seen.get(key)}`, one];
  }));
}

function differs(one, other) {
  return one.outcome !== other.outcome || one.limit !== other.limit || one.measured !== other.measured;
}
