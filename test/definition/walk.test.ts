import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readDefinition } from '../../src/definition/read.ts';
import { describePath, keysAt } from '../../src/definition/schema/walk.ts';
import { walkValues } from '../support/walkValues.ts';

const SAMPLE = readFileSync(new URL('../support/sample.throttle.yaml', import.meta.url), 'utf8');

describe('what the format says of a path', () => {
  it('is a quantity of the right dimension at every figure of the sample', () => {
    const { definition } = readDefinition(SAMPLE);
    const values = definition === undefined ? [] : walkValues(definition);
    expect(values.length).toBeGreaterThan(60);
    for (const value of values) {
      if (value.path.startsWith('let.')) continue;
      const shapes = describePath(value.path.split('.')).map((described) => described.shape);
      const dimensions = shapes.flatMap((shape) => (shape.kind === 'quantity' ? [shape.dimension] : []));
      expect(dimensions, value.path).toContain(value.dimension);
    }
  });

  it('lists the keys that may stand in a block', () => {
    expect([...keysAt(['rods', 'any', 'ends']).keys()]).toEqual(['kind', 'misalignment', 'pin', 'friction', 'play']);
    expect([...keysAt([]).keys()].slice(0, 4)).toEqual(['format', 'title', 'let', 'points']);
    expect(keysAt(['springs', 'any']).has('free_length')).toBe(true);
    expect(keysAt(['springs', 'any']).has('preload')).toBe(true);
    expect(keysAt(['levers', 'any', 'pivot']).size).toBe(0);
  });

  it('is nothing where the format has no such place', () => {
    expect(describePath(['cams', 'x'])).toEqual([]);
    expect(describePath(['levers', 'a', 'pivot', '3'])).toEqual([]);
    expect(describePath(['levers', 'a', 'constructor'])).toEqual([]);
  });
});
