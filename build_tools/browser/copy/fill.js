import { entryOf, hasItsType, isOfThisBuild, unsqueezed } from "./entries.js";
import { factsOf, fetched, fetchedAnew, Lacking } from "./fetch.js";
import { CACHE, keyOf, otherCaches } from "./cache-keys.js";

const TOGETHER = 6; // files at one time

/**
 * Fill this build's cache; what an earlier attempt has, or the build before, is not fetched again.
 *
 * `tell` is called with how far it is. Rejects with the first file that cannot be had.
 */
export async function fill(tell) {
  const cache = await caches.open(CACHE);
  const others = await otherCaches();
  const total = Object.keys(BUILD.files).length;
  let done = 0;
  await eachFile(async (path) => {
    await keep(cache, others, path);
    done += 1;
    tell({ done, total });
  });
}

async function keep(cache, others, path) {
  const key = keyOf(path);
  if (await cache.match(key)) {
    return;
  }
  for (const other of others) {
    const entry = await sound(other, path);
    if (entry) {
      await cache.put(key, entry);
      return;
    }
  }
  await cache.put(key, await entryOf(path, await fetched(path)));
}

/**
 * Compare every entry of this build's cache with its hash and type, and put right what is wrong.
 *
 * Result: how many were `mended`; and `why` one could not be, as facts, or null. That one is no
 * longer there: nobody is served what is wrong.
 */
export async function mend() {
  const cache = await caches.open(CACHE);
  const told = { mended: 0, why: null };
  await eachFile(async (path) => {
    try {
      const isMended = await mendOne(cache, path);
      told.mended += Number(isMended);
    } catch (error) {
      told.why ??= factsOf(error, path);
    }
  });
  return told;
}

async function mendOne(cache, path) {
  const key = keyOf(path);
  const entry = await sound(cache, path);
  const kept = await cache.match(key);
  if (entry && hasItsType(path, kept)) {
    return false;
  }
  await cache.delete(key);
  await cache.put(key, entry ?? await entryOf(path, await fetched(path)));
  return true;
}

/** Take what a cache has of a file, where that is what the build put into it; else null. */
async function sound(cache, path) {
  const key = keyOf(path);
  const entry = await cache.match(key);
  if (!entry || !await isOfThisBuild(path, unsqueezed(entry)).catch(() => false)) {
    return null;
  }
  const again = await cache.match(key); // the first was read; this one brings what was compiled of it
  return hasItsType(path, again) ? again : entryOf(path, unsqueezed(again));
}

/** Fetch one file past all caches and keep it anew; gives it as it is answered with. */
export async function renew(path) {
  return keepAndGive(path, await fetchedAnew(path));
}

/** Fetch one file that the cache has lost; gives it as it is answered with. */
export async function refill(path) {
  return keepAndGive(path, await fetched(path));
}

async function keepAndGive(path, answer) {
  const entry = await entryOf(path, answer);
  const cache = await caches.open(CACHE);
  await cache.put(keyOf(path), entry.clone()).catch(() => {}); // no room: it is of use all the same
  return unsqueezed(entry);
}

/** Tell whether there is an entry for every file of this build. */
export async function isWhole() {
  const cache = await caches.open(CACHE);
  return (await cache.keys()).length === Object.keys(BUILD.files).length;
}

async function eachFile(action) {
  const left = Object.keys(BUILD.files);
  const next = async () => {
    for (let path = left.pop(); path; path = left.pop()) {
      await action(path).catch((error) => {
        left.length = 0; // one file less is no copy: fetch no more of it
        throw new Lacking(factsOf(error, path));
      });
    }
  };
  await Promise.all(Array.from({ length: TOGETHER }, next));
}
