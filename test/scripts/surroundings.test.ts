/** Where `npm start` shows the editor. */
import { describe, expect, test } from 'vitest';
import { browserCommand, canShowDesktop, hasDisplay, type Surroundings } from '../../scripts/start/surroundings.mjs';

const on = (platform: string, env: Surroundings['env'] = {}, isTerminal = true): Surroundings => ({ platform, env, isTerminal });
const URL_OF_EDITOR = 'http://127.0.0.1:1/?tkn=a&folder=b';

describe('a display', () => {
  test.each([
    ['Linux says so', on('linux', { DISPLAY: ':0' }), true],
    ['Linux says so in the other way', on('linux', { WAYLAND_DISPLAY: 'wayland-0' }, false), true],
    ['Linux says nothing', on('linux'), false],
    ['a Mac has a terminal', on('darwin'), true],
    ['a Mac has no terminal', on('darwin', {}, false), false],
    ['Windows has a terminal from elsewhere', on('win32', { SSH_CONNECTION: '192.0.2.1 1 192.0.2.2 22' }), false],
    ['a build machine has one', on('linux', { CI: 'true', DISPLAY: ':0' }), false],
  ])('%s', (_name, surroundings, expected) => {
    expect(hasDisplay(surroundings)).toBe(expected);
  });
});

test('desktop VS Code is for a display, and not for a terminal of a VS Code that is connected from elsewhere', () => {
  expect(canShowDesktop(on('linux', { DISPLAY: ':0' }))).toBe(true);
  expect(canShowDesktop(on('linux'))).toBe(false);
  expect(canShowDesktop(on('linux', { DISPLAY: ':0', VSCODE_IPC_HOOK_CLI: '/run/vscode.sock' }))).toBe(false);
});

test('the browser is opened by what the machine has for it, and by no shell that would read the address', () => {
  const commands = ['linux', 'darwin', 'win32'].map((platform) => browserCommand(on(platform, { DISPLAY: ':0' }), URL_OF_EDITOR));
  expect(commands).toEqual([
    ['xdg-open', URL_OF_EDITOR],
    ['open', URL_OF_EDITOR],
    ['rundll32', 'url.dll,FileProtocolHandler', URL_OF_EDITOR],
  ]);
  expect(browserCommand(on('linux'), URL_OF_EDITOR)).toBeUndefined();
});
