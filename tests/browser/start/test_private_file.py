"""What is kept in the private file system is there whole, or not at all, in any engine."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page

from tests.browser.host import source_of
from tests.browser.phone import Phone

# A folder as the File System standard describes it, and as it stood in WebKit before the standard
# took a name alone: there `move` is `move(FileSystemDirectoryHandle parent, USVString name)`.
FOLDER = """
(breaks) => {
  const kept = new Map();
  const folder = {
    async getFileHandle(name, { create = false } = {}) {
      kept.has(name) || (create && kept.set(name, []));
      if (!kept.has(name)) {
        throw new DOMException("there is none", "NotFoundError");
      }
      return {
        async createSyncAccessHandle() {
          if (breaks === "open") {
            throw new DOMException("Backend does not support this operation", "UnknownError");
          }
          return {
            truncate: () => kept.set(name, []),
            getSize: () => kept.get(name).length,
            write: (piece) => {
              if (breaks === "write") {
                throw new DOMException("no room", "QuotaExceededError");
              }
              kept.set(name, [...kept.get(name), ...piece]);
            },
            close: () => {},
          };
        },
        async move(parent, as) {
          if (parent !== folder || typeof as !== "string") {
            throw new TypeError("move takes a folder and a name");
          }
          kept.set(as, kept.get(name));
          kept.delete(name);
        },
      };
    },
    async removeEntry(name) {
      if (!kept.delete(name)) {
        throw new DOMException("there is none", "NotFoundError");
      }
    },
  };
  navigator.storage.getDirectory = async () => folder;
  return kept;
}
"""
SCRIPT = "worker/private-file.js"
KEEP = f"""
async ([script, breaks]) => {{
  const kept = ({FOLDER})(breaks);
  const {{ PrivateFile }} = await import(script);
  const keeping = new PrivateFile("thing").keep(new Uint8Array([1, 2]), new Uint8Array([3]));
  const refused = await keeping.then(() => "", (error) => error.message);
  return {{ refused, kept: [...kept.values()], names: [...kept.keys()] }};
}}
"""


def test_a_file_is_kept_where_moving_takes_a_folder_and_a_name(phone: Phone, page: Page) -> None:
    """Its pieces stand one behind the other, under its own name alone."""
    phone.open("safety/")

    found = page.evaluate(KEEP, [source_of(SCRIPT), ""])

    assert found["refused"] == ""
    assert found["kept"] == [[1, 2, 3]]
    assert [name for name in found["names"] if name.startswith("thing")] == found["names"]


@pytest.mark.parametrize(
    ("breaks", "refused"),
    [("open", "Backend does not support this operation"), ("write", "no room")],
)
def test_an_unfinished_file_does_not_stay(
    phone: Phone, page: Page, breaks: str, refused: str
) -> None:
    """Whoever wants to keep it is told, and nothing lies about."""
    phone.open("safety/")

    assert page.evaluate(KEEP, [source_of(SCRIPT), breaks]) == {
        "refused": refused,
        "kept": [],
        "names": [],
    }
