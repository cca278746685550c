/** What the machine offers for showing an editor. Decided on what is handed in alone, so that it can be tested. */

/** @param {import('./surroundings.d.mts').Surroundings} surroundings */
export function hasDisplay({ platform, env, isTerminal }) {
  if (env.CI) return false;
  if (platform === 'linux') return Boolean(env.DISPLAY || env.WAYLAND_DISPLAY);
  // Windows and macOS do not say; nobody who starts this from a script without a terminal waits for a window.
  return isTerminal && !env.SSH_CONNECTION;
}

/**
 * Whether a `code` on the path would open a window here. Inside a VS Code that is connected from elsewhere, `code` is another program,
 * which knows nothing of extensions under development.
 *
 * @param {import('./surroundings.d.mts').Surroundings} surroundings
 */
export function canShowDesktop(surroundings) {
  return hasDisplay(surroundings) && surroundings.env.VSCODE_IPC_HOOK_CLI === undefined;
}

/**
 * The program that opens an address in the person's browser, and its words.
 *
 * @param {import('./surroundings.d.mts').Surroundings} surroundings
 * @param {string} url
 * @returns {readonly string[] | undefined} undefined where there is nothing to show it on
 */
export function browserCommand(surroundings, url) {
  if (!hasDisplay(surroundings)) return undefined;
  switch (surroundings.platform) {
    case 'win32':
      return ['rundll32', 'url.dll,FileProtocolHandler', url];
    case 'darwin':
      return ['open', url];
    default:
      return ['xdg-open', url];
  }
}
