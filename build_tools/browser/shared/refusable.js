/**
 * Something of the browser's, or null where it has none or refuses to hand it over.
 *
 * Where cookies or site data are blocked, and in frames, naming a store of the site is an error by
 * itself: no such name is used but through here or within a `try` of its own.
 */
export function reached(get) {
  try {
    return get() ?? null;
  } catch {
    return null;
  }
}
