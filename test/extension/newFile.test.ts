/** New throttle files, and what they start from. */
import { readdirSync, readFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { NEW_FILE_COMMAND, offerNewFile, STARTING_FILES } from '../../extension/newFile.ts';
import { solve } from '../../src/solve.ts';
import { choice, closeDocument, commands, diskAccess, offered, registeredCommands, told, workspace } from '../support/vscode.ts';

const folder = new URL('../../examples/', import.meta.url);

let command: { dispose(): unknown };

beforeEach(() => {
  command = offerNewFile();
});

afterEach(() => {
  command.dispose();
  [...workspace.textDocuments].forEach(closeDocument);
  choice.label = undefined;
  offered.length = told.length = 0;
  expect(registeredCommands.size).toBe(0);
});

describe('the command', () => {
  test('offers an empty start and every sound example that stands alone', async () => {
    await commands.executeCommand(NEW_FILE_COMMAND);
    const sound = readdirSync(folder).filter(
      (name) => name.endsWith('.throttle.yaml') && !name.includes('-broken') && name !== 'as-built.throttle.yaml',
    );
    expect(offered).toHaveLength(sound.length + 1);
    expect(offered.map(({ label }) => label)).toEqual(expect.arrayContaining(['Empty start', 'Four barrels, one shaft']));
  });

  test('opens what is chosen as a throttle file that is not saved, and touches no disk', async () => {
    choice.label = 'Four barrels, one shaft';
    await commands.executeCommand(NEW_FILE_COMMAND);
    const [document, second] = workspace.textDocuments;
    expect(second).toBeUndefined();
    expect(document).toMatchObject({ isUntitled: true, languageId: 'throttle-linkage' });
    expect(document?.getText()).toBe(readFileSync(new URL('four-barrel.throttle.yaml', folder), 'utf8'));
    expect([told, diskAccess]).toEqual([[`shown: ${document?.uri.toString()}`], []]);
  });

  test('does nothing where nothing is chosen', async () => {
    await commands.executeCommand(NEW_FILE_COMMAND);
    expect([workspace.textDocuments, told]).toEqual([[], []]);
  });

  test('does not ask where it is told the name, and asks where it does not know the name', async () => {
    await commands.executeCommand(NEW_FILE_COMMAND, 'empty');
    expect([workspace.textDocuments.length, offered.length]).toEqual([1, 0]);
    await commands.executeCommand(NEW_FILE_COMMAND, { name: 'empty' });
    expect([workspace.textDocuments.length, offered.length]).toEqual([1, STARTING_FILES.length]);
  });
});

describe('a starting file', () => {
  test.each(STARTING_FILES.map((file) => [file.name, file] as const))(
    '%s solves without errors and warnings, and passes',
    (_name, file) => {
      const { problems, findings, requirements, study } = solve(file.text);
      expect(study).toBeDefined();
      expect([...problems, ...findings].filter(({ severity }) => severity !== 'note')).toEqual([]);
      expect(requirements.map(({ outcome }) => outcome)).toEqual(requirements.map(() => 'passed'));
      expect(requirements.length).toBeGreaterThan(0);
    },
  );

  test.each(STARTING_FILES.map((file) => [file.name, file] as const))(
    '%s has a title and a sentence of its own',
    (_name, { title, about }) => {
      expect(title).not.toBe('');
      expect(about).toMatch(/^[A-Z].*\.$/);
    },
  );

  test('that is empty needs every block that it has, but for what demands and secures', () => {
    const empty = STARTING_FILES.find(({ name }) => name === 'empty')!.text;
    const opens = (text: string): boolean => {
      const { requirements, problems } = solve(text);
      return problems.length === 0 && requirements.every(({ outcome }) => outcome === 'passed') && requirements.length > 0;
    };
    expect(opens(empty)).toBe(true);
    for (const block of ['levers', 'pedal', 'cables']) {
      expect(opens(empty.replace(new RegExp(`^${block}:.*\\n(?: .*\\n)*`, 'm'), ''))).toBe(false);
    }
  });
});
