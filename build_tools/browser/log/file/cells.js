import { Damaged, lineCounter } from "./damage.js";

// What a spreadsheet takes for a formula when a cell begins with it, after quotes and spaces that
// it may drop; the wide forms as well.
const STARTS = String.raw`=+\-@\t\r\n＝＋－＠`;
const START = new RegExp(String.raw`^["\s]*['${STARTS}]`);
// A spreadsheet set to another separator would begin a new cell there, in the middle of ours.
const INSIDE = new RegExp(String.raw`([;|\t\r\n]["\s]*)(?=['${STARTS}])`, "g");
const INSIDE_MARKED = new RegExp(String.raw`([;|\t\r\n]["\s]*)'(?=['${STARTS}])`, "g");

/** A cell that no spreadsheet runs: an apostrophe stands before whatever would begin a formula. */
export function harmless(text) {
  const inside = text.replace(INSIDE, "$1'");
  return START.test(text) ? `'${inside}` : inside;
}

/** The text that was made harmless, exactly as it was. */
function restored(cell) {
  const inside = cell.replace(INSIDE_MARKED, "$1");
  return inside.startsWith("'") ? inside.slice(1) : inside;
}

/** Rows of texts as CSV by RFC 4180, every cell in quotes, with a byte-order mark. */
export function toCells(rows) {
  const line = (row) => row.map((cell) => `"${harmless(cell).replaceAll('"', '""')}"`).join(",");
  return `\ufeff${rows.map(line).join("\r\n")}\r\n`;
}

/**
 * Read CSV: [{line, cells}], each with the line that it begins on.
 *
 * The separator is a comma, or the semicolon or tab of a spreadsheet that saved the file.
 * Throws Damaged where quotes are left open or stand amiss.
 */
export function fromCells(text) {
  const separator = /^\ufeff?(?:"[^"]*"|[^",;\t\r\n]*)([,;\t])/.exec(text)?.[1] ?? ",";
  const cell = new RegExp(`(?:"([^"]*(?:""[^"]*)*)"|([^"${separator}\\r\\n]*))(${separator}|\\r\\n|\\n|\\r|$)`, "y");
  const lineAt = lineCounter(text);
  const rows = [];
  let place = text.startsWith("\ufeff") ? 1 : 0;
  let row = null;
  while (place < text.length || row) {
    row ??= { line: lineAt(place), cells: [] };
    cell.lastIndex = place;
    const found = cell.exec(text);
    if (!found) {
      throw new Damaged(lineAt(place), "a quotation mark stands amiss, or the file ends inside a cell");
    }
    place = cell.lastIndex;
    row.cells.push(restored(found[1]?.replaceAll('""', '"') ?? found[2]));
    if (found[3] !== separator) {
      rows.push(row);
      row = null;
    }
  }
  return rows.filter(({ cells }) => cells.some(Boolean));
}
