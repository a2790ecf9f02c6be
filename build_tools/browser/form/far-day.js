import { dayOf } from "../basics/days.js";
import { say } from "../basics/element.js";

const DAY = /^\d{4}-\d\d-\d\d$/;

/**
 * Say above the bar where the day that is judged for lies far from the day of this copy.
 *
 * Inputs: the checker's part of the page; the day given, as text: nothing is today by this clock.
 */
export function showFarDay(root, given) {
  const place = root.querySelector("[data-far-day]");
  const remark = remarkOn(place.dataset, typeof given === "string" && DAY.test(given) ? given : "", today());
  place.hidden = !remark;
  say(place, remark);
}

function remarkOn({ built, years, days }, given, clock) {
  const copy = `this copy of the site was built, on ${dayOf(built)}`;
  const byClock = !given || given === clock;
  if (byClock && clock < moved(built, { days: -days })) {
    return `This device’s clock says ${dayOf(clock)}, before ${copy}. Set the clock, or give the day.`;
  }
  if ((given || clock) <= moved(built, { years: Number(years) })) {
    return "";
  }
  const day = byClock ? `This device’s clock says ${dayOf(clock)}` : `The day given is ${dayOf(given)}`;
  return `${day}, more than ${years} years after ${copy}. Codes and limits may have changed since: check the ${byClock ? "clock" : "day"}, and open this site with a network to get its newest build.`;
}

// The day where the person stands, as Python takes it.
function today() {
  const now = new Date();
  return new Date(Date.UTC(now.getFullYear(), now.getMonth(), now.getDate())).toISOString().slice(0, 10);
}

function moved(day, { years = 0, days = 0 }) {
  const date = new Date(day);
  date.setUTCFullYear(date.getUTCFullYear() + years);
  date.setUTCDate(date.getUTCDate() + days);
  return date.toISOString().slice(0, 10);
}
