/** The site's own root, whatever path it is served under; scripts are served two below it. */
export const ROOT = new URL("../../", import.meta.url);

/** The folder of the Python runtime. */
export const RUNTIME_FOLDER = new URL("runtime/", ROOT);

/** The folder of these scripts: a build of its own has one of its own. */
export const SCRIPTS = new URL(".", import.meta.url).pathname;
