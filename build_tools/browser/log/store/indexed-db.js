import { databaseOf } from "../../basics/database.js";

const STEPS = [
  (database) => {
    database.createObjectStore("entries", { keyPath: "id" });
    database.createObjectStore("changes", { autoIncrement: true });
  },
];

const BOTH = ["entries", "changes"];
const UNDOABLE = 20; // changes that can be undone
const UNDOABLE_FOR = 24 * 60 * 60 * 1000; // milliseconds: what was deleted is then gone

// The copy of the site for offline use lies in caches, which an update throws away; nothing of the
// log is there.
const database = databaseOf("job log", STEPS);

/** Open the log that this browser keeps; rejects with the browser's own error. */
export async function openDevice() {
  const log = { where: "device", entries, change, lastChange, undo };
  await database.read("entries", (store) => store.count());
  await forgetOldChanges().catch(() => {}); // without room nothing is deleted either: another time
  return log;
}

function entries() {
  return database.read("entries", (store) => store.getAll());
}

// Requests of one transaction run in order: what is read first is as it was before the change.
function change({ what, puts = [], takes = [] }) {
  return database.write(BOTH, (kept, changes) => {
    const before = [];
    for (const id of [...puts.map((entry) => entry.id), ...takes]) {
      kept.get(id).onsuccess = ({ target }) => before.push({ id, entry: target.result ?? null });
    }
    puts.forEach((entry) => kept.put(entry));
    takes.forEach((id) => kept.delete(id));
    kept.count().onsuccess = () => {
      changes.add({ what, at: Date.now(), before });
      changes.getAllKeys().onsuccess = ({ target }) =>
        target.result.slice(0, -UNDOABLE).forEach((key) => changes.delete(key));
    };
  }, puts.length + takes.length);
}

// Another page may have changed the log since: what was not asked for is not undone.
function undo(key) {
  return database.write(BOTH, (kept, changes, give) => {
    changes.openCursor(null, "prev").onsuccess = ({ target: { result: last } }) => {
      if (last?.key !== key) {
        return;
      }
      for (const { id, entry } of last.value.before) {
        if (entry) {
          kept.put(entry);
        } else {
          kept.delete(id);
        }
      }
      give(last.value.what);
      last.delete();
    };
  });
}

async function lastChange() {
  const last = await database.read("changes", (store) => store.openCursor(null, "prev"));
  return last ? { key: last.key, what: last.value.what } : null;
}

function forgetOldChanges() {
  return database.write(["changes"], (changes) => {
    changes.openCursor().onsuccess = ({ target: { result: cursor } }) => {
      if (cursor && Date.now() - cursor.value.at > UNDOABLE_FOR) {
        cursor.delete();
        cursor.continue();
      }
    };
  });
}
