import { Failure, RIGHT_NOW } from "../shared/failure.js";
import { SCRIPT, troubleWith } from "../shared/file-trouble.js";
import { RUNTIME_FOLDER } from "../shared/site-urls.js";
import { SCRIPTS } from "../generated/start-scripts.js";

const FOLDERS = { browser: new URL(".", import.meta.url), runtime: RUNTIME_FOLDER };

let checked = null;

/**
 * Compare the scripts that the worker runs with those that this page was built with.
 *
 * No browser takes a hash for a worker or for what it imports. So they are asked for once more,
 * which the browser's own cache answers, and nothing is asked of them until this resolves. Rejects
 * with the name of one that was changed on its way.
 */
export function checkScripts() {
  checked ??= Promise.all(SCRIPTS.map(check)).catch((error) => {
    checked = null;
    throw error;
  });
  return checked;
}

async function check({ folder, name, hash }) {
  const url = new URL(name, FOLDERS[folder]);
  try {
    await fetch(url, { cache: "force-cache", integrity: `sha256-${hash}` });
  } catch {
    throw await troubleWith(url, { type: SCRIPT, hash }) ?? new Failure("changed", name, RIGHT_NOW);
  }
}
