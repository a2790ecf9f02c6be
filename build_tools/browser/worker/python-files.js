import { filesIn } from "./archive.js";

const WHEEL = ".whl";
const PLACE = "import sys; next(place for place in sys.path if place.endswith";

/** The files of a Python that was started without them, fetched when they are first needed. */
export class FilesLater {
  #python;
  #fetch;
  #coming = null;

  constructor(python, fetchArchives) {
    this.#python = python;
    this.#fetch = fetchArchives;
  }

  /** Resolves when they are in their places; after a failure the next call tries again. */
  come() {
    this.#coming ??= this.#bring().catch((error) => {
      this.#coming = null;
      throw error;
    });
    return this.#coming;
  }

  async #bring() {
    const archives = await this.#fetch();
    const { FS } = this.#python;
    const at = (end) => this.#python.runPython(`${PLACE}('${end}'))`);
    FS.writeFile(at(".zip"), new Uint8Array(archives.find(({ url }) => !url.endsWith(WHEEL)).bytes));
    unpackInto(FS, at("site-packages"), archives);
  }
}

/**
 * Put the checkers where Python looks for packages.
 *
 * One by one: with the runtime's own way it would hold an object of the page's side, and no
 * image could be taken. What describes the wheel is left out for the same reason.
 */
export function unpackInto(files, folder, archives) {
  const wheel = archives.find(({ url }) => url.endsWith(WHEEL));
  const made = new Set();
  for (const [name, content] of wheel ? filesIn(new Uint8Array(wheel.bytes)) : []) {
    if (name.includes(".dist-info/")) {
      continue;
    }
    const path = `${folder}/${name}`;
    const parent = path.slice(0, path.lastIndexOf("/"));
    if (!made.has(parent)) {
      made.add(parent);
      files.mkdirTree(parent);
    }
    files.writeFile(path, content, { canOwn: true });
  }
}
