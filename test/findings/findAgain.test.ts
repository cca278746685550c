/** What was found is told again where the linkage stands as it did, and nothing that findings rest on is overlooked. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Definition } from '../../src/definition/definition.ts';
import { IS_OF_LINKAGE } from '../../src/definition/sameLinkage.ts';
import { findAll } from '../../src/findings/findings.ts';
import { solve } from '../../src/solve.ts';

const FOLDER = new URL('../../examples/', import.meta.url);
const files = readdirSync(FOLDER).filter((name) => name.endsWith('.throttle.yaml'));
const example = (name: string): string => readFileSync(new URL(name, FOLDER), 'utf8');

describe('what was found', () => {
  it('is told again at its new places, and not worked out again', () => {
    let told = 0;
    for (const text of files.map(example)) {
      const before = solve(text).findings;
      const comment = '# one line more\n';
      const after = solve(comment + text).findings;
      expect(after.map(({ message }) => message)).toEqual(before.map(({ message }) => message));
      after.forEach(({ span, ranges, related }, i) => {
        const was = before[i]!;
        expect(span).toEqual({ start: was.span.start + comment.length, end: was.span.end + comment.length });
        expect(related?.map((each) => each.span.start)).toEqual(was.related?.map((each) => each.span.start + comment.length));
        // The very same: a rule makes others each time.
        if (ranges !== undefined) expect(ranges).toBe(was.ranges);
        told++;
      });
    }
    expect(told).toBeGreaterThan(3);
  });

  it('is that of the text before a slip once the slip is taken back', () => {
    const text = example('binding-broken.throttle.yaml');
    const before = solve(text).findings;
    expect(solve(text.replace('pull: 32 mm', 'pull: 3 mm')).findings).not.toEqual(before);
    const after = solve(text).findings;
    expect(after).toEqual(before);
    expect(after[0]!.ranges).toBe(before[0]!.ranges);
  });
});

describe('what does not belong to the linkage', () => {
  it.each(files)('is looked at by no rule that is asked at each key press: %s', (name) => {
    const { study } = solve(example(name));
    if (study === undefined) return;
    const definition = new Proxy(study.definition, {
      get(of, key) {
        if (key in IS_OF_LINKAGE && !IS_OF_LINKAGE[key as keyof Definition]) throw new Error(`A rule looks at \`${String(key)}\``);
        return Reflect.get(of, key) as unknown;
      },
    });
    const { travel, columns } = study;
    const mechanism = { ...travel.mechanism, definition };
    const guarded = {
      definition,
      travel: Object.create(travel, { mechanism: { value: mechanism } }) as typeof travel,
      columns,
      figures: new Map(),
    };
    expect(findAll(guarded)).toEqual(findAll(study));
  });
});
