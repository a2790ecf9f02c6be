/** Raised where a file is not whole: nothing of it is taken in. */
export class Damaged extends Error {
  constructor(line, problem) {
    super(`Line ${line}: ${problem}`);
    this.line = line;
  }
}

/** Counts lines: gives a function from places in the text, never going back, to lines from 1. */
export function lineCounter(text) {
  let line = 1;
  let next = text.indexOf("\n");
  return (place) => {
    while (next >= 0 && next < place) {
      line += 1;
      next = text.indexOf("\n", next + 1);
    }
    return line;
  };
}
