/**
 * A stand-in for the part of `vscode` that the extension uses, for tests outside the editor: plain data classes, a workspace whose
 * documents the test opens, changes and closes itself, and what the extension registers, for the test to ask.
 */
export * from './vscode/data.ts';
export * from './vscode/documents.ts';
export * from './vscode/events.ts';
export * from './vscode/extensions.ts';
export * from './vscode/files.ts';
export * from './vscode/logs.ts';
export * from './vscode/places.ts';
export * from './vscode/registry.ts';
export * from './vscode/statusBar.ts';
export * from './vscode/testing.ts';
export * from './vscode/webviews.ts';

export const version = '0.0.0';

export const env = { language: 'en' };

/** Texts as they are in the source, with what belongs in their gaps; `bundle`: what a test says that the editor has in another language. */
export const l10n = {
  bundle: undefined as Readonly<Record<string, unknown>> | undefined,
  t: (text: string, ...values: readonly (string | number)[]): string =>
    text.replace(/\{(\d+)\}/g, (gap, index: string) => String(values[Number(index)] ?? gap)),
};
