import { ROOT } from "../shared/site-urls.js";

const PATIENCE = 8000; // milliseconds after which a browser that tells nothing has refused
const EACH = 5; // milliseconds more for each record of a write

/**
 * A database of this site, opened when it is first asked, and again where the browser has shut it.
 *
 * Inputs: its name; the steps that turn each version of what is stored into the next: add one,
 * never change one. Two sites under one origin share its storage, and are kept apart by path.
 * Everything rejects with the browser's own error, or with a TimeoutError where it tells nothing;
 * `error.maybe` says that what was to be written may be there all the same.
 */
export function databaseOf(name, steps) {
  const held = { name: `${ROOT.pathname} ${name}`, steps, opening: null };
  return {
    read: (store, question) => read(held, store, question),
    write: (stores, work, count = 0) => write(held, stores, work, count),
  };
}

async function read(held, store, question) {
  const transaction = await begin(held, store, "readonly");
  return settled(transaction, PATIENCE, (give) => {
    const request = question(transaction.objectStore(store));
    request.onsuccess = () => give(request.result);
  });
}

/** Do some work on stores: all of it is written, or none. */
async function write(held, stores, work, count) {
  const transaction = await begin(held, stores, "readwrite");
  const given = stores.map((store) => transaction.objectStore(store));
  return settled(transaction, PATIENCE + EACH * count, (give) => work(...given, give));
}

async function begin(held, stores, mode) {
  const how = { durability: "strict" };
  const database = await connection(held);
  try {
    return database.transaction(stores, mode, how);
  } catch (error) {
    if (error.name !== "InvalidStateError") {
      throw error;
    }
    held.opening = null; // it was shut meanwhile
    return (await connection(held)).transaction(stores, mode, how);
  }
}

function connection(held) {
  held.opening ??= opened(held);
  return held.opening.answer;
}

// Its answer may come after patience has ended: whoever asks from then on has it.
function opened(held) {
  const opening = {};
  const coming = new Promise((resolve, reject) => {
    const request = indexedDB.open(held.name, held.steps.length);
    request.onupgradeneeded = ({ oldVersion }) =>
      held.steps.slice(oldVersion).forEach((step) => step(request.result, request.transaction));
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  const shut = () => { held.opening = held.opening === opening ? null : held.opening; };
  coming.then((database) => {
    opening.answer = coming;
    database.onversionchange = () => { database.close(); shut(); };
    database.onclose = shut;
  }, shut);
  opening.answer = Promise.race([coming, silence(PATIENCE)]);
  return opening;
}

function silence(time) {
  return new Promise((_, reject) => { setTimeout(() => reject(silent()), time); });
}

function silent(more = {}) {
  return Object.assign(new DOMException("the browser does not answer", "TimeoutError"), more);
}

// A transaction that is given up is ended first, so that it is not written later on.
function settled(transaction, patience, work) {
  return new Promise((resolve, reject) => {
    let result = null;
    let timer = 0;
    const giveUp = () => {
      try {
        transaction.abort();
        reject(silent());
      } catch {
        reject(silent({ maybe: true })); // it is being written: only the browser knows
      }
    };
    const heard = () => { clearTimeout(timer); timer = setTimeout(giveUp, patience); };
    const end = (settle, value) => { clearTimeout(timer); settle(value); };
    transaction.addEventListener("success", heard, true);
    transaction.oncomplete = () => end(resolve, result);
    transaction.onabort = () => end(reject, transaction.error ?? new DOMException("the browser gave up", "AbortError"));
    heard();
    try {
      work((value) => { result = value; });
    } catch (error) {
      transaction.abort();
      end(reject, error);
    }
  });
}
