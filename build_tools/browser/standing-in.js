/**
 * The runtime fetches and compiles its own files: give it those that were asked for already.
 *
 * Inputs: promises of the compiled machine code, of the archives, and where there is an image of
 * its memory being `filled`, ahead of which nothing may run. The runtime offers no option for
 * these; this stands in for the two calls it makes, until what is returned is called. A file
 * that is not among the archives is empty: it comes later.
 */
export function standingIn({ machineCode, archives, filled }) {
  const { fetch } = globalThis;
  const { instantiateStreaming } = WebAssembly;
  globalThis.fetch = async (asked) => {
    const held = (await archives).find(({ url }) => url === String(asked));
    return new Response(held?.bytes);
  };
  WebAssembly.instantiateStreaming = async (_, imports) => {
    const [module] = await Promise.all([machineCode, filled]);
    return { module, instance: await WebAssembly.instantiate(module, imports) };
  };
  return () => {
    globalThis.fetch = fetch;
    WebAssembly.instantiateStreaming = instantiateStreaming;
  };
}
