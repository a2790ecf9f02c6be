import { ROOT } from "./places.js";

/**
 * One file in the browser's private file system, which a worker can read at once.
 *
 * From the browser's caches the same bytes come piece by piece, past the process that hands the
 * machine code over at the same time. Two sites under one origin each have their own.
 */
const NAME = `start-image ${encodeURIComponent(ROOT.pathname)}`;
const UNFINISHED = `unfinished ${NAME}`;

/** Return what is kept, as bytes; rejects where nothing is. */
export async function keptBytes() {
  const folder = await navigator.storage.getDirectory();
  return bytesOf(await folder.getFileHandle(NAME));
}

/** Keep some bytes, one piece behind the other, in place of what was kept; rejects if refused. */
export async function keepBytes(pieces) {
  const folder = await navigator.storage.getDirectory();
  const file = await folder.getFileHandle(UNFINISHED, { create: true });
  await write(file, pieces);
  await file.move(NAME); // so that nobody finds half of it
}

/** Keep nothing any more; rejects where nothing was. */
export async function forgetBytes() {
  const folder = await navigator.storage.getDirectory();
  await folder.removeEntry(NAME);
}

async function bytesOf(file) {
  const opened = await file.createSyncAccessHandle({ mode: "read-only" }).catch(() => null);
  if (!opened) {
    return new Uint8Array(await (await file.getFile()).arrayBuffer()); // another tab reads it just now
  }
  try {
    const bytes = new Uint8Array(opened.getSize());
    opened.read(bytes, { at: 0 });
    return bytes;
  } finally {
    opened.close();
  }
}

async function write(file, pieces) {
  const opened = await file.createSyncAccessHandle();
  try {
    opened.truncate(0);
    pieces.forEach((piece) => opened.write(piece, { at: opened.getSize() }));
  } finally {
    opened.close();
  }
}
