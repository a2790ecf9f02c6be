import { toCells, fromCells } from "./cells.js";
import { sumOf } from "./checksum.js";
import { Damaged } from "./damage.js";
import { checkVersion, FORMAT, VERSION } from "./json.js";
import { findingLine } from "../entry/words.js";
import { verdictOf } from "../../basics/outcomes.js";

/** The columns in order; those without `part` are for people, and are worked out anew on import. */
const COLUMNS = [
  { name: "format", cell: () => `${FORMAT} ${VERSION}` },
  { name: "entry", cell: (_, place, all) => `${place + 1} of ${all.length}` },
  { name: "id", part: "id" },
  { name: "job", part: "job" },
  { name: "device", part: "device" },
  { name: "note", part: "note" },
  { name: "kept", part: "kept" },
  { name: "changed", part: "changed" },
  { name: "checker", part: "checker" },
  { name: "code", cell: ({ reply }) => reply.code },
  { name: "day", cell: ({ reply }) => reply.on },
  { name: "verdict", cell: ({ reply }) => verdictOf(reply).words },
  { name: "findings", cell: ({ reply }) => reply.findings.map(findingLine).join("\n") },
  { name: "build", part: "build" },
  { name: "request", part: "request", json: true },
  { name: "reply", part: "reply", json: true },
  { name: "sum", cell: sumOf },
];
const NAMES = COLUMNS.map(({ name }) => name);

/** The entries as a CSV file of our format: one entry a row. */
export function toCsv(entries) {
  const row = (entry, place, all) => COLUMNS.map(({ cell, part, json }) =>
    cell ? cell(entry, place, all) : json ? JSON.stringify(entry[part]) : entry[part]);
  return toCells([NAMES, ...entries.map(row)]);
}

/** Read such a file: [{line, sum, entry}]. Throws Damaged. */
export function fromCsv(text) {
  const [head, ...rows] = fromCells(text);
  if (head?.cells.join() !== NAMES.join()) {
    throw new Damaged(1, "these are not the column headings of a job log");
  }
  const read = rows.map(readRow);
  const [last] = rows.slice(-1);
  const wanted = last ? Number(/^\d+ of (\d+)$/.exec(last.cells[1])?.[1]) : 0;
  if (wanted !== rows.length) {
    throw new Damaged(last.line, `the file should hold ${wanted || "another number of"} entries, and holds ${rows.length}`);
  }
  return read;
}

function readRow({ line, cells }) {
  if (cells.length !== COLUMNS.length) {
    throw new Damaged(line, `${cells.length} cells where ${COLUMNS.length} belong`);
  }
  const [format] = cells;
  if (!format.startsWith(`${FORMAT} `)) {
    throw new Damaged(line, "the first cell does not say that this is a job log");
  }
  checkVersion(Number(format.slice(FORMAT.length)), line);
  const parts = COLUMNS.map((column, place) => [column, cells[place]]).filter(([{ part }]) => part);
  const entry = Object.fromEntries(parts.map(([column, cell]) => [column.part, valueOf(column, cell, line)]));
  return { line, sum: cells.at(-1), entry };
}

function valueOf({ name, json }, cell, line) {
  if (!json) {
    return cell;
  }
  try {
    return JSON.parse(cell);
  } catch {
    throw new Damaged(line, `the cell "${name}" is cut short or changed`);
  }
}
