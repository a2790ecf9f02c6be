const PAGE = 4096; // bytes
const COUNTS = 3; // words ahead of the list of pages

/**
 * Keep only the pages of a memory image that hold anything, with a note: most are empty.
 *
 * Inputs: the image's bytes; a value that JSON can hold. Result: bytes, as 32-bit words
 * the image's length, how many pages are kept, the note's length in bytes and each page's
 * place; then the pages; then the note.
 */
export function pack(image, note) {
  const text = new TextEncoder().encode(JSON.stringify(note));
  const kept = pagesIn(image).filter((place) => holdsAnything(image, place));
  const start = 4 * (COUNTS + kept.length);
  const packed = new Uint8Array(start + kept.length * PAGE + text.length);
  new Uint32Array(packed.buffer, 0, COUNTS + kept.length).set([image.length, kept.length, text.length, ...kept]);
  kept.forEach((place, index) => packed.set(pageAt(image, place), start + index * PAGE));
  packed.set(text, packed.length - text.length);
  return packed;
}

/** Fill an empty image from a packed one, and give back the note; rejects if lengths differ. */
export async function unpackImage(image, packed) {
  const [length, count, noteLength] = wordsOf(packed, 0, COUNTS);
  if (length !== image.length) {
    throw new Error("it is of another length");
  }
  const start = 4 * (COUNTS + count);
  wordsOf(packed, COUNTS, count).forEach((place, index) => {
    const size = Math.min(PAGE, image.length - place * PAGE);
    image.set(packed.subarray(start + index * PAGE, start + index * PAGE + size), place * PAGE);
  });
  const note = start + count * PAGE;
  return JSON.parse(new TextDecoder().decode(packed.subarray(note, note + noteLength)));
}

function wordsOf(packed, first, count) {
  return new Uint32Array(packed.buffer, packed.byteOffset + 4 * first, count);
}

function pagesIn(image) {
  return Array.from({ length: Math.ceil(image.length / PAGE) }, (_, place) => place);
}

function pageAt(image, place) {
  return image.subarray(place * PAGE, (place + 1) * PAGE);
}

function holdsAnything(image, place) {
  const bytes = pageAt(image, place);
  return new Uint32Array(bytes.buffer, bytes.byteOffset, bytes.length / 4).some((word) => word !== 0);
}
