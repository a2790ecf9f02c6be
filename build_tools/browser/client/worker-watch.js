const TICK = 1000; // milliseconds
const LONG = 15; // ticks without a word after which the reader is told: a slow phone may need as long
const ENDED = 90; // ticks after which a worker that does not even say that it lives has ended

/**
 * Watch over a worker that somebody waits for; it may end without telling anyone.
 *
 * Ticks are counted, not time: a page that was frozen goes on where it was. `told` has `waits`,
 * which says whether anybody waits; `ask`, to ask the worker for a sign of life; `long` and
 * `ended`. Result: `begin`, called when something is asked, and `heard`, with each of its messages.
 */
export function watchOver(told) {
  let timer = 0;
  let silent = 0; // ticks since it said anything
  let still = 0; // ticks since it said anything of what is waited for
  const stop = () => {
    clearInterval(timer);
    timer = 0;
  };
  const tick = () => {
    silent += 1;
    still += 1;
    if (!told.waits()) {
      stop();
    } else if (silent >= ENDED) {
      stop();
      told.ended();
    } else if (still % LONG === 0) {
      told.ask();
      told.long();
    }
  };
  const heard = ({ alive }) => {
    silent = 0;
    still = alive ? still : 0;
  };
  const begin = () => {
    if (timer === 0) {
      heard({});
      timer = setInterval(tick, TICK);
    }
  };
  return { begin, heard };
}
