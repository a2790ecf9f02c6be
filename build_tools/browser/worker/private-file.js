import { ROOT } from "../shared/site-urls.js";

/**
 * Files in the browser's private file system, which a worker can read at once.
 *
 * From the browser's caches the same bytes come piece by piece, past the process that hands other
 * files over at the same time. Two sites under one origin each have their own.
 */
export class PrivateFile {
  #name;

  constructor(name) {
    this.#name = `${name} ${encodeURIComponent(ROOT.pathname)}`;
  }

  /** Return what is kept, as bytes; rejects where nothing is. */
  async bytes() {
    const folder = await navigator.storage.getDirectory();
    return bytesOf(await folder.getFileHandle(this.#name));
  }

  /** Keep some bytes, one piece behind the other, in place of what was kept; rejects if refused. */
  async keep(...pieces) {
    const folder = await navigator.storage.getDirectory();
    const unfinished = `unfinished ${this.#name}`;
    try {
      const file = await folder.getFileHandle(unfinished, { create: true });
      await write(file, pieces);
      await file.move(folder, this.#name); // so that nobody finds half of it; not all engines take a name alone
    } catch (error) {
      await folder.removeEntry(unfinished).catch(() => {}); // it may not have come so far
      throw error;
    }
  }

  /** Keep nothing any more; rejects where nothing was. */
  async forget() {
    const folder = await navigator.storage.getDirectory();
    await folder.removeEntry(this.#name);
  }
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
