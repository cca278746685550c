/** Names, words and units in `tune` and `measured`, as the editor knows them. */
import { describe, expect, it } from 'vitest';
import { indexNames } from '../../src/language/names.ts';
import { outline } from '../../src/language/symbols.ts';
import { semanticTokens } from '../../src/language/tokens.ts';
import { checkCompletion, itemsAt, take } from './support/checkCompletion.ts';
import { checkHover } from './support/checkHover.ts';
import { checkRefused, checkRename } from './support/checkNames.ts';

const file = ({ reach = 'reach', link = 'link', arm = 'arm', tps = 'tps', opens = 'opens' } = {}): string => `format: 1
let:
  ${reach}: 30 mm ± 0.1 mm
levers:
  pedal: {pivot: [0, 0], arms: {clevis: {radius: 70, angle: 100}}}
  shaft: {pivot: [320, 80], arms: {${arm}: {radius: ${reach}, angle: 200}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 15}
rods:
  ${link}: {from: pedal.clevis, to: shaft.${arm}}
sensors:
  ${tps}: {lever: shaft, at_closed: 14 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V]}
require:
  ${opens}: at(100%, shaft.opening) >= 20 deg
tune:
  free:
    ${reach}: {from: 20 mm, to: 40 mm}
  curve: {of: shaft.opening, slopes: {tip_in: 0.4, end: 1.4}}
  keep: [drive, ${opens}]
measured:
  fit: [${reach}, ${link}.length, shaft.${arm}.angle, ${tps}.at_closed]
  runs:
    bench:
      columns: [pedal.travel, ${tps}.signal, shaft.opening]
      rows: [[0 %, 1 V, 0 deg], [50 %, 2 V, ~], [100 %, 3 V, 30 deg]]
      noise: {${tps}.signal: 10 mV}
`;
/** The file with the cursor in a place, which is marked by `$0` in the words given. */
const at = (words: string): string => file().replace(words.replace('$0', ''), words);

describe('rename', () => {
  it('reaches names in both blocks, from any place of them', () => {
    checkRename(at('    rea$0ch: {from'), 'throw', file({ reach: 'throw' }));
    checkRename(at('li$0nk.length'), 'rod', file({ link: 'rod' }));
    checkRename(at('shaft.ar$0m.angle'), 'out', file({ arm: 'out' }));
    checkRename(at('noise: {tp$0s.signal'), 'sensor_a', file({ tps: 'sensor_a' }));
    checkRename(at('travel, tp$0s.signal'), 'sensor_a', file({ tps: 'sensor_a' }));
  });

  it('gives a requirement the quotes that it needs in `keep`, too', () => {
    checkRename(at('[drive, op$0ens]'), 'wide open', file({ opens: 'wide open' }));
    checkRename(at('[drive, op$0ens]'), 'at 100 %, open', file({ opens: '"at 100 %, open"' }));
    checkRename(file({ opens: '"opens"' }).replace('drive, "op', 'drive, "op$0'), 'wide', file({ opens: '"wide"' }));
  });

  it('is refused where a requirement would be taken for a word of `keep`', () => {
    checkRefused(at('[drive, op$0ens]'), 'clearance', 'no longer');
  });
});

describe('completion', () => {
  it('knows the names of `let`, each once', () => {
    checkCompletion(file().replace('    reach: {from: 20 mm, to: 40 mm}\n', '    $0\n'), ['reach'], 'let');
    const taken = take(file().replace('    reach: {from: 20 mm, to: 40 mm}\n', '    $0\n'), 'reach');
    expect(taken).toContain('    reach: {from: ');
  });

  it('knows the columns that can be shaped, those that say where the pedal is, and the rest', () => {
    const labels = (marked: string): readonly string[] => itemsAt(marked).map(({ label }) => label);
    const curve = labels(file().replace('of: shaft.opening', 'of: $0'));
    expect(curve).toContain('shaft.opening');
    expect(curve).toContain('pedal.effort');
    expect(curve).not.toContain('pedal.travel');
    expect(curve).not.toContain('link.drive');
    expect(labels(file().replace('columns: [pedal.travel,', 'columns: [$0,'))).toEqual(['pedal.travel']);
    const second = labels(file().replace('travel, tps.signal, shaft', 'travel, $0, shaft'));
    expect(second).toContain('tps.signal');
    expect(second).not.toContain('shaft.opening');
  });

  it('knows what can be kept and what can be found', () => {
    const kept = itemsAt(file().replace('[drive, opens]', '[drive, $0]')).map(({ label }) => label);
    expect(kept).toEqual(expect.arrayContaining(['transmission', 'full_opening', 'opens']));
    expect(kept).not.toContain('drive');
    expect(take(file().replace('fit: [reach,', 'fit: [$0,'), 'pedal.clevis.radius')).toContain('fit: [pedal.clevis.radius$0,');
  });

  it('offers the units of the column that a reading is of', () => {
    const units = (marked: string): readonly string[] => itemsAt(marked).flatMap(({ label, kind }) => (kind === 'unit' ? [label] : []));
    expect(units(file().replace('[100 %, 3 V,', '[100 %, 3 $0,'))).toContain('mV');
    expect(units(file().replace('[100 %, 3 V,', '[100 %, 3 $0,'))).not.toContain('deg');
    expect(units(file().replace('from: 20 mm', 'from: 20 $0'))).toContain('mm');
    expect(units(file().replace('from: 20 mm', 'from: 20 $0'))).not.toContain('V');
  });
});

it('hovers over columns, words and dimensions', () => {
  checkHover(at('of: shaft.open$0ing'), 'shaft.opening', ['shaft.opening in deg']);
  checkHover(at('[dri$0ve,'), 'drive', ['Least angle at a driving arm']);
  checkHover(at('tps.at_clo$0sed, '.replace(', ', ']')), 'tps.at_closed', ['14']);
});

it('colours words by what they are', () => {
  const text = file();
  const tokens = semanticTokens(indexNames(text));
  const typeOf = (words: string, word: string): string | undefined => {
    const start = text.indexOf(words) + words.indexOf(word);
    return tokens.find(({ span }) => span.start === start && span.end === start + word.length)?.type;
  };
  expect(typeOf('    reach: {from', 'reach')).toBe('variable');
  expect(typeOf('[drive, opens]', 'drive')).toBe('enumMember');
  expect(typeOf('[drive, opens]', 'opens')).toBe('label');
  expect(typeOf('of: shaft.opening', 'shaft')).toBe('class');
  expect(typeOf('of: shaft.opening', 'opening')).toBe('property');
  expect(typeOf('noise: {tps.signal', 'signal')).toBe('property');
  expect(typeOf('link.length', 'length')).toBe('property');
  expect(typeOf('[50 %, 2 V', '2')).toBe('number');
});

it('lists free values and runs in the outline', () => {
  const found = outline(indexNames(file()));
  const block = (name: string) => found.find((entry) => entry.name === name);
  expect(block('tune')?.children[0]?.children.map(({ name, detail }) => `${name} ${detail}`)).toEqual(['reach 20 mm to 40 mm']);
  expect(block('measured')?.children[1]?.children.map(({ name, detail }) => `${name} ${detail}`)).toEqual(['bench 3 readings']);
});
