// Pages, lists and archives are kept squeezed, at a quarter of their size.
const SQUEEZED = /\.(html|json|svg|whl|zip)$/;
// Scripts are kept as they came: only with such an answer does the browser keep what it compiled.
const AS_THEY_CAME = /\.js$/;
const OF_SCRIPTS = /^(text|application)\/(x-)?(java|ecma)script$/; // browsers run any of them
const MARK = "X-Squeezed";
const CHECKED = "X-Checked"; // tells who compiles it that its hash was compared

/**
 * Make the entry of the copy for a file of this build, from an answer whose hash was compared.
 *
 * Its type is that of its name, whatever the host said: with another one no script runs and no
 * machine code is compiled. An answer that was redirected may not answer a navigation, and the
 * headers of its way here no longer hold: the copy has headers of its own, the policy among them.
 */
export async function entryOf(path, answer) {
  if (AS_THEY_CAME.test(path) && hasItsType(path, answer)) {
    return answer;
  }
  const headers = new Headers({ ...BUILD.headers, "Content-Type": typeOf(path), [CHECKED]: "yes" });
  let { body } = answer;
  if (SQUEEZED.test(path) && "CompressionStream" in self) {
    headers.set(MARK, "gzip");
    body = body.pipeThrough(new CompressionStream("gzip"));
  }
  return new Response(await new Response(body).blob(), { headers });
}

/** Give an entry as it is answered with. */
export function unsqueezed(entry) {
  if (!entry.headers.has(MARK)) {
    return entry;
  }
  const headers = new Headers(entry.headers);
  headers.delete(MARK);
  return new Response(entry.body.pipeThrough(new DecompressionStream("gzip")), { headers });
}

/** Tell whether an answer or an entry has a type with which a file of this name is of use. */
export function hasItsType(path, { headers }) {
  const type = essenceOf(headers.get("Content-Type") ?? "");
  const wanted = essenceOf(typeOf(path));
  return type === wanted || (OF_SCRIPTS.test(wanted) && OF_SCRIPTS.test(type));
}

/** Tell whether an answer holds what the build put into a file; it is read for that. */
export async function isOfThisBuild(path, answer) {
  const digest = await crypto.subtle.digest("SHA-256", await answer.arrayBuffer());
  return btoa(String.fromCharCode(...new Uint8Array(digest))) === BUILD.files[path];
}

function typeOf(path) {
  return BUILD.types[path.slice(path.lastIndexOf("."))];
}

/** A type without what is said beside it, as its charset. */
export function essenceOf(type) {
  return type.split(";")[0].trim().toLowerCase();
}
