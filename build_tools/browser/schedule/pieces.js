const SIZE = 16384; // bytes

const MOST = 400_000; // bytes of a file that a tab can hold as text

/**
 * A schedule to be read: its name, its size in bytes, and its bytes piece by piece.
 *
 * Of a file `file` is all of it, a character a byte, once `kept` resolves; null where it is too long.
 */
export function ofFile(file) {
  const schedule = { name: file.name, size: file.size, pieces: () => slices(file), file: null };
  schedule.kept = file.size > MOST ? Promise.resolve() : file.arrayBuffer().then((bytes) => { schedule.file = asText(new Uint8Array(bytes)); }, () => {});
  return schedule;
}

/** The same of a file that a tab has held. */
export function ofKept(name, text) {
  const blob = new Blob([Uint8Array.from(text, (one) => one.charCodeAt(0))]);
  return { name, size: blob.size, pieces: () => slices(blob), file: text };
}

function asText(bytes) {
  let text = "";
  bytes.forEach((byte) => { text += String.fromCharCode(byte); });
  return text;
}

/** The same of rows that were pasted. */
export function ofText(text) {
  const bytes = new TextEncoder().encode(text);
  return { name: "schedule", size: bytes.length, pieces: () => slices(new Blob([bytes])) };
}

async function* slices(blob) {
  for (let start = 0; start < blob.size; start += SIZE) {
    yield new Uint8Array(await blob.slice(start, start + SIZE).arrayBuffer());
  }
}
