/**
 * The runtime fetches and compiles its own files: give it those that were asked for already.
 *
 * Inputs: promises of the compiled machine code, of the archives, and where there is an image of
 * its memory being `filled`, ahead of which nothing may run. The runtime offers no option for
 * these; this stands in for the calls it makes, until what is returned is called. A file
 * that is not among the archives is empty: it comes later.
 */
export function standingIn({ machineCode, archives, filled }) {
  const { fetch } = globalThis;
  const { instantiateStreaming, Module } = WebAssembly;
  globalThis.fetch = async (asked) => {
    const held = (await archives).find(({ url }) => url === String(asked));
    return new Response(held?.bytes);
  };
  WebAssembly.instantiateStreaming = async (_, imports) => {
    const [module] = await Promise.all([machineCode, filled]);
    return { module, instance: await WebAssembly.instantiate(module, imports) };
  };
  WebAssembly.Module = oneOfEachShape(Module);
  return () => {
    globalThis.fetch = fetch;
    Object.assign(WebAssembly, { instantiateStreaming, Module });
  };
}

// For each of some 260 functions of JavaScript that machine code may call, the runtime compiles a
// module that holds no more than the function's shape. There are about thirty shapes.
function oneOfEachShape(Module) {
  const made = new Map();
  const construct = (_, [bytes]) => {
    const shape = String(bytes);
    if (!made.has(shape)) {
      made.set(shape, new Module(bytes));
    }
    return made.get(shape);
  };
  return new Proxy(Module, { construct });
}
