/** A text that begins with a capital. */
export function begun(text) {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
