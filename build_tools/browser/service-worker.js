/**
 * Keeps the whole site on the device and serves it without a network.
 *
 * The build writes BUILD in front of this file: when it was built, its identity, the days of its
 * corrections of verdicts, and every file with its hash. A build's files live in a cache of their own. It is filled completely
 * before it takes over, so that files of two builds are never served together.
 */
const PREFIX = "residual-current-checkers";
const SCOPE = new URL(self.registration.scope);
const CACHE = `${PREFIX} ${SCOPE.pathname} ${BUILD.id}`;
// Pages, lists and archives are kept squeezed, at a quarter of their size.
const SQUEEZED = /\.(html|json|svg|whl|zip)$/;
// Scripts are kept as they came: only with such an answer does the browser keep what it compiled.
const AS_THEY_CAME = /\.m?js$/;
const MARK = "X-Squeezed";
const CHECKED = "X-Checked"; // tells who compiles it that its hash was compared
const TOGETHER = 6; // files fetched at one time

self.addEventListener("install", (event) => event.waitUntil(fill()));
self.addEventListener("activate", (event) => event.waitUntil(takeOver()));
self.addEventListener("message", (event) => event.waitUntil(answer(event.data, event.source)));
self.addEventListener("fetch", (event) => {
  const path = pathOf(event.request);
  if (path !== null) {
    event.respondWith(kept(path, event.request));
  }
});

/** Fill this build's cache; what an earlier attempt or the build before has is not fetched again. */
async function fill() {
  const { id: build, built, corrects } = BUILD;
  tellPages({ newer: { build, built, corrects } }); // known even where there is no room for it
  const cache = await caches.open(CACHE);
  const left = Object.entries(BUILD.files);
  const total = left.length;
  const others = await otherCaches();
  const next = async () => {
    for (let file = left.pop(); file; file = left.pop()) {
      await keep(cache, others, ...file).catch((error) => {
        left.length = 0; // one file less is no copy: fetch no more of it
        throw error;
      });
      tellPages({ filling: { done: total - left.length, total } });
    }
  };
  await Promise.all(Array.from({ length: TOGETHER }, next));
}

async function keep(cache, others, path, hash) {
  const key = keyOf(path, hash);
  if (await cache.match(key)) {
    return;
  }
  for (const other of others) {
    const same = await other.match(key);
    if (same) {
      await cache.put(key, same);
      return;
    }
  }
  await cache.put(key, await checked(path, hash));
}

// The hash decides, so a file the browser already holds is as good as one fetched anew, and a
// phone need not fetch the runtime twice. Whatever does not match is asked for past all caches.
async function checked(path, hash) {
  const url = new URL(path, SCOPE);
  const integrity = `sha256-${hash}`;
  const response = await fetch(url, { cache: "force-cache", integrity })
    .catch(() => fetch(url, { cache: "reload", integrity }));
  if (!response.ok) {
    throw new Error(`${path} was refused (${response.status})`);
  }
  return AS_THEY_CAME.test(path) ? response : whole(response, path);
}

// A response that was redirected may not answer a navigation, and the headers of its way here no
// longer hold: the copy has headers of its own.
async function whole(response, path) {
  const headers = new Headers({ "Content-Type": response.headers.get("Content-Type") ?? "", [CHECKED]: "yes" });
  let { body } = response;
  if (SQUEEZED.test(path) && "CompressionStream" in self) {
    headers.set(MARK, "gzip");
    body = body.pipeThrough(new CompressionStream("gzip"));
  }
  return new Response(await new Response(body).blob(), { headers });
}

function unsqueezed(response) {
  if (!response.headers.has(MARK)) {
    return response;
  }
  const headers = { "Content-Type": response.headers.get("Content-Type") };
  return new Response(response.body.pipeThrough(new DecompressionStream("gzip")), { headers });
}

async function takeOver() {
  for (const name of await ourCaches()) {
    if (name !== CACHE) {
      await caches.delete(name);
    }
  }
  await self.clients.claim();
}

async function answer({ ask }, page) {
  if (ask === "take over") {
    await self.skipWaiting();
  } else if (ask === "waiting") {
    page.postMessage({ waiting: { build: BUILD.id, built: BUILD.built, corrects: BUILD.corrects } });
  } else if (ask === "state") {
    page.postMessage({ state: await state() });
  }
}

// A browser short of space may throw the cache away: then it is filled again.
async function state() {
  const whole = await isWhole() || await fill().then(isWhole, () => false);
  return { build: BUILD.id, built: BUILD.built, whole };
}

async function isWhole() {
  const cache = await caches.open(CACHE);
  return (await cache.keys()).length === Object.keys(BUILD.files).length;
}

/** The path of a request inside this build, or null where it is not ours to answer. */
function pathOf(request) {
  const url = new URL(request.url);
  if (request.method !== "GET" || !url.href.startsWith(SCOPE.href)) {
    return null;
  }
  const path = decodeURIComponent(url.pathname.slice(SCOPE.pathname.length));
  const file = path === "" || path.endsWith("/") ? `${path}index.html` : path;
  if (Object.hasOwn(BUILD.files, file)) {
    return file;
  }
  return Object.hasOwn(BUILD.files, `${file}/index.html`) ? `${file}/index.html` : null;
}

async function kept(path, request) {
  const cache = await caches.open(CACHE);
  const found = await cache.match(keyOf(path, BUILD.files[path]));
  return found ? unsqueezed(found) : fetch(request);
}

// The hash in the key makes one build's file findable by the next, and never mistaken for it.
function keyOf(path, hash) {
  const key = new URL(path, SCOPE);
  key.searchParams.set("hash", hash);
  return key.href;
}

async function ourCaches() {
  const names = await caches.keys();
  return names.filter((name) => name.startsWith(`${PREFIX} ${SCOPE.pathname} `));
}

async function otherCaches() {
  const names = (await ourCaches()).filter((name) => name !== CACHE);
  return Promise.all(names.map((name) => caches.open(name)));
}

async function tellPages(message) {
  const pages = await self.clients.matchAll({ type: "window", includeUncontrolled: true });
  pages.forEach((page) => page.postMessage(message));
}
