const PAGE = 4096; // bytes
const COUNTS = 3; // words ahead of the list of pages

/**
 * Keep only the pages of a memory image that hold anything, with a note: most are empty.
 *
 * Inputs: the image's bytes; a value that JSON can hold. Result: one buffer, as 32-bit words
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
  return packed.buffer;
}

/** Give back the image and the note; throws where the buffer is not one that `pack` made. */
export function unpack(buffer) {
  const [length, count, noteLength] = new Uint32Array(buffer, 0, COUNTS);
  const places = new Uint32Array(buffer, 4 * COUNTS, count);
  const start = 4 * (COUNTS + count);
  const image = new Uint8Array(length);
  places.forEach((place, index) => {
    const size = Math.min(PAGE, length - place * PAGE);
    image.set(new Uint8Array(buffer, start + index * PAGE, size), place * PAGE);
  });
  const text = new Uint8Array(buffer, start + count * PAGE, noteLength);
  return { image, note: JSON.parse(new TextDecoder().decode(text)) };
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
