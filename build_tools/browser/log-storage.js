import { ROOT } from "./places.js";

// Two sites under one origin share its storage: keep them apart by path. The copy of the site
// for offline use lives in caches, which an update throws away; nothing of the log is there.
const NAME = `${ROOT.pathname} job log`;

/** What turns each version of the stored data into the next; add a step, never change one. */
const STEPS = [
  (database) => {
    database.createObjectStore("entries", { keyPath: "id" });
    database.createObjectStore("changes", { autoIncrement: true });
  },
];

const PATIENCE = 8000; // milliseconds after which a browser that does not answer has refused
const UNDOABLE = 20; // changes that can be undone
const UNDOABLE_FOR = 24 * 60 * 60 * 1000; // milliseconds: what was deleted is then gone

/** Open the log that this browser keeps; rejects with the browser's own error. */
export async function openDevice() {
  const database = await opened();
  database.onversionchange = () => database.close();
  await forgetOldChanges(database);
  return {
    where: "device",
    entries: () => ask(database, "entries", (store) => store.getAll()),
    change: (change) => apply(database, change),
    lastChange: () => lastChange(database),
    undo: () => undo(database),
  };
}

function opened() {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error("the browser does not answer")), PATIENCE);
    const request = indexedDB.open(NAME, STEPS.length);
    request.onupgradeneeded = ({ oldVersion }) =>
      STEPS.slice(oldVersion).forEach((step) => step(request.result, request.transaction));
    request.onsuccess = () => { clearTimeout(timer); resolve(request.result); };
    request.onerror = () => { clearTimeout(timer); reject(request.error); };
  });
}

function ask(database, name, question) {
  return new Promise((resolve, reject) => {
    const request = question(database.transaction(name).objectStore(name));
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/** Do some work on both stores: all of it is written, or none. */
function write(database, work) {
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(["entries", "changes"], "readwrite", { durability: "strict" });
    let result = null;
    transaction.oncomplete = () => resolve(result);
    transaction.onabort = () => reject(transaction.error ?? new Error("the browser gave up writing"));
    work(transaction.objectStore("entries"), transaction.objectStore("changes"), (value) => { result = value; });
  });
}

// Requests of one transaction run in order: what is read first is as it was before the change.
function apply(database, { what, puts = [], takes = [] }) {
  return write(database, (entries, changes) => {
    const before = [];
    for (const id of [...puts.map((entry) => entry.id), ...takes]) {
      entries.get(id).onsuccess = ({ target }) => before.push({ id, entry: target.result ?? null });
    }
    puts.forEach((entry) => entries.put(entry));
    takes.forEach((id) => entries.delete(id));
    entries.count().onsuccess = () => {
      changes.add({ what, at: Date.now(), before });
      changes.getAllKeys().onsuccess = ({ target }) =>
        target.result.slice(0, -UNDOABLE).forEach((key) => changes.delete(key));
    };
  });
}

function undo(database) {
  return write(database, (entries, changes, give) => {
    changes.openCursor(null, "prev").onsuccess = ({ target: { result: last } }) => {
      if (!last) {
        return;
      }
      for (const { id, entry } of last.value.before) {
        if (entry) {
          entries.put(entry);
        } else {
          entries.delete(id);
        }
      }
      give(last.value.what);
      last.delete();
    };
  });
}

async function lastChange(database) {
  const last = await ask(database, "changes", (store) => store.openCursor(null, "prev"));
  return last ? last.value.what : null;
}

function forgetOldChanges(database) {
  return write(database, (_, changes) => {
    changes.openCursor().onsuccess = ({ target: { result: cursor } }) => {
      if (cursor && Date.now() - cursor.value.at > UNDOABLE_FOR) {
        cursor.delete();
        cursor.continue();
      }
    };
  });
}
