import { RUNTIME } from "./runtime.js";
import { RUNTIME_FOLDER } from "./places.js";

const WEBASSEMBLY = { headers: { "Content-Type": "application/wasm" } };

/**
 * Fetch the Python runtime: its machine code, compiled while it arrives, and its archives.
 *
 * Every file is checked against the hash this page was built with, so that files of two
 * builds never meet. `tell` is given the bytes so far and their total.
 */
export async function fetchRuntime(tell, { fresh = false } = {}) {
  const options = fresh ? { cache: "reload" } : {};
  const count = counter(tell);
  const [module, ...archives] = await Promise.all([
    compiled(RUNTIME.machine_code, options, count),
    ...RUNTIME.archives.map((file) => archive(file, options, count)),
  ]);
  return { module, archives };
}

function counter(tell) {
  const files = [RUNTIME.machine_code, ...RUNTIME.archives];
  const total = files.reduce((sum, file) => sum + file.bytes, 0);
  let done = 0;
  return (bytes) => {
    done += bytes;
    tell(Math.min(done, total), total);
  };
}

async function archive(file, options, count) {
  const url = new URL(file.name, RUNTIME_FOLDER);
  const response = await whole(url, { ...options, integrity: `sha256-${file.hash}` });
  const bytes = await response.arrayBuffer();
  count(bytes.byteLength);
  return { url: url.href, bytes };
}

async function compiled(file, options, count) {
  const response = await whole(new URL(file.name, RUNTIME_FOLDER), options);
  if (navigator.serviceWorker?.controller) {
    // The offline copy was checked when it was kept, and the browser may hold it compiled.
    const module = await WebAssembly.compileStreaming(response);
    count(file.bytes);
    return module;
  }
  const [forCompiler, forCheck] = response.body.tee();
  const counted = new Response(forCompiler.pipeThrough(counting(count)), WEBASSEMBLY);
  const [module] = await Promise.all([
    WebAssembly.compileStreaming(counted),
    check(forCheck, file),
  ]);
  return module;
}

// Asking for integrity in the fetch would hold the file back until all of it is there.
async function check(stream, file) {
  const bytes = await new Response(stream).arrayBuffer();
  if (!globalThis.crypto?.subtle) {
    return;
  }
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  if (btoa(String.fromCharCode(...digest)) !== file.hash) {
    throw new Error(`${file.name} is not of this build`);
  }
}

function counting(count) {
  return new TransformStream({
    transform(chunk, out) {
      count(chunk.byteLength);
      out.enqueue(chunk);
    },
  });
}

async function whole(url, options) {
  const response = await fetch(url, options);
  if (!response.ok) {
    throw new Error(`${url.pathname} was refused (${response.status})`);
  }
  return response;
}
