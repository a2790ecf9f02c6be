/**
 * A sum over a whole entry, which tells whether it was damaged or edited outside the log.
 *
 * CRC-32 as in ISO 3309 and ITU-T V.42, over the entry in the canonical JSON form of RFC 8785,
 * as UTF-8; eight hexadecimal digits after "crc-", without which a spreadsheet might take them
 * for a number. It guards against accidents, not against intent.
 */
export function sumOf(entry) {
  let register = 0xffffffff;
  for (const byte of new TextEncoder().encode(canonical(entry))) {
    register = TABLE[(register ^ byte) & 0xff] ^ (register >>> 8);
  }
  const sum = ((register ^ 0xffffffff) >>> 0).toString(16).padStart(8, "0");
  return `crc-${sum}`;
}

/** A value as canonical JSON: no spaces, and names in the order of their UTF-16 code units. */
export function canonical(value) {
  if (Array.isArray(value)) {
    return `[${value.map(canonical).join(",")}]`;
  }
  if (typeof value === "object" && value !== null) {
    const names = Object.keys(value).sort();
    return `{${names.map((name) => `${JSON.stringify(name)}:${canonical(value[name])}`).join(",")}}`;
  }
  return JSON.stringify(value);
}

const REVERSED_POLYNOMIAL = 0xedb88320;

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit += 1) {
    value = value & 1 ? (value >>> 1) ^ REVERSED_POLYNOMIAL : value >>> 1;
  }
  return value;
});
