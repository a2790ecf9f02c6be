import { filesIn } from "./archive.js";
import { pack, unpack } from "./memory-pages.js";
import { RUNTIME_FOLDER } from "./places.js";
import { PROBE } from "./runtime.js";

const FOLDER = RUNTIME_FOLDER.href;

// Asked for before there is anything to start, so that they arrive beside the page's files.
const scripts = Promise.all([import(`${FOLDER}pyodide.mjs`), import(`${FOLDER}pyodide.asm.js`)]);

// A random state that came with an image would be the same at each start.
const RESEED = "import sys; sys.modules['random'].seed() if 'random' in sys.modules else None";

/**
 * Start Python in this worker from what the page fetched, with the checkers imported.
 *
 * Result: `answer`, `schedule`, and `image`, the memory at this moment, before any question was asked.
 */
export async function startPython(parts) {
  // An option of the runtime's own, as `_loadSnapshot` below: its version is pinned.
  const python = await load(parts, { _makeSnapshot: true });
  python.runPython("import checkers");
  return { image: imageOf(python), answer: answerOf(python), schedule: scheduleOf(python) };
}

/** Start Python from an image; refuses one that does not give the reply it gave when it was taken. */
export async function restorePython({ packed, binding, ...parts }) {
  const { image, note } = unpack(packed);
  if (note.binding !== binding) {
    throw new Error("it belongs to another build or another browser");
  }
  const python = await load(parts, { _loadSnapshot: image });
  python.runPython(RESEED);
  const answer = answerOf(python);
  if (answer(PROBE.slug, PROBE.request) !== note.reply) {
    throw new Error("it answers otherwise than it did when it was taken");
  }
  return { answer, schedule: scheduleOf(python) };
}

/** Make an image fit to be kept, bound to what it was taken from. */
export function packed({ image, answer }, binding) {
  return pack(image, { binding, reply: answer(PROBE.slug, PROBE.request) });
}

async function load({ module, archives }, options) {
  const [{ loadPyodide }] = await scripts;
  const putBack = handOver(module, archives);
  try {
    const fsInit = (files, { sitePackages }) => place(wheelOf(archives), files, sitePackages);
    return await loadPyodide({ indexURL: FOLDER, checkAPIVersion: true, fsInit, ...options });
  } finally {
    putBack();
  }
}

function wheelOf(archives) {
  return new Uint8Array(archives.find(({ url }) => url.endsWith(".whl")).bytes);
}

// What describes the wheel is left out: the runtime would list it in an object of the page's
// side, and then no image could be taken.
function place(wheel, files, folder) {
  const made = new Set();
  const contents = [...filesIn(wheel)].filter(([name]) => !name.includes(".dist-info/"));
  contents.forEach(([name, content]) => {
    const path = `${folder}/${name}`;
    const parent = path.slice(0, path.lastIndexOf("/"));
    if (!made.has(parent)) {
      made.add(parent);
      files.mkdirTree(parent);
    }
    files.writeFile(path, content, { canOwn: true });
  });
}

function imageOf(python) {
  try {
    return python.makeMemorySnapshot();
  } catch (error) {
    console.info(`No image of the started checkers can be taken: ${error}`);
    return null;
  }
}

function answerOf(python) {
  return python.pyimport("checkers").answer;
}

// Few pages judge a schedule, so its module is asked for with the first call.
function scheduleOf(python) {
  let stream = null;
  return (call, value) => {
    stream ??= python.pyimport("checkers.schedule_stream");
    if (!(value instanceof Uint8Array)) {
      return value === undefined ? stream[call]() : stream[call](value);
    }
    const bytes = python.toPy(value);
    try {
      return stream[call](bytes);
    } finally {
      bytes.destroy();
    }
  };
}

/**
 * The runtime fetches and compiles its own files: give it those that the page has already.
 *
 * It offers no option for a compiled module; this stands in for the two calls it makes.
 */
function handOver(module, archives) {
  const held = new Map(archives.map(({ url, bytes }) => [url, bytes]));
  const { fetch } = globalThis;
  const { instantiateStreaming } = WebAssembly;
  globalThis.fetch = (address, options) => {
    const url = String(address);
    if (url.endsWith(".wasm")) {
      return Promise.resolve(new Response());
    }
    const bytes = held.get(url);
    return bytes ? Promise.resolve(new Response(bytes)) : fetch(address, options);
  };
  WebAssembly.instantiateStreaming = async (response, imports) => {
    await response;
    return { module, instance: await WebAssembly.instantiate(module, imports) };
  };
  return () => {
    globalThis.fetch = fetch;
    WebAssembly.instantiateStreaming = instantiateStreaming;
  };
}
