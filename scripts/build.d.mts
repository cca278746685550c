import type { BuildOptions } from 'esbuild';

/** Settings of a bundle that Node runs by itself. */
export const forNode: BuildOptions;

/** Settings of what the view's page loads. */
export const forView: BuildOptions;

/** Writes the page of the view, one script and one style, into `build/webview/`, and prints their sizes. */
export function buildView(): Promise<void>;
