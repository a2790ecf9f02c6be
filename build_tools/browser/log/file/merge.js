import { canonical } from "./checksum.js";

/**
 * Compare what a file holds with what is here, by id.
 *
 * Result: lists of entries: `fresh` are not here; `newer` have labels changed after those here;
 * `older` the other way; `same` are equal; `strange` carry a known id with another verdict, or
 * other labels of the same moment: those here stay.
 */
export function compared(here, incoming) {
  const known = new Map(here.map((entry) => [entry.id, entry]));
  const sorted = { fresh: [], newer: [], older: [], same: [], strange: [] };
  for (const entry of incoming) {
    sorted[standing(known.get(entry.id), entry)].push(entry);
  }
  return sorted;
}

function standing(mine, theirs) {
  if (!mine) {
    return "fresh";
  }
  if (canonical(mine) === canonical(theirs)) {
    return "same";
  }
  if (canonical(verdictOf(mine)) !== canonical(verdictOf(theirs)) || mine.changed === theirs.changed) {
    return "strange";
  }
  return theirs.changed > mine.changed ? "newer" : "older";
}

function verdictOf({ kept, checker, build, request, reply }) {
  return { kept, checker, build, request, reply };
}
