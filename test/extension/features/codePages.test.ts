import { existsSync } from 'node:fs';
import { expect, test } from 'vitest';
import { OPEN_CODE_PAGE, openCodePages } from '../../../extension/features/codePages.ts';
import { PROBLEM_CODES } from '../../../src/definition/codes.ts';
import { FINDING_CODES } from '../../../src/findings/codes.ts';
import { serveEach } from '../../support/editorRequests.ts';
import { commands, told, Uri } from '../../support/vscode.ts';

serveEach(() => openCodePages(Uri.parse('vscode-userdata:/extension') as never));

test('a code opens its page of the extension, rendered', async () => {
  const opened: string[] = [];
  const preview = commands.registerCommand('markdown.showPreview', (page) => opened.push(String(page)));
  await commands.executeCommand(OPEN_CODE_PAGE, 'held-open');
  preview.dispose();
  expect([opened, told]).toEqual([['vscode-userdata:/extension/docs/codes/held-open.md'], []]);
});

test('where Markdown is switched off the page is opened as it is', async () => {
  await commands.executeCommand(OPEN_CODE_PAGE, 'unknown-key');
  expect(told).toEqual(['shown: vscode-userdata:/extension/docs/codes/unknown-key.md']);
});

test.each([undefined, 3, '../../package', 'no-such-code'])('nothing else is opened: %j', async (argument) => {
  await commands.executeCommand(OPEN_CODE_PAGE, argument);
  expect(told).toEqual([]);
});

test('every code has its page', () => {
  const missing = [...PROBLEM_CODES, ...FINDING_CODES].filter(
    (code) => !existsSync(new URL(`../../../docs/codes/${code}.md`, import.meta.url)),
  );
  expect(missing).toEqual([]);
});
