const SIZE = 16384; // bytes

/** A schedule to be read: its name, its size in bytes, and its bytes piece by piece. */
export function ofFile(file) {
  return { name: file.name, size: file.size, pieces: () => slices(file) };
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
