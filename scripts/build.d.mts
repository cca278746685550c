import type { BuildOptions } from 'esbuild';

/** Settings of what the view's page loads. */
export const forView: BuildOptions;
