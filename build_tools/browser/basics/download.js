import { element } from "./element.js";

/** Hand a file to the reader; it comes from this page and goes nowhere else. */
export function handOver({ name, type, text }) {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = element("a", { href: url, download: name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
