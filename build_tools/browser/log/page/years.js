import { toFragment } from "../../basics/address.js";
import { element } from "../../basics/element.js";
import { counted } from "../entry/words.js";
import { ROOT } from "../../shared/site-urls.js";
import { TITLES } from "../../generated/words.js";

const FROM = "readings";
const TO = "over-the-years";
const MOST = 200; // readings, the newest ones: the checker takes no more

/** Links that follow devices over the years: for each with readings of more than one day. */
export function yearsParts(entries) {
  const series = TITLES[TO] ? devices(entries).filter(({ days }) => days.length > 1) : [];
  if (series.length === 0) {
    return [];
  }
  return [
    element("h2", {}, TITLES[TO]),
    element("p", {}, "Readings under one label, of one type and rating. After a replacement, use another label."),
    element("ul", {}, ...series.map((one) => element("li", {}, link(one)))),
  ];
}

function link({ job, device, days, request }) {
  const address = new URL(`checkers/${TO}/`, ROOT);
  address.hash = toFragment(request);
  const name = [job, device].filter(Boolean).join(", ");
  return element("a", { class: "log__link", href: address.href },
    `${name}: ${counted(days.length, "day")} from ${days[0].slice(0, 4)} to ${days.at(-1).slice(0, 4)}`);
}

function devices(entries) {
  const groups = new Map();
  for (const entry of entries.filter(({ checker, device }) => checker === FROM && device)) {
    const key = JSON.stringify([entry.job, entry.device]);
    groups.set(key, [...(groups.get(key) ?? []), entry]);
  }
  return [...groups.values()].map(seriesOf);
}

// Earlier readings of another type or rating were another device's.
function seriesOf(group) {
  const sorted = [...group].sort((one, other) => one.reply.on.localeCompare(other.reply.on));
  const newest = sorted.at(-1);
  const same = sorted.filter(({ request }) => kindOf(request) === kindOf(newest.request));
  const { code, device, instrument } = newest.request;
  return {
    job: newest.job,
    device: newest.device,
    days: [...new Set(same.map(({ reply }) => reply.on))],
    request: {
      ...(code && { code }),
      ...(device && { device }),
      ...(instrument && { instrument }),
      label: newest.device.slice(0, 80),
      history: readingsOf(same).slice(-MOST),
    },
  };
}

function kindOf({ device = {} }) {
  const { type = "", rated_residual_current: rated = "" } = device;
  return `${type} ${rated}`.toLowerCase().replaceAll(/\s/g, "");
}

// A verdict that was judged again stands in the log twice, with the same reading of the same day.
function readingsOf(entries) {
  const all = entries.flatMap(({ request, reply }) =>
    (request.readings ?? []).map((reading) => JSON.stringify({ on: reply.on, ...reading })));
  return [...new Set(all)].map((text) => JSON.parse(text));
}
