import { ROOT } from "./places.js";

// Apart from the log, so that no build that does not know of it is kept from opening that.
const NAME = `${ROOT.pathname} judged again`;
const STORE = "standings";

/**
 * What came of judging each kept verdict again, by the id of its entry; no label is in it.
 *
 * Of each: `by` which checkers, whether it still `is` so ("stands"), has "changed" or was "refused",
 * what it `now` is and `why`, and whether the reader has `seen` it. It has all(), put(standings) and
 * drop(ids). Where the browser keeps nothing, it lives as long as the page.
 */
export async function openStandings() {
  try {
    const database = await opened();
    return {
      all: () => done(database.transaction(STORE).objectStore(STORE).getAll()),
      put: (standings) => write(database, (store) => standings.forEach((one) => store.put(one))),
      drop: (ids) => write(database, (store) => ids.forEach((id) => store.delete(id))),
    };
  } catch {
    return inPage();
  }
}

function opened() {
  const request = indexedDB.open(NAME, 1);
  request.onupgradeneeded = () => request.result.createObjectStore(STORE, { keyPath: "id" });
  return done(request);
}

function done(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

function write(database, work) {
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(STORE, "readwrite");
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error);
    work(transaction.objectStore(STORE));
  });
}

function inPage() {
  const held = new Map();
  return {
    all: async () => [...held.values()],
    put: async (standings) => standings.forEach((one) => held.set(one.id, one)),
    drop: async (ids) => ids.forEach((id) => held.delete(id)),
  };
}
