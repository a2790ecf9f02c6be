import { sumOf } from "./checksum.js";
import { fromCsv, toCsv } from "./csv.js";
import { Damaged, lineCounter } from "./damage.js";
import { fromJson, toJson } from "./json.js";
import { problemOf } from "./shape.js";

const KINDS = {
  csv: { type: "text/csv;charset=utf-8", write: toCsv },
  json: { type: "application/json", write: toJson },
};

/** The entries as a file: its name and its text. */
export function fileOf(kind, entries, job, build) {
  const words = job.toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, "-").replaceAll(/^-|-$/g, "");
  const day = new Date().toISOString().slice(0, 10);
  const name = ["job-log", words.slice(0, 40), day].filter(Boolean).join("-");
  return { name: `${name}.${kind}`, type: KINDS[kind].type, text: KINDS[kind].write(entries, build) };
}

/** The entries that a file's bytes hold, all of them or none. Throws Damaged. */
export function entriesIn(bytes) {
  return entriesFrom(textOf(bytes));
}

/** The entries that a text holds, as JSON or CSV. Throws Damaged. */
export function entriesFrom(text) {
  const bare = text.replace(/^\ufeff/, "");
  const read = bare.trimStart().startsWith("{") ? fromJson(bare) : fromCsv(bare);
  const seen = new Map();
  for (const { line, sum, entry } of read) {
    const problem = problemOf(entry);
    if (problem) {
      throw new Damaged(line, problem);
    }
    if (sum !== sumOf(entry)) {
      throw new Damaged(line, "this entry is not as it was written: its sum does not agree");
    }
    if (seen.has(entry.id)) {
      throw new Damaged(line, `the same entry as on line ${seen.get(entry.id)}`);
    }
    seen.set(entry.id, line);
  }
  return read.map(({ entry }) => entry);
}

function textOf(bytes) {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    const text = new TextDecoder().decode(bytes);
    throw new Damaged(lineCounter(text)(text.indexOf("\ufffd")), "this is not text in UTF-8");
  }
}
