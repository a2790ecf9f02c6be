/**
 * Keeps the whole site on the device and serves it without a network.
 *
 * The build writes BUILD in front of this: when it was built, its identity, the days of its
 * corrections of verdicts, every file with its hash, the type of each kind of file, and the headers
 * that go with any. A build's files live in a cache of their own. It is filled completely before it
 * takes over, so that files of two builds are never served together.
 */
import { unsqueezed } from "./entries.js";
import { factsOf } from "./fetch.js";
import { fill, isWhole, mend, refill, renew } from "./fill.js";
import { CACHE, SCOPE, keyOf, ourCaches, pathOf } from "./cache-keys.js";

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(takeOver()));
self.addEventListener("message", (event) => event.waitUntil(answer(event)));
self.addEventListener("fetch", (event) => {
  const path = pathOf(event.request);
  if (path !== null) {
    event.respondWith(serve(path, event.request));
  } else if (event.request.mode === "navigate" && event.request.url.startsWith(SCOPE.href)) {
    event.respondWith(fetch(event.request).catch(lost)); // a newer build may have a page there
  }
});

async function install() {
  const { id: build, built, corrects } = BUILD;
  tellPages({ newer: { build, built, corrects } }); // known even where there is no room for it
  try {
    await fill((filling) => tellPages({ filling }));
  } catch (error) {
    await tellPages({ unfinished: { build, ...factsOf(error, "The copy") } });
    throw error;
  }
}

async function takeOver() {
  for (const name of await ourCaches()) {
    if (name !== CACHE) {
      await caches.delete(name);
    }
  }
  await self.clients.claim();
}

async function answer({ data: { ask }, source: page, ports }) {
  if (ask === "take over") {
    await self.skipWaiting();
  } else if (ask === "waiting") {
    page.postMessage({ waiting: { build: BUILD.id, built: BUILD.built, corrects: BUILD.corrects } });
  } else if (ask === "state") {
    page.postMessage({ state: await state() });
  } else if (ask === "mend") {
    ports[0].postMessage(await mend());
  }
}

// A browser short of space may throw the cache away: then it is filled again.
async function state() {
  let why = null;
  if (!await isWhole()) {
    await fill(() => {}).catch((error) => { why = factsOf(error, "The copy"); });
  }
  return { build: BUILD.id, built: BUILD.built, whole: await isWhole(), why };
}

// A page that could not start asks for files anew, which passes the copy by and mends it. A script
// can be asked for so by its address alone.
async function serve(path, request) {
  const anew = request.cache === "reload" || new URL(request.url).searchParams.has("anew");
  const fresh = anew ? await renew(path).catch(() => null) : null;
  return fresh ?? await kept(path) ?? refill(path).catch(() => asTheNetworkSays(request));
}

async function kept(path) {
  const cache = await caches.open(CACHE);
  const found = await cache.match(keyOf(path));
  return found ? unsqueezed(found) : null;
}

/** Without a network: the page for a wrong address, as a host would send it. */
async function lost() {
  const page = await kept("404.html");
  return page ? new Response(page.body, { status: 404, headers: page.headers }) : Response.error();
}

// A page of another build brings its own scripts along; any other file would meet those of this one.
function asTheNetworkSays(request) {
  return request.mode === "navigate" ? fetch(request) : Response.error();
}

async function tellPages(message) {
  const pages = await self.clients.matchAll({ type: "window", includeUncontrolled: true });
  pages.forEach((page) => page.postMessage(message));
}
