/** Let the reader keep a verdict in the job log; what that needs is fetched when it is opened. */
export function offerKeeping(checker, options) {
  const panel = checker.root.querySelector("[data-keep]");
  if (!panel) {
    return;
  }
  panel.querySelector("form").addEventListener("submit", (event) => event.preventDefault(), options);
  panel.addEventListener("toggle", async () => {
    if (panel.open) {
      const { openPanel } = await import("./log-keep.js");
      await openPanel(panel, checker, options);
    }
  }, options);
}
