/** A log that lives as long as this page: where the browser keeps nothing. */
export function openPage(why) {
  const held = new Map();
  const changes = [];
  addEventListener("beforeunload", (event) => {
    if (held.size > 0) {
      event.preventDefault();
    }
  });
  return {
    where: "page",
    why,
    entries: async () => [...held.values()],
    change: async (change) => apply(held, changes, change),
    lastChange: async () => changes.at(-1)?.what ?? null,
    undo: async () => undo(held, changes),
  };
}

function apply(held, changes, { what, puts = [], takes = [] }) {
  const ids = [...puts.map((entry) => entry.id), ...takes];
  changes.push({ what, before: ids.map((id) => ({ id, entry: held.get(id) ?? null })) });
  puts.forEach((entry) => held.set(entry.id, entry));
  takes.forEach((id) => held.delete(id));
}

function undo(held, changes) {
  const last = changes.pop();
  for (const { id, entry } of last?.before ?? []) {
    if (entry) {
      held.set(id, entry);
    } else {
      held.delete(id);
    }
  }
  return last?.what ?? null;
}
