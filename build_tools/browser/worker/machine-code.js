import { PrivateFile } from "./private-file.js";
import { bytesOfMachineCode, isOfThisBuild } from "./runtime-files.js";

const FILE = new PrivateFile("machine code");

/**
 * Compile Python's machine code from the bytes that this browser keeps beside an image.
 *
 * Rejects where they are not there or not of this build. From the offline copy they take as long
 * as all else in a start from an image.
 */
export async function compileKept() {
  const bytes = await FILE.bytes();
  const [module, isRight] = await Promise.all([WebAssembly.compile(bytes), isOfThisBuild(bytes)]);
  if (!isRight) {
    throw new Error("the machine code that is kept is of another build");
  }
  return module;
}

/** Keep the machine code for starts to come. */
export async function keepMachineCode() {
  try {
    await FILE.keep(await bytesOfMachineCode());
  } catch {
    // No network any more, or no room: the next start fetches it.
  }
}
