import type { BuildOptions } from 'esbuild';

/** Settings of a bundle that Node runs by itself. */
export const forNode: BuildOptions;

/** Settings of what the view's page loads. */
export const forView: BuildOptions;

/** Bundles the extension for each kind of host into a folder of the clone, a separator at its end, and prints the sizes. */
export function buildExtension(options?: { readonly folder?: string; readonly sourcemap?: boolean }): Promise<void>;

/** Writes the page of the view, one script and one style, into `build/webview/`, and prints their sizes. */
export function buildView(): Promise<void>;
