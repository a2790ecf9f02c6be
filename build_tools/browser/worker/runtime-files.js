import { Failure, failureOf, RIGHT_NOW } from "../shared/failure.js";
import { isHashed, troubleOf, troubleWith } from "../shared/file-trouble.js";
import { RUNTIME } from "../generated/runtime.js";
import { RUNTIME_FOLDER } from "../shared/site-urls.js";

const MACHINE_CODE = /^application\/wasm\b/; // compiled while it arrives with this type alone
const CHECKED = "X-Checked"; // a header of our service worker
const fetchReally = globalThis.fetch.bind(globalThis); // the runtime is given another while it starts

/**
 * Fetch Python's machine code, compiled while it arrives.
 *
 * Like the archives it is checked against the hash this page was built with, so that files of
 * two builds never meet. `count` is given the bytes of each piece that comes.
 */
export async function fetchMachineCode({ fresh, count }) {
  const file = RUNTIME.machine_code;
  // At an address that is not secure the bytes cannot be compared while they arrive.
  const held = globalThis.crypto?.subtle ? {} : { integrity: `sha256-${file.hash}` };
  const response = await whole(file, { ...options(fresh), ...held }, MACHINE_CODE);
  if (response.headers.has(CHECKED)) {
    // It was checked when it was kept, and the browser may hold it compiled.
    const module = await WebAssembly.compileStreaming(response).catch((error) => notCompiled(file, error));
    count(file.bytes);
    return module;
  }
  const checked = check(response.clone(), file, count);
  // Of a file that is cut short the check says so, and the compiler something of its own.
  const compiled = WebAssembly.compileStreaming(response).catch((error) => checked.then(() => { throw error; }));
  const [module] = await Promise.all([compiled, checked]);
  return module;
}

async function notCompiled(file, error) {
  const trouble = await troubleWith(placeOf(file), { hash: file.hash });
  const isStrange = failureOf(error).kind === "unknown";
  throw trouble ?? (isStrange ? new Failure("changed", file.name, RIGHT_NOW) : error);
}

/** Fetch the machine code once more, as bytes: it is in one of the browser's caches by then. */
export async function bytesOfMachineCode() {
  const file = RUNTIME.machine_code;
  const how = { cache: "force-cache", integrity: `sha256-${file.hash}` };
  return new Uint8Array(await (await whole(file, how)).arrayBuffer());
}

/** Tell whether these bytes are the machine code that this page was built with. */
export function isOfThisBuild(bytes) {
  const file = RUNTIME.machine_code;
  return bytes.length === file.bytes && isHashed(bytes, file.hash);
}

/** Fetch the library and the checkers; gives their places and bytes. */
export function fetchArchives({ fresh, count }) {
  return Promise.all(RUNTIME.archives.map(async (file) => {
    const response = await whole(file, { ...options(fresh), integrity: `sha256-${file.hash}` });
    const bytes = await response.arrayBuffer().catch(() => notWhole(file));
    count(bytes.byteLength);
    return { url: placeOf(file).href, bytes };
  }));
}

function options(fresh) {
  return fresh ? { cache: "reload" } : {};
}

// Asking for integrity in the fetch would hold the file back until all of it is there.
async function check(response, file, count) {
  const bytes = new Uint8Array(file.bytes);
  let at = 0;
  try {
    for await (const piece of pieces(response.body)) {
      bytes.set(piece.subarray(0, bytes.length - at), at);
      at += piece.length;
      count(piece.length);
    }
  } catch {
    await notWhole(file);
  }
  if (at !== bytes.length || !await isOfThisBuild(bytes)) {
    throw new Failure("changed", file.name);
  }
}

// Not every browser lets a stream be walked by itself.
async function* pieces(stream) {
  const reader = stream.getReader();
  for (let step = await reader.read(); !step.done; step = await reader.read()) {
    yield step.value;
  }
}

// `integrity` that is not met, a connection that broke and no network look alike.
async function notWhole(file) {
  throw await troubleWith(placeOf(file), { hash: file.hash }) ?? new Failure("changed", file.name, RIGHT_NOW);
}

async function whole(file, how, type = null) {
  const response = await fetchReally(placeOf(file), how).catch(() => notWhole(file));
  const trouble = troubleOf(response, file.name, type);
  if (trouble) {
    throw trouble;
  }
  return response;
}

function placeOf({ name }) {
  return new URL(name, RUNTIME_FOLDER);
}
