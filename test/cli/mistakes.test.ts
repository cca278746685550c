/** Wrong inputs, each answered by what is wrong and what to do. All end with 2 and leave standard output empty. */
import { describe, expect, it } from 'vitest';
import { call, SOUND_FILE, type World } from './support.ts';

const files = { 'car.throttle.yaml': SOUND_FILE, 'shop/van.throttle.yaml': SOUND_FILE, shop: { kind: 'folder' } } as const;

async function refusal(argv: readonly string[], world: World = { files }): Promise<string> {
  const { code, out, error } = await call(argv, world);
  expect({ code, out }).toEqual({ code: 2, out: '' });
  return error;
}

describe('wrong arguments', () => {
  it.each([
    [[], 'A command is missing'],
    [['chekc', 'car.throttle.yaml'], 'There is no command `chekc`; did you mean `check`?'],
    [['explode'], 'There is no command `explode`\n'],
    [['car.throttle.yaml'], '`car.throttle.yaml` is a file, not a command; write `pedal-to-plate check car.throttle.yaml`'],
    [['check'], 'A file to check is missing'],
    [['check', '-', '-'], 'can be read once only'],
    [['check', 'car.throttle.yaml', '--count', '5'], '`--count` belongs to `table`'],
    [['table'], 'A file is missing'],
    [['table', 'a', 'b'], 'One file at a time: `a` and `b` are two'],
    [['table', 'a', '--stattions', '1'], 'There is no option `--stattions`; did you mean `--stations`?'],
    [['table', 'a', '-x'], 'There is no option `-x`\n'],
    [['table', 'a', '--count'], '`--count` needs a value'],
    [['table', 'a', '--count', '--format', 'csv'], '`--count` needs a value'],
    [['table', 'a', '--color=yes'], '`--color` takes no value'],
    [['table', 'a', '--count', '1'], 'a whole number from 2 to 100000, not `1`'],
    [['table', 'a', '--count', '2.5'], 'a whole number from 2 to 100000, not `2.5`'],
    [['table', 'a', '--count', '1e9'], 'a whole number from 2 to 100000, not `1e9`'],
    [['table', 'a', '--stations', '0,,100'], '`` is none'],
    [['table', 'a', '--stations', '0,half'], '`half` is none'],
    [['table', 'a', '--stations=-5,50'], '-5 lies outside'],
    [['table', 'a', '--stations', '0,100.1'], '100.1 lies outside'],
    [['table', 'a', '--stations', '0', '--count', '5'], 'exclude each other'],
    [['table', 'a', '--format', 'jsno'], 'There is no format `jsno`; did you mean `json`?'],
    [['table', 'a', '--format', 'excel'], 'write text, csv or json'],
    [['check', 'a', '--severity'], '`--severity` needs a value'],
    [['check', 'a', '--severity', 'off'], 'a code and a level, e.g. `transmission-angle=note`; `off` is none'],
    [['check', 'a', '--severity', ''], '`` is none'],
    [['check', 'a', '--severity', 'transmision-angle=off'], 'There is no finding `transmision-angle`; did you mean `transmission-angle`?'],
    [['check', 'a', '--severity', 'x=off'], 'There is no finding `x`; the codes stand in docs/codes'],
    [['check', 'a', '--severity', 'unknown-key=off'], 'There is no finding `unknown-key`'],
    [['check', 'a', '--severity', 'drive-angle=warnin'], 'There is no severity `warnin`; did you mean `warning`?'],
    [['check', 'a', '--severity', 'drive-angle=hint'], 'write error, warning, note or off'],
    [['check', 'a', '--severity', 'drive-angle=off', '--severity', 'drive-angle=note'], 'gives `drive-angle` two levels'],
    [['table', 'a', '--severity', 'drive-angle=off'], '`--severity` belongs to `check`'],
    [['table', 'a', '--columns', 'x,'], '`--columns` has an empty place'],
  ])('%j', async (argv, words) => {
    const error = await refusal(argv);
    expect(error).toContain(words);
    expect(error).toMatch(/^error: /);
    expect(error).toContain('\nUsage: pedal-to-plate ');
    expect(error).toContain('--help` says more');
  });

  it('shows the usage of the command that was meant', async () => {
    expect(await refusal(['table', 'a', '--count', '1'])).toContain('Usage: pedal-to-plate table FILE');
    expect(await refusal(['check', '--nope'])).toContain('Usage: pedal-to-plate check FILE…');
  });

  it('does not pass on escape codes from an argument', async () => {
    expect(await refusal(['\u001b[31mx'])).not.toContain('\u001b');
  });
});

describe.each(['check', 'table'])('%s of a file that cannot be used', (command) => {
  it('names the file that was probably meant', async () => {
    expect(await refusal([command, 'cra.throttle.yaml'])).toBe(
      'error: cra.throttle.yaml: there is no such file; did you mean `car.throttle.yaml`?\n',
    );
    expect(await refusal([command, 'shop/van'])).toContain('did you mean `shop/van.throttle.yaml`?');
    expect(await refusal([command, 'nothing/like/it'])).toBe('error: nothing/like/it: there is no such file\n');
  });

  it('says what is in a folder', async () => {
    expect(await refusal([command, 'shop'])).toBe('error: shop: is a folder, not a file; in it: shop/van.throttle.yaml\n');
  });

  it('passes on why a file cannot be read', async () => {
    expect(await refusal([command, 'f'], { files: { f: { kind: 'forbidden' } } })).toContain('check its permissions');
    expect(await refusal([command, 'f'], { files: { f: { kind: 'failed', reason: 'EIO: disk on fire' } } })).toContain('EIO: disk on fire');
  });

  it.each([
    ['zero bytes', new Uint8Array([0x66, 0, 1, 2]), 'is not text: it has zero bytes'],
    ['UTF-16', new Uint8Array([0xff, 0xfe, 0x66, 0]), 'is UTF-16 text; save it as UTF-8'],
    ['Latin-1', new Uint8Array([0x66, 0xe9, 0x66]), 'is not UTF-8 text'],
    ['more than is ever read', 'é'.repeat(600 * 1024), 'is larger than 1024 kB; 256 kB are read at most'],
  ])('refuses %s', async (_, held, words) => {
    expect(await refusal([command, 'f'], { files: { f: held } })).toContain(words);
  });
});

it.each(['', '[]', 'format: 7\n', `format: 1\n${'# x\n'.repeat(100_000)}`])('ends with 2 where a text means nothing: %#', async (text) => {
  expect((await call(['check', '-'], { input: text })).code).toBe(2);
  const { code, out, error } = await call(['table', '-'], { input: text });
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(error).toMatch(/^<stdin>:1:\d+: error\[/);
});

describe('a column that there is not', () => {
  const ask = (columns: string): Promise<string> => refusal(['table', 'car.throttle.yaml', '--columns', columns]);

  it('is answered by the nearest one', async () => {
    expect(await ask('shaft.opning')).toBe('error: There is no column `shaft.opning`; did you mean `shaft.opening`?\n');
  });

  it('is answered by those of the same part, where none is near', async () => {
    expect(await ask('link.cheese')).toContain('there are link.transmission, link.drive');
  });

  it('is answered by what there is, where it is like nothing', async () => {
    expect(await ask('pedal.travel,zzzzzzzz')).toContain('`zzzzzzzz`; there are pedal.travel, ');
  });
});
