import { lineCounter } from "./damage.js";

const STRING = String.raw`"[^"\\\u0000-\u001f]*(?:\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})[^"\\\u0000-\u001f]*)*"`;
const REST = String.raw`-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null|[{}[\],:]`;
const CUT_STRING = /"[^"\\\n]*(?:\\.[^"\\\n]*)*\\?$/y;
const SPACE = /[ \t\r\n]*/y;
const TOKEN = new RegExp(`(?:${STRING}|${REST})`, "y");
const CLOSES = { "{": "}", "[": "]" };

/**
 * Go through JSON text by RFC 8259: where it breaks, or on which lines its entries begin.
 *
 * A browser's own parser tells the place of a mistake in words of its own, or not at all.
 * Result: {problem: {line, says}} or {lines}: of each object in a list in the outermost object.
 */
export function scanJson(text) {
  const open = [];
  const lines = [];
  const lineAt = lineCounter(text);
  let expected = "value";
  let place = 0;
  for (;;) {
    place += lengthAt(SPACE, text, place);
    const token = text.slice(place, place + lengthAt(TOKEN, text, place));
    if (!token) {
      const ended = place + lengthAt(CUT_STRING, text, place) >= text.length;
      return place >= text.length && expected === "end" ? { lines } : broken(lineAt, place, ended);
    }
    if (token === "{" && open.join("") === "{[") {
      lines.push(lineAt(place));
    }
    expected = after(expected, token, open);
    if (!expected) {
      return broken(lineAt, place, false);
    }
    place += token.length;
  }
}

function lengthAt(pattern, text, place) {
  pattern.lastIndex = place;
  return pattern.exec(text)?.[0].length ?? 0;
}

function broken(lineAt, place, ended) {
  const says = ended ? "the file ends too early" : "this is not JSON from here on";
  return { problem: { line: lineAt(place), says } };
}

/** What may follow a token, or null where the token may not stand here. */
function after(expected, token, open) {
  const inside = open.at(-1);
  if (token === ":") {
    return expected === "colon" ? "value" : null;
  }
  if (token === ",") {
    return expected === "more" ? (inside === "{" ? "key" : "value") : null;
  }
  if (token === "}" || token === "]") {
    const may = expected === "more" || expected === "first key" || expected === "first value";
    return may && CLOSES[inside] === token ? closed(open) : null;
  }
  if (expected === "key" || expected === "first key") {
    return token.startsWith('"') ? "colon" : null;
  }
  if (expected !== "value" && expected !== "first value") {
    return null;
  }
  if (token === "{" || token === "[") {
    open.push(token);
    return token === "{" ? "first key" : "first value";
  }
  return open.length ? "more" : "end";
}

function closed(open) {
  open.pop();
  return open.length ? "more" : "end";
}
