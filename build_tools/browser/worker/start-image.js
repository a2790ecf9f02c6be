import { pack, unpackImage } from "./memory-pages.js";
import { PrivateFile } from "./private-file.js";
import { RUNTIME } from "../generated/runtime.js";

/**
 * The image of the started checkers that this browser keeps, so that the next start is short.
 *
 * It is of no use to another build, nor to another browser: the runtime fits itself to what
 * the browser can do, and an update may change that. So their names are kept in its note. Its
 * SHA-256 stands behind it in the file.
 */
const FILE = new PrivateFile("start-image");
const HASH_BYTES = 32;
const BINDING = [
  ...[RUNTIME.machine_code, ...RUNTIME.archives, ...RUNTIME.scripts].map(({ hash }) => hash),
  navigator.userAgent,
].join(" ");

/**
 * Read the image that is kept, of a length known before [bytes].
 *
 * Result: `image`, a memory of this length, at first empty, for the runtime to begin with; and
 * `filled`, which resolves when all is in there, with `ready`, the checkers imported in it, and
 * `reply`, what it answered to the first question. That rejects where the image is not there, not
 * whole, or not of this build and browser.
 */
export function readImage(length) {
  const image = new Uint8Array(length);
  const filled = fill(image);
  filled.catch(() => {}); // told of where it is waited for
  return { image, filled };
}

async function fill(image) {
  const bytes = await FILE.bytes();
  const packed = bytes.subarray(0, -HASH_BYTES);
  const hash = hashOf(packed);
  const unpacked = unpackImage(image, packed); // meanwhile
  unpacked.catch(() => {}); // of no interest where it is not whole
  if (String(await hash) !== String(bytes.subarray(-HASH_BYTES))) {
    throw new Error("it is not whole");
  }
  const note = await unpacked;
  if (note.binding !== BINDING) {
    throw new Error("it belongs to another build or another browser");
  }
  return note;
}

/** Keep an image in place of the one before, with what is read beside it; false if refused. */
export async function keepImage(image, note) {
  try {
    const packed = pack(image, { ...note, binding: BINDING });
    await FILE.keep(packed, await hashOf(packed));
    return true;
  } catch (error) {
    console.info(`The image of the started checkers cannot be kept: ${error}`);
    return false;
  }
}

/** Say once why the start is an ordinary one, and forget the image. */
export async function forgetImage(why) {
  console.info(`Starting the checkers without their image: ${why}`);
  await FILE.forget().catch(() => {}); // it may be gone already
}

async function hashOf(bytes) {
  return new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
}
