import { element } from "../basics/element.js";
import { handOver } from "../basics/download.js";

const TYPE = "text/calendar;charset=utf-8";

/** The dates of the next tests as a file that calendar programs read; nothing without dates. */
export function calendarPart(text) {
  if (!text) {
    return [];
  }
  const button = element("button", { type: "button", class: "action" }, "Save these dates for a calendar");
  button.addEventListener("click", () => handOver({ name: "next-tests.ics", type: TYPE, text }));
  return [element("p", {}, button)];
}
