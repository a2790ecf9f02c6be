import { RUNTIME } from "./runtime.js";
import { RUNTIME_FOLDER } from "./places.js";

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
  const response = await whole(new URL(file.name, RUNTIME_FOLDER), { ...options(fresh), ...held });
  if (response.headers.has(CHECKED)) {
    // It was checked when it was kept, and the browser may hold it compiled.
    const module = await WebAssembly.compileStreaming(response);
    count(file.bytes);
    return module;
  }
  const second = response.clone();
  const [module] = await Promise.all([WebAssembly.compileStreaming(response), check(second, file, count)]);
  return module;
}

/** Fetch the machine code once more, as bytes: it is in one of the browser's caches by then. */
export async function bytesOfMachineCode() {
  const { name, hash } = RUNTIME.machine_code;
  const how = { cache: "force-cache", integrity: `sha256-${hash}` };
  return new Uint8Array(await (await whole(new URL(name, RUNTIME_FOLDER), how)).arrayBuffer());
}

/** Tell whether these bytes are the machine code that this page was built with. */
export function isOfThisBuild(bytes) {
  const file = RUNTIME.machine_code;
  return bytes.length === file.bytes && isHashed(bytes, file.hash);
}

/** Fetch the library and the checkers; gives their places and bytes. */
export function fetchArchives({ fresh, count }) {
  return Promise.all(RUNTIME.archives.map(async (file) => {
    const url = new URL(file.name, RUNTIME_FOLDER);
    const response = await whole(url, { ...options(fresh), integrity: `sha256-${file.hash}` });
    const bytes = await response.arrayBuffer();
    count(bytes.byteLength);
    return { url: url.href, bytes };
  }));
}

function options(fresh) {
  return fresh ? { cache: "reload" } : {};
}

// Asking for integrity in the fetch would hold the file back until all of it is there.
async function check(response, file, count) {
  const bytes = new Uint8Array(file.bytes);
  let at = 0;
  for await (const piece of pieces(response.body)) {
    bytes.set(piece.subarray(0, bytes.length - at), at);
    at += piece.length;
    count(piece.length);
  }
  if (at !== bytes.length || !await isOfThisBuild(bytes)) {
    throw new Error(`${file.name} is not of this build`);
  }
}

// Not every browser lets a stream be walked by itself.
async function* pieces(stream) {
  const reader = stream.getReader();
  for (let step = await reader.read(); !step.done; step = await reader.read()) {
    yield step.value;
  }
}

async function isHashed(bytes, hash) {
  if (!globalThis.crypto?.subtle) {
    return true;
  }
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return btoa(String.fromCharCode(...digest)) === hash;
}

async function whole(url, how) {
  const response = await fetchReally(url, how);
  if (!response.ok) {
    throw new Error(`${url.pathname} was refused (${response.status})`);
  }
  return response;
}
