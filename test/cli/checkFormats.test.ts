/** `check --format`: the documents themselves are tested with the outputs; here, what of the command line goes into them. */
import { sep } from 'node:path';
import process from 'node:process';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { fileUri } from '../../cli/fileUri.ts';
import type { JsonDocument } from '../../src/outputs/json/document.ts';
import type { SarifLog, SarifRun } from '../../src/outputs/sarif/log.ts';
import { call, FAULTY_FILE, SOUND_FILE, type World } from './support.ts';

const files = { good: SOUND_FILE, broken: FAULTY_FILE, empty: '', latin: new Uint8Array([0x66, 0xe9]) };

const json = async (argv: readonly string[], world: World = { files }): Promise<JsonDocument> =>
  JSON.parse((await call(['check', '--format', 'json', ...argv], world)).out) as JsonDocument;

const sarif = async (argv: readonly string[], world: World = { files }): Promise<SarifRun> =>
  (JSON.parse((await call(['check', '--format', 'sarif', ...argv], world)).out) as SarifLog).runs[0]!;

describe.each(['text', 'markdown', 'json', 'sarif'])('as %s', (format) => {
  const code = async (...argv: string[]): Promise<number> => (await call(['check', ...argv, '--format', format], { files })).code;

  it('a check ends with the same codes as ever', async () => {
    expect(await code('good')).toBe(0);
    expect(await code('broken')).toBe(1);
    expect(await code('good', 'broken')).toBe(1);
    expect(await code('empty')).toBe(2);
    expect(await code('gone')).toBe(2);
    expect(await code('latin', 'good')).toBe(2);
  });

  it('says on standard error, and only there beside the document, why a file cannot be read', async () => {
    const { error } = await call(['check', 'gone', 'good', '--format', format], { files });
    expect(error).toBe('error: gone: there is no such file\n');
  });

  it('is not coloured on a terminal but as text', async () => {
    const { out } = await call(['check', 'broken', '--format', format], { files, terminal: true });
    expect(out.includes('\u001b')).toBe(format === 'text');
  });
});

it('is text where no format is asked for', async () => {
  expect(await call(['check', 'broken'], { files })).toEqual(await call(['check', 'broken', '--format', 'TEXT'], { files }));
});

it('names the format that was probably meant', async () => {
  const { code, out, error } = await call(['check', 'good', '--format', 'sarfi'], { files });
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(error).toContain('There is no format `sarfi`; did you mean `sarif`?');
  expect((await call(['check', 'good', '--format', 'csv'], { files })).error).toContain('write text, markdown, json or sarif');
});

it('takes a file whose name begins like an option after `--`', async () => {
  const { files: told } = await json(['--', '--dash.throttle.yaml'], { files: { '--dash.throttle.yaml': SOUND_FILE } });
  expect(told.map(({ file, verdict }) => [file, verdict.outcome])).toEqual([['--dash.throttle.yaml', 'sound']]);
});

describe('json', () => {
  it('is one document for all files, in their order, one that cannot be read among them', async () => {
    const document = await json(['good', 'gone', 'broken', 'latin', '-'], { files, input: SOUND_FILE });
    expect(document.files.map(({ file, verdict }) => [file, verdict.outcome, verdict.reason])).toEqual([
      ['good', 'sound', null],
      ['gone', 'unusable', 'there is no such file'],
      ['broken', 'wrong', null],
      ['latin', 'unusable', 'is not UTF-8 text; save it as UTF-8'],
      ['<stdin>', 'sound', null],
    ]);
  });
});

describe('sarif', () => {
  it('has the program’s version and the code with which it ends', async () => {
    const { tool, invocations } = await sarif(['good', 'broken']);
    expect(tool.driver.version).toBe('1.2.3');
    expect(invocations).toMatchObject([{ exitCode: 1, executionSuccessful: true }]);
  });

  it('names files by relative addresses, percent-encoded', async () => {
    const odd = 'shop/./a b#1?é%.throttle.yaml';
    const { artifacts } = await sarif([odd, 'good'], { files: { ...files, [odd]: SOUND_FILE } });
    expect(artifacts.map(({ location }) => location.uri)).toEqual(['shop/a%20b%231%3F%C3%A9%25.throttle.yaml', 'good']);
  });

  it('takes standard input and an empty file', async () => {
    const run = await sarif(['-', 'empty'], { files, input: FAULTY_FILE });
    expect(run.results.map(({ ruleId, locations }) => [ruleId, locations[0]?.physicalLocation.artifactLocation.index])).toContainEqual([
      'file-empty',
      1,
    ]);
    expect(run.artifacts[0]?.contents?.text).toBe(FAULTY_FILE);
  });
});

describe('the address of a file', () => {
  it('is relative within the folder where the program runs, whatever way there was written', () => {
    expect(fileUri('a/b.yaml')).toBe('a/b.yaml');
    expect(fileUri('./a/../a//b.yaml')).toBe('a/b.yaml');
    expect(fileUri(`${process.cwd()}${sep}a${sep}b.yaml`)).toBe('a/b.yaml');
    expect(fileUri('..a/b:c.yaml')).toBe('..a/b%3Ac.yaml');
  });

  it('is absolute outside of it', () => {
    expect(fileUri('../x y.yaml')).toBe(new URL('../x%20y.yaml', pathToFileURL(`${process.cwd()}/`)).href);
  });

  it('is one for half a character too', () => {
    expect(fileUri('a\ud800b')).toBe('a%EF%BF%BDb');
  });
});
