/** Parts that were read before are, in the next text, what reading them with nothing kept gives. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Definition } from '../../src/definition/definition.ts';
import { readDefinition, type DefinitionReading } from '../../src/definition/read.ts';
import { sameLinkage } from '../../src/definition/sameLinkage.ts';
import { readAnew } from '../support/freshReader.ts';
import { timesAsLarge } from '../support/timesAsLarge.ts';

const read = (path: string): string => readFileSync(new URL(path, import.meta.url), 'utf8');
const twoBanks = read('../../examples/two-banks.throttle.yaml');
const sample = read('../support/sample.throttle.yaml');

/** Formulas by what they are made of; what they compute is held in `keptByText.test.ts`. */
const written = (reading: DefinitionReading): string => JSON.stringify(reading);

describe('parts that stood in a text before', () => {
  it.each([
    ['the example', twoBanks, 40],
    ['the sample', sample, 40],
    ['a file twice as large', timesAsLarge(twoBanks, 2), 20],
  ])(
    'are not to be told from those of a first reading, edit by edit: %s',
    (_, base, edits) => {
      const draw = drawing(9_176 + edits);
      let text = base;
      let kept = readDefinition(text).definition!;
      let taken = 0;
      for (let i = 0; i < edits; i++) {
        // A person takes back most of what was wrong.
        text = draw() < 0.4 ? base : edited(text, draw);
        const reading = readDefinition(text);
        expect(written(reading), text).toBe(written(readAnew(text)));
        for (const lever of reading.definition?.levers ?? []) if (kept.levers.includes(lever)) taken++;
        kept = reading.definition ?? kept;
      }
      expect(taken).toBeGreaterThan(edits);
    },
    120_000,
  );

  const definition = (text: string): Definition => readDefinition(text).definition!;
  const leverOf = (text: string, name: string) => definition(text).levers.find((lever) => lever.name === name)!;

  it('are the very same where nothing before them became longer', () => {
    const before = definition(twoBanks);
    const after = definition(twoBanks.replace('offset: 14 mm', 'offset: 15 mm'));
    expect(after.levers.map((lever, i) => lever === before.levers[i])).toEqual([true, true, true, false, true]);
    expect(after.springs[0]).toBe(before.springs[0]);
  });

  it('have the figures of a point that was moved in the text or in the car', () => {
    const moved = leverOf(`# more\n${twoBanks}`, 'front');
    expect(moved.pivot.x.span).toEqual(definition(`# more\n${twoBanks}`).points[1]!.place.x.span);
    const elsewhere = twoBanks.replace('front_shaft: [330, 109, 22]', 'front_shaft: [331, 109, 22]');
    expect(leverOf(elsewhere, 'front').pivot.x.nominal).toBe(0.331);
    expect(leverOf(elsewhere, 'rear').pivot).toEqual(leverOf(twoBanks, 'rear').pivot);
  });

  it('have the places of their points where these stand in another order', () => {
    const text = 'format: 1\npoints:\n  o: [1, 2]\n  p: [3, 4]\nlevers:\n  a: {pivot: o, axis: {through: p}}\n';
    const other = text.replace('  o: [1, 2]\n  p: [3, 4]\n', '  p: [3, 4]\n  o: [1, 2]\n');
    expect(leverOf(text, 'a').pivot.x.span.start).toBe(text.indexOf('1, 2'));
    expect(leverOf(other, 'a').pivot.x.span.start).toBe(other.indexOf('1, 2'));
    expect(leverOf(other, 'a').pivot.x).toBe(definition(other).points[1]!.place.x);
  });

  it('are judged by the points that they name now', () => {
    const text = 'format: 1\npoints:\n  o: [1, 2]\n  p: [3, 4]\nlevers:\n  a: {pivot: o, axis: {through: p}}\n';
    const same = text.replace('[3, 4]', '[1, 2]');
    expect(readDefinition(text).problems.map(({ code }) => code)).not.toContain('out-of-range');
    expect(readDefinition(same).problems.map(({ code }) => code)).toContain('out-of-range');
    expect(readDefinition(text).problems.map(({ code }) => code)).not.toContain('out-of-range');
  });

  it('have the figures of a `let` value that became another', () => {
    const longer = twoBanks.replace('shaft_reach: 32 mm', 'shaft_reach: 33 mm');
    expect(leverOf(twoBanks, 'front').arms[0]!.position).toMatchObject({ radius: { nominal: 0.032 } });
    expect(leverOf(longer, 'front').arms[0]!.position).toMatchObject({ radius: { nominal: 0.033 } });
  });

  it('are told wrong where a name that they use is gone, and right once it is back', () => {
    const gone = twoBanks.replace('      sensor_arm: {', '      sensor_arn: {');
    expect(readDefinition(twoBanks).problems).toEqual([]);
    expect(readDefinition(gone).problems.map(({ code }) => code)).toEqual(['unknown-name']);
    expect(readDefinition(twoBanks).problems).toEqual([]);
  });

  it('are their own under each name that an alias gives them', () => {
    const aliased = 'format: 1\npoints: {o: [0, 0]}\nlevers:\n  a: &a {pivot: o, friction: 1 N*mm}\n  b: *a\n';
    for (const text of [aliased, `# more\n${aliased}`, aliased]) {
      const [a, b] = definition(text).levers;
      expect([a!.name, b!.name, a!.friction!.path]).toEqual(['a', 'b', 'levers.a.friction']);
      expect(b!.nameSpan).not.toEqual(a!.nameSpan);
    }
  });

  it('stand where the text has them, as holding all figures side by side would find', () => {
    const draw = drawing(31);
    for (let i = 0; i < 20; i++) {
      const lines = sample.split('\n');
      for (let k = 0; k < 3; k++) lines.splice(Math.floor(draw() * lines.length), 0, '# a comment');
      const text = lines.join('\n');
      const [before, now] = [definition(sample), definition(text)];
      const moving = sameLinkage(before, now);
      for (const parts of ['points', 'levers', 'cables', 'rods', 'springs', 'plates', 'sensors', 'keepOuts'] as const) {
        for (const [n, { span, nameSpan }] of before[parts].entries()) {
          expect(moving?.(nameSpan)).toEqual(now[parts][n]!.nameSpan);
          // A comment within a part makes it longer.
          expect(moving?.(span)).toEqual(now[parts][n]!.span);
        }
      }
    }
  });
});

/** A digit, a letter more, a name in one place, a line out or twice, a comment. */
function edited(text: string, draw: () => number): string {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(draw() * list.length)]!;
  const kind = draw();
  if (kind < 0.3) {
    const at = pick([...text.matchAll(/\d/g)]).index;
    return text.slice(0, at) + String(Math.floor(draw() * 10)) + text.slice(at + 1);
  }
  if (kind < 0.5) {
    const at = Math.floor(draw() * text.length);
    return text.slice(0, at) + pick(['a', '1', ' ', '\n', '# x\n', '\n  fri']) + text.slice(at);
  }
  const names = [...text.matchAll(/^ {2}([a-z_]+):/gm)].map((match) => match[1]!);
  if (kind < 0.65) return text.replace(new RegExp(`\\b${pick(names)}\\b`), pick(names));
  if (kind < 0.75) return text.replace(new RegExp(`\\b${pick(names)}\\b`, 'g'), `${pick(names)}_x`);
  const lines = text.split('\n');
  const at = Math.floor(draw() * lines.length);
  return (draw() < 0.5 ? lines.toSpliced(at, 1) : lines.toSpliced(at, 0, pick([lines[at]!, '# a comment']))).join('\n');
}

/** Numbers from 0 to below 1, the same for the same seed. */
function drawing(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}
