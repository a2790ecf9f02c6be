import { pack, unpack } from "./memory-pages.js";
import { ROOT } from "./places.js";
import { RUNTIME } from "./runtime.js";

/**
 * The image of the started checkers that this browser keeps, so that the next start is short.
 *
 * It is of no use to another build, nor to another browser: the runtime fits itself to what
 * the browser can do, and an update may change that. So it is kept under all their names.
 */
const STORE = `residual-current-checkers start image ${ROOT.pathname}`;
const STRANGE = "it belongs to another build or another browser";
const KEY = new URL("start-image", ROOT).href;
const HASH = "Image-Hash";
const BINDING = [
  ...[RUNTIME.machine_code, ...RUNTIME.archives, ...RUNTIME.scripts].map(({ hash }) => hash),
  navigator.userAgent,
].join(" ");

/**
 * Look for an image kept for this build and browser; null where there is none.
 *
 * Result: what gives its contents: `image`, the memory; `ready`, the checkers imported in it;
 * and `reply`, what it answered to the first question. That rejects where it is not whole.
 */
export async function findImage() {
  try {
    const kept = await globalThis.caches?.match(KEY, { cacheName: STORE });
    if (kept && kept.headers.get("Binding") !== encodeURIComponent(BINDING)) {
      throw new Error(STRANGE);
    }
    return kept ? () => contents(kept) : null;
  } catch (error) {
    await forgetImage(error);
    return null;
  }
}

async function contents(kept) {
  const packed = await kept.arrayBuffer();
  if (kept.headers.get(HASH) !== await hashOf(packed)) {
    throw new Error("it is not whole");
  }
  const { image, note } = unpack(packed);
  if (note.binding !== BINDING) {
    throw new Error(STRANGE);
  }
  return { image, ...note };
}

/** Keep an image in place of the one before, with what `findImage` gives beside it. */
export async function keepImage(image, note) {
  try {
    const packed = pack(image, { ...note, binding: BINDING });
    const headers = { [HASH]: await hashOf(packed), Binding: encodeURIComponent(BINDING) };
    const store = await caches.open(STORE);
    await store.put(KEY, new Response(packed, { headers }));
  } catch (error) {
    console.info(`The image of the started checkers cannot be kept: ${error}`);
  }
}

/** Say once why the start is an ordinary one, and forget the image. */
export async function forgetImage(why) {
  console.info(`Starting the checkers without their image: ${why}`);
  await globalThis.caches?.delete(STORE).catch(() => false);
}

async function hashOf(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return btoa(String.fromCharCode(...digest));
}
