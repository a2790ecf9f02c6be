import { holdUnsaved, wouldBeLost } from "../../basics/unsaved-work.js";

/** A log that lives as long as this page: where the browser keeps nothing. */
export function openPage() {
  const held = new Map();
  const changes = [];
  const state = () => (held.size > 0 ? undefined : null);
  holdUnsaved({ name: "log", words: "entries of the job log that this browser does not keep", state });
  return {
    where: "page",
    isEmpty: () => held.size === 0 && changes.length === 0,
    entries: async () => [...held.values()],
    change: async (change) => apply(held, changes, change),
    lastChange: async () => (changes.length > 0 ? { key: changes.length, what: changes.at(-1).what } : null),
    undo: async (key) => (key === changes.length ? undo(held, changes) : null),
  };
}

function apply(held, changes, { what, puts = [], takes = [] }) {
  const ids = [...puts.map((entry) => entry.id), ...takes];
  changes.push({ what, before: ids.map((id) => ({ id, entry: held.get(id) ?? null })) });
  puts.forEach((entry) => held.set(entry.id, entry));
  takes.forEach((id) => held.delete(id));
  wouldBeLost();
}

function undo(held, changes) {
  const { what, before } = changes.pop();
  for (const { id, entry } of before) {
    if (entry) {
      held.set(id, entry);
    } else {
      held.delete(id);
    }
  }
  return what;
}
