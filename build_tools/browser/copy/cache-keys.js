/** Where this build's copy lies on the device, and by which key each of its files is found there. */
const PREFIX = "residual-current-checkers";

/** The folder of the site. */
export const SCOPE = new URL(self.registration.scope);

/** The cache that holds this build alone. */
export const CACHE = `${PREFIX} ${SCOPE.pathname} ${BUILD.id}`;

export function addressOf(path) {
  return new URL(path, SCOPE);
}

/** The hash in the key makes one build's file findable by the next, and never mistaken for it. */
export function keyOf(path) {
  const key = addressOf(path);
  key.searchParams.set("hash", BUILD.files[path]);
  return key.href;
}

/** The path of a request inside this build, or null where it is not ours to answer. */
export function pathOf(request) {
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

/** The names of the caches of this site's builds. */
export async function ourCaches() {
  const names = await caches.keys();
  return names.filter((name) => name.startsWith(`${PREFIX} ${SCOPE.pathname} `));
}

/** The caches of other builds, opened. */
export async function otherCaches() {
  const names = (await ourCaches()).filter((name) => name !== CACHE);
  return Promise.all(names.map((name) => caches.open(name)));
}
