import { sumOf } from "./checksum.js";
import { Damaged } from "./damage.js";
import { scanJson } from "./json-lines.js";

export const FORMAT = "residual-current job log";
export const VERSION = 1;
const HEAD = ["format", "version", "written", "build", "entries"];

/** The entries as a JSON file of our format: one entry a line. */
export function toJson(entries, build) {
  const lines = entries.map((entry) => JSON.stringify({ sum: sumOf(entry), ...entry }));
  const head = { format: FORMAT, version: VERSION, written: new Date().toISOString(), build };
  return `${JSON.stringify(head).slice(0, -1)},"entries":[\n${lines.join(",\n")}\n]}\n`;
}

/** Read such a file, however it is laid out: [{line, sum, entry}]. Throws Damaged. */
export function fromJson(text) {
  const scanned = scanJson(text);
  if (scanned.problem) {
    throw new Damaged(scanned.problem.line, scanned.problem.says);
  }
  const file = JSON.parse(text);
  checkHead(file);
  if (file.entries.length !== scanned.lines.length) {
    throw new Damaged(1, "not every entry is an object");
  }
  return file.entries.map(({ sum, ...entry }, place) => ({ line: scanned.lines[place], sum, entry }));
}

function checkHead(file) {
  if (file?.format !== FORMAT || !Array.isArray(file.entries)) {
    throw new Damaged(1, "this is no job log");
  }
  checkVersion(file.version, 1);
  const strange = Object.keys(file).find((name) => !HEAD.includes(name));
  if (strange) {
    throw new Damaged(1, `${strange} is no field of a job log`);
  }
}

/** Refuse what a newer build wrote, which this one would read wrongly. */
export function checkVersion(version, line) {
  if (version !== VERSION) {
    throw new Damaged(line, `written in format ${String(version)}, and this build reads format ${VERSION}. Load the newest build of this site`);
  }
}
