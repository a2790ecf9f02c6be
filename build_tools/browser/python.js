/** Start Python in this worker from what the page fetched; give back the checkers' answer. */
export async function startPython({ module, archives, folder }) {
  const [{ loadPyodide }] = await Promise.all([
    import(`${folder}pyodide.mjs`),
    import(`${folder}pyodide.asm.js`),
  ]);
  const putBack = handOver(module, archives);
  try {
    const python = await loadPyodide({ indexURL: folder, checkAPIVersion: true });
    return answerOf(python, archives.find(({ url }) => url.endsWith(".whl")).bytes);
  } finally {
    putBack();
  }
}

function answerOf(python, wheel) {
  python.unpackArchive(wheel, "wheel");
  return python.pyimport("checkers").answer;
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
