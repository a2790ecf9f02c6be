import { element } from "./element.js";

/** Tell of something in a corner of the page, with what can be done; the last one stands. */
export function notice(text, ...actions) {
  document.querySelector(".notice")?.remove();
  const close = element("button", { type: "button", class: "action" }, "Later");
  const made = element("div", { class: "notice", role: "status" }, element("p", {}, text), ...actions, close);
  close.addEventListener("click", () => made.remove());
  document.body.append(made);
}
