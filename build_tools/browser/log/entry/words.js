import { aboutOf } from "../../reply/findings.js";
import { outcomeOfFinding, wordOf } from "../../basics/outcomes.js";
import { EVIDENCE, NAMES, TITLES } from "../../generated/words.js";

/** One finding in a line of text, as a spreadsheet or a clipboard takes it. */
export function findingLine(finding) {
  const { says, sources = [] } = finding;
  const places = sources.map(placeOf).join("; ");
  return `${wordOf(outcomeOfFinding(finding))}: ${aboutOf(finding)}: ${says}${places ? ` [${places}]` : ""}`;
}

/** Where a limit stands, and how it is known. */
export function placeOf({ document: name, edition, clause, evidence }) {
  const place = [name, edition, clause].filter(Boolean).join(", ");
  return `${place} (${EVIDENCE[evidence] ?? evidence})`;
}

/** A key of a request or an answer in words. */
export function inWords(key) {
  const words = NAMES[key] ?? key.replaceAll(/[_-]/g, " ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** The title of an entry's checker; one that this build has not goes by its own name. */
export function titleOf({ checker }) {
  return TITLES[checker] ?? inWords(checker);
}

/** A day as people write it; a text that is no day stays as it is. */
export function dayInWords(text) {
  const day = new Date(text);
  return Number.isNaN(day.getTime())
    ? String(text)
    : day.toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" });
}

/** A moment as people write it, in the time of this place. */
export function momentInWords(text) {
  const time = new Date(text).toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" });
  return `${dayInWords(text)}, ${time}`;
}

/** So many of something: 1 entry, 2 entries. */
export function counted(number, one, many = `${one}s`) {
  return `${number} ${number === 1 ? one : many}`;
}
