import { asking } from "./answers.js";
import { Failure, RIGHT_NOW } from "../shared/failure.js";
import { SCRIPT, troubleWith } from "../shared/file-trouble.js";
import { FilesLater, unpackInto } from "./python-files.js";
import { RUNTIME_FOLDER } from "../shared/site-urls.js";
import { PROBE, RUNTIME } from "../generated/runtime.js";
import { standingIn } from "./shims.js";

const FOLDER = RUNTIME_FOLDER.href;

// A start that passes the copy by asks for them by addresses that no cache knows.
const { fresh } = JSON.parse(globalThis.name || "{}");
const PAST = fresh ? `?anew=${Date.now()}` : "";

// Asked for before there is anything to start, so that they arrive beside the other files.
const scripts = Promise.all(["pyodide.js", "pyodide.asm.js"].map((name) => import(`${FOLDER}${name}${PAST}`)));
scripts.catch(() => {}); // told of where they are waited for, if it comes to that

/**
 * Start Python in this worker from its files, with the checker imported that is asked first.
 *
 * Inputs: the checker's slug; promises of the compiled machine code and of the archives.
 * Result: `answer` and `schedule`, as `asking` gives them; and where one could be taken `image`,
 * the memory before any question was asked, with `note`, which gives what belongs to it.
 */
export async function startPython(slug, machineCode, archives) {
  const python = await load({ machineCode, archives });
  return readyFor(slug, python, []);
}

/**
 * Start Python from an image; refuses one that does not give the reply it gave when it was taken.
 *
 * The files are not in an image. They are fetched behind the first answer, unless the checker
 * that is asked first is not in it either.
 */
export async function restorePython(slug, machineCode, { image, filled }, fetchArchives) {
  const parts = { machineCode, archives: Promise.resolve([]), filled };
  const python = await load(parts, { _loadSnapshot: image });
  const { ready, reply } = await filled;
  python.pyimport("checkers.contract.browser_image").wake_up();
  if (firstReply(python) !== reply) {
    throw new Error("it answers otherwise than it did when it was taken");
  }
  const files = new FilesLater(python, fetchArchives);
  if (ready.includes(slug)) {
    return asking(python, ready, files);
  }
  await files.come();
  return readyFor(slug, python, ready);
}

function readyFor(slug, python, already) {
  const getReady = python.pyimport("checkers.contract.browser_image").get_ready;
  const ready = [...new Set([...already, PROBE.slug, slug])];
  ready.forEach((one) => getReady(one));
  const image = imageOf(python);
  return { image, note: () => ({ ready, reply: firstReply(python) }), ...asking(python, ready, null) };
}

function firstReply(python) {
  return python.pyimport("checkers").answer(PROBE.slug, PROBE.request);
}

// The runtime puts itself together while its parts still come, and waits for them where it must.
async function load(parts, options = {}) {
  const [{ loadPyodide }] = await scripts.catch(whyNotImported);
  const coming = waitedForEver(parts);
  const putBack = standingIn(coming);
  const python = loadPyodide({
    indexURL: FOLDER,
    lockFileContents: RUNTIME.lock,
    checkAPIVersion: true,
    fsInit: async (files, { sitePackages }) => unpackInto(files, sitePackages, await coming.archives),
    _makeSnapshot: true, // an option of the runtime's own, as `_loadSnapshot`: its version is pinned
    ...options,
  });
  const started = await Promise.race([python, failing(parts)]);
  putBack(); // not after a failure: what is left of the runtime is still waiting then
  return started;
}

// An import that fails does not say why.
async function whyNotImported(error) {
  for (const { name, hash } of RUNTIME.scripts.filter((one) => one.name.startsWith("pyodide"))) {
    const trouble = await troubleWith(new URL(name, RUNTIME_FOLDER), { type: SCRIPT, hash });
    if (trouble) {
      throw trouble;
    }
  }
  throw error.name === "SyntaxError" ? new Failure("too-old") : new Failure("changed", "pyodide.js", RIGHT_NOW);
}

// Of a part that does not come the runtime would only add notes of its own: it never hears of it.
function waitedForEver(parts) {
  const wait = () => new Promise(() => {});
  return Object.fromEntries(Object.entries(parts).map(([name, part]) => [name, part.catch(wait)]));
}

function failing(parts) {
  return new Promise((_, reject) => Promise.all(Object.values(parts)).catch(reject));
}

function imageOf(python) {
  try {
    return python.makeMemorySnapshot();
  } catch (error) {
    console.info(`No image of the started checkers can be taken: ${error}`);
    return null;
  }
}
