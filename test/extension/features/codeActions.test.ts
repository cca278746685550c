import { afterEach, describe, expect, test, vi } from 'vitest';
import { Range, workspace } from 'vscode';
import type * as vscode from 'vscode';
import { provideCodeActions } from '../../../extension/features/codeActions.ts';
import { toDiagnostic } from '../../../extension/features/diagnostic.ts';
import { solve } from '../../../src/solve.ts';
import {
  applied,
  BINDING,
  cancelledToken,
  forTest,
  openThrottle,
  PATIENT,
  providerOf,
  serveEach,
  set,
} from '../../support/editorRequests.ts';
import { changeDocument, CodeActionKind, CodeActionTriggerKind, commands, providers, told } from '../../support/vscode.ts';

serveEach(provideCodeActions);

afterEach(() => {
  vi.restoreAllMocks();
});

const TYPO = 'format: 1\r\nlevers:\r\n  shaft: {pviot: [0, 0]}\r\n  other: {pviot: [0, 0]}\r\n';

/** As the editor asks with the cursor in some words; the diagnostics there are those that it shows. */
async function actionsAt(
  document: vscode.TextDocument,
  words: string,
  asked: { only?: CodeActionKind; invoked?: boolean; token?: vscode.CancellationToken } = {},
): Promise<vscode.CodeAction[] | undefined> {
  const start = document.getText().indexOf(words);
  const range = new Range(document.positionAt(start), document.positionAt(start + words.length));
  const { problems, findings } = solve(document.getText());
  const context = {
    diagnostics: [...problems, ...findings].map((mark) => toDiagnostic(document, mark)),
    only: asked.only,
    triggerKind: asked.invoked === true ? CodeActionTriggerKind.Invoke : CodeActionTriggerKind.Automatic,
  };
  const provider = providerOf('registerCodeActionsProvider');
  const given = await provider.provideCodeActions(document, range, context as never, asked.token ?? PATIENT);
  return given as vscode.CodeAction[] | undefined;
}

const resolved = async (action: vscode.CodeAction, token = PATIENT): Promise<vscode.CodeAction> =>
  (await providerOf('registerCodeActionsProvider').resolveCodeAction?.(action, token)) ?? action;

describe('a fix of the text', () => {
  test('comes with its edit and its problem, and is preferred where there is one right answer', async () => {
    const document = openThrottle(TYPO);
    const [fix] = (await actionsAt(document, 'pviot')) ?? [];
    expect(fix?.title).toContain('pivot');
    expect([fix?.isPreferred, fix?.kind?.value]).toEqual([true, 'quickfix']);
    expect(fix?.diagnostics?.map(({ range }) => range.start.line)).toEqual([2]);
    expect(applied(document, fix?.edit)).toBe(TYPO.replace('pviot', 'pivot'));
  });

  test('of a file that cannot be written says so in the menu, and edits nothing', async () => {
    const document = openThrottle(TYPO, 'readonly:/folder/a.throttle.yaml');
    const actions = (await actionsAt(document, 'pviot', { invoked: true })) ?? [];
    expect(actions.map(({ title }) => title)).toContain('Write `pivot`');
    for (const { edit, disabled } of actions) expect([edit, disabled?.reason]).toEqual([undefined, 'a.throttle.yaml is read-only.']);
  });

  test('is followed by the one for all of its kind, with all their problems', async () => {
    const document = openThrottle(TYPO);
    const [, all] = (await actionsAt(document, 'pviot')) ?? [];
    expect(all?.diagnostics).toHaveLength(2);
    expect(applied(document, all?.edit)).toBe(TYPO.replaceAll('pviot', 'pivot'));
  });

  test('is one of those that mend a whole file on saving', async () => {
    const document = openThrottle(`${TYPO}nonsense: 2\r\n`);
    const given = (await actionsAt(document, 'format', { only: CodeActionKind.SourceFixAll })) ?? [];
    expect(given.map(({ kind }) => kind?.value)).toEqual(['source.fixAll.pedalToPlate']);
    expect(applied(document, given[0]?.edit)).toBe(`${TYPO.replaceAll('pviot', 'pivot')}nonsense: 2\r\n`);
    const metadata = providers.get('registerCodeActionsProvider')?.rest[0] as vscode.CodeActionProviderMetadata;
    expect(metadata.providedCodeActionKinds?.map(({ value }) => value)).toEqual(['quickfix', 'source.fixAll.pedalToPlate']);
  });

  test('is not offered where nothing is wrong, nor where another kind of action is asked for', async () => {
    const document = openThrottle(TYPO);
    expect(await actionsAt(document, 'format')).toEqual([]);
    expect(await actionsAt(document, 'pviot', { only: CodeActionKind.Source.append('organizeImports') })).toEqual([]);
    const clean = openThrottle('format: 1\n');
    expect(await actionsAt(clean, 'format', { only: CodeActionKind.SourceFixAll })).toEqual([]);
  });
});

describe('a fix that solves for a figure', () => {
  test('is only offered by the lamp: no edit yet, its finding attached', async () => {
    const document = openThrottle(BINDING);
    const given = (await actionsAt(document, 'link:')) ?? [];
    expect(given.map(({ title, edit }) => [title, edit])).toContainEqual([
      'Solve for the angle of shaft.arm so that link keeps its transmission angle',
      undefined,
    ]);
    expect(given.every(({ diagnostics }) => diagnostics?.length === 1)).toBe(true);
  });

  test('is not offered for a finding that is switched off', async () => {
    set('pedalToPlate.severity', { 'transmission-angle': 'off', 'toggle-opening': 'off' });
    const given = (await actionsAt(openThrottle(BINDING), 'link:')) ?? [];
    expect(given.filter(({ title }) => title.includes('transmission'))).toEqual([]);
  });

  test('is solved when it is chosen, and says what came of it', async () => {
    const document = openThrottle(BINDING);
    const [offered] = (await actionsAt(document, 'link:')) ?? [];
    const fix = await resolved(offered!);
    const text = applied(document, fix.edit);
    expect(solve(text).findings.filter(({ code }) => code === 'transmission-angle')).toEqual([]);
    expect(fix.title).toMatch(/^Clock shaft\.arm to .*: transmission angle of link/);
    await commands.executeCommand(fix.command!.command, ...(fix.command!.arguments as unknown[]));
    expect(told).toContain(`status: ${fix.title}`);
  });

  test('has its result in its title where the menu was opened, and what cannot be done its reason', async () => {
    // Time stands still, so that all of them are solved on a slow machine too.
    vi.spyOn(Date, 'now').mockReturnValue(0);
    const document = openThrottle(BINDING);
    const given = (await actionsAt(document, '82 deg}', { invoked: true })) ?? [];
    const [done, not] = [given.filter(({ edit }) => edit !== undefined), given.filter(({ edit }) => edit === undefined)];
    expect(done.map(({ title }) => title)).toEqual([expect.stringMatching(/^Set `reach` to .*: shaft opens 82°$/)]);
    expect(solve(applied(document, done[0]?.edit)).findings.map(({ code }) => code)).not.toContain('opening-missed');
    expect(not.length).toBeGreaterThan(0);
    for (const { disabled } of not) expect(disabled?.reason).toContain('comes nearest');
  });

  test('has its result in its title by the lamp too, once it is worked out, and says before what will be solved for', async () => {
    const document = openThrottle(BINDING);
    const titles = async (): Promise<readonly string[]> => ((await actionsAt(document, '82 deg}')) ?? []).map(({ title }) => title);
    const offered = await titles();
    expect(offered.every((title) => title.startsWith('Solve for '))).toBe(true);
    const clock = vi.spyOn(Date, 'now').mockReturnValue(0);
    await actionsAt(document, '82 deg}', { invoked: true });
    clock.mockRestore();
    const known = await titles();
    expect(known).toHaveLength(offered.length);
    expect(known).toContainEqual(expect.stringMatching(/^Set `reach` to .*: shaft opens 82°$/));
  });

  test('is only offered where the menu would have to wait for it', async () => {
    let now = 0;
    vi.spyOn(Date, 'now').mockImplementation(() => (now += 10_000));
    const document = openThrottle(BINDING);
    const given = (await actionsAt(document, '82 deg}', { invoked: true })) ?? [];
    expect(given.length).toBeGreaterThan(1);
    expect(given.every(({ edit, disabled }) => edit === undefined && disabled === undefined)).toBe(true);
    vi.restoreAllMocks();
    expect((await resolved(given[0]!)).edit).toBeDefined();
  });

  test('says in words why there is none', async () => {
    const document = openThrottle(BINDING);
    const offered = (await actionsAt(document, '82 deg}'))?.find(({ title }) => title.startsWith('Solve for the length of link'));
    const fix = await resolved(offered!);
    expect(fix.edit).toBeUndefined();
    await commands.executeCommand(fix.command!.command, ...(fix.command!.arguments as unknown[]));
    expect(told).toContainEqual(expect.stringMatching(/^message: No value of the length of link .* does it/));
  });

  test('is not worked out for a request that is cancelled', async () => {
    const document = openThrottle(BINDING);
    expect(await actionsAt(document, 'link:', { token: cancelledToken() })).toBeUndefined();
    const [offered] = (await actionsAt(document, 'link:')) ?? [];
    const fix = await resolved(offered!, cancelledToken());
    expect([fix.edit, fix.command]).toEqual([undefined, undefined]);
  });

  test('is not written into a text that has changed meanwhile', async () => {
    const document = openThrottle(BINDING);
    const [offered] = (await actionsAt(document, 'link:')) ?? [];
    const request = resolved(offered!);
    await Promise.resolve();
    changeDocument(forTest(document), `# one more line\n${BINDING}`);
    const fix = await request;
    expect([fix.edit, fix.command]).toEqual([undefined, undefined]);
  });

  test('has no edit in a menu whose text has changed while it was made', async () => {
    const document = openThrottle(BINDING);
    vi.spyOn(Date, 'now').mockReturnValue(0);
    // Worked out, so that nothing is left to do but to show it.
    const before = await actionsAt(document, '82 deg}', { invoked: true });
    expect(before?.some(({ edit }) => edit !== undefined)).toBe(true);
    // The menu looks at the settings once it has the answers.
    const settings = workspace.getConfiguration.bind(workspace);
    vi.spyOn(workspace, 'getConfiguration').mockImplementationOnce((...asked) => {
      changeDocument(forTest(document), `# one more line\n${BINDING}`);
      return settings(...asked);
    });
    const actions = await actionsAt(document, '82 deg}', { invoked: true });
    expect(document.version).toBe(2);
    expect(actions?.map(({ edit }) => edit)).toEqual(before?.map(() => undefined));
  });

  test('is worked out for the text as it is when it is chosen', async () => {
    const document = openThrottle(BINDING);
    const [offered] = (await actionsAt(document, 'link:')) ?? [];
    changeDocument(forTest(document), `# one more line\n${BINDING}`);
    const text = applied(document, (await resolved(offered!)).edit);
    expect(text).toMatch(/^# one more line\n/);
    expect(solve(text).findings.filter(({ code }) => code === 'transmission-angle')).toEqual([]);
  });
});

test('what the result command is given from elsewhere does nothing', async () => {
  told.length = 0;
  await commands.executeCommand('pedalToPlate.tellFixResult', 'hello');
  await commands.executeCommand('pedalToPlate.tellFixResult', { told: 3 });
  await commands.executeCommand('pedalToPlate.tellFixResult');
  expect(told).toEqual([]);
});
