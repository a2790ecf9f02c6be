// The few fields of the zip format's central directory that are read (APPNOTE 6.3.10, 4.3.12).
const END = 22; // bytes of the record that closes an archive, without its comment
const END_MARK = 0x06054b50;
const STORED = 0;

/**
 * Give each file of a zip archive that the build made: contents by name.
 *
 * The build stores files as they are, so nothing has to be inflated, and Python's own way
 * takes several times as long. Throws on an archive of another kind.
 */
export function filesIn(bytes) {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = endOf(view);
  const files = new Map();
  let at = view.getUint32(end + 16, true);
  for (let left = view.getUint16(end + 10, true); left > 0; left -= 1) {
    const entry = entryAt(view, at);
    files.set(nameAt(bytes, at + 46, entry.nameLength), contents(bytes, view, entry));
    at += 46 + entry.nameLength + entry.furtherLength;
  }
  return files;
}

function endOf(view) {
  for (let at = view.byteLength - END; at >= 0; at -= 1) {
    if (view.getUint32(at, true) === END_MARK) {
      return at;
    }
  }
  throw new Error("an archive has no end");
}

function entryAt(view, at) {
  if (view.getUint16(at + 10, true) !== STORED) {
    throw new Error("an archive holds a file that is not stored as it is");
  }
  return {
    size: view.getUint32(at + 24, true),
    nameLength: view.getUint16(at + 28, true),
    furtherLength: view.getUint16(at + 30, true) + view.getUint16(at + 32, true),
    header: view.getUint32(at + 42, true),
  };
}

function nameAt(bytes, at, length) {
  return new TextDecoder().decode(bytes.subarray(at, at + length));
}

function contents(bytes, view, { header, size }) {
  const start = header + 30 + view.getUint16(header + 26, true) + view.getUint16(header + 28, true);
  return bytes.subarray(start, start + size);
}
