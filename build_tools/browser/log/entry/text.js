import { assumedWords } from "../../basics/assumptions.js";
import { dayInWords, findingLine, titleOf } from "./words.js";
import { verdictOf } from "../../basics/outcomes.js";

/** An entry as plain text, for a clipboard. */
export function entryText({ job, device, note, checker, build, request, reply }) {
  return [
    [job, device].filter(Boolean).join(", ") || "A device without a label",
    `${verdictOf(reply).words}: ${titleOf({ checker })}, for ${dayInWords(reply.on)}, ${reply.edition || reply.code}`,
    ...reply.findings.map((finding) => `- ${findingLine(finding)}`),
    ...(reply.cautions ?? []).map((caution) => `Caution: ${caution}`),
    reply.local_note ?? "",
    reply.assumed?.length ? assumedWords(reply.assumed) : "",
    note && `Note: ${note}`,
    `Build ${build}`,
    `As typed: ${JSON.stringify(request)}`,
  ].filter(Boolean).join("\n");
}
