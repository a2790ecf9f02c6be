import { reached } from "./refusable.js";

/**
 * The short way for a worker's replies.
 *
 * After a key, Chromium holds a worker's own messages back until it has drawn a frame, while those
 * of a channel come at once. A channel reaches only who listens already, so the worker takes it
 * when it has heard the page there; until then, and in a browser without channels, it goes the
 * usual way.
 */

/** In the worker: `name`, to be told to the page, or null; and `send` for a reply. */
export function openReplies() {
  const replies = { name: null, send: (reply) => postMessage(reply) };
  const channel = channelNamed(`replies ${performance.timeOrigin} ${Math.random()}`);
  if (channel) {
    replies.name = channel.name;
    channel.onmessage = () => { replies.send = (reply) => channel.postMessage(reply); };
  }
  return replies;
}

/** In the page: hear what comes by a worker's channel, if it has one; call what is returned to stop. */
export function hearReplies(name, hear) {
  const channel = name && channelNamed(name);
  if (!channel) {
    return () => {};
  }
  channel.onmessage = ({ data }) => hear(data);
  channel.postMessage("heard");
  return () => channel.close();
}

// Firefox refuses one where cookies are blocked, and in a foreign frame where foreign ones are.
function channelNamed(name) {
  return reached(() => new BroadcastChannel(name));
}
