import { ROOT } from "./places.js";
import { RUNTIME } from "./runtime.js";

/**
 * The image of the started checkers that this browser keeps, so that the next start is short.
 *
 * It is of no use to another build, nor to another browser: the runtime fits itself to what
 * the browser can do, and an update may change that. So it is kept under all their names.
 */
const STORE = `residual-current-checkers start image ${ROOT.pathname}`;
const HASH = "Image-Hash";

/** What an image has to belong to. */
export const BINDING = [
  ...[RUNTIME.machine_code, ...RUNTIME.archives, ...RUNTIME.scripts].map(({ hash }) => hash),
  navigator.userAgent,
].join(" ");

const KEY = new URL("start-image", ROOT).href;

/** Give the image kept for this build and browser, or null; one that does not fit is told of. */
export async function recallImage() {
  try {
    const kept = await globalThis.caches?.match(KEY, { cacheName: STORE });
    return kept ? await checked(kept) : null;
  } catch (error) {
    await refuseImage(error);
    return null;
  }
}

/** Keep an image in place of the one before. */
export async function keepImage(image) {
  try {
    const store = await caches.open(STORE);
    const headers = { [HASH]: await hashOf(image), Binding: await hashOf(new TextEncoder().encode(BINDING)) };
    await store.put(KEY, new Response(image, { headers }));
  } catch (error) {
    console.info(`The image of the started checkers cannot be kept: ${error}`);
  }
}

/** Say once why the start is an ordinary one, and forget the image. */
export async function refuseImage(why) {
  console.info(`Starting the checkers without their image: ${why}`);
  await globalThis.caches?.delete(STORE).catch(() => false);
}

async function checked(kept) {
  if (kept.headers.get("Binding") !== await hashOf(new TextEncoder().encode(BINDING))) {
    throw new Error("it belongs to another build or another browser");
  }
  const image = await kept.arrayBuffer();
  if (kept.headers.get(HASH) !== await hashOf(image)) {
    throw new Error("it is not whole");
  }
  return image;
}

async function hashOf(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return btoa(String.fromCharCode(...digest));
}
