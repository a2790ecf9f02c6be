import { databaseOf } from "../../basics/database.js";

const STORE = "standings";

// Apart from the log, so that no build that does not know of it is kept from opening that.
const database = databaseOf("judged again", [
  (made) => made.createObjectStore(STORE, { keyPath: "id" }),
]);

/**
 * What came of judging each kept verdict again, by the id of its entry; no label is in it.
 *
 * Of each: `by` which checkers, whether it still `is` so ("stands"), has "changed" or was "refused",
 * what it `now` is and `why`, and whether the reader has `seen` it. It has all(), put(standings) and
 * drop(ids). Where the browser keeps nothing, it lives as long as the page.
 */
export async function openStandings() {
  try {
    await database.read(STORE, (store) => store.count());
  } catch {
    return inPage();
  }
  return {
    all: () => database.read(STORE, (store) => store.getAll()),
    put: (standings) => database.write([STORE], (store) => standings.forEach((one) => store.put(one)), standings.length),
    drop: (ids) => database.write([STORE], (store) => ids.forEach((id) => store.delete(id)), ids.length),
  };
}

function inPage() {
  const held = new Map();
  return {
    all: async () => [...held.values()],
    put: async (standings) => standings.forEach((one) => held.set(one.id, one)),
    drop: async (ids) => ids.forEach((id) => held.delete(id)),
  };
}
