import { describe, expect, it } from 'vitest';
import { NAME_PATTERN, RESERVED, nearestWord, reservedAs } from '../../src/definition/names.ts';

describe('names', () => {
  it('are small letters, digits and underscores', () => {
    for (const name of ['a', 'shaft_a', 'r2']) expect(NAME_PATTERN.test(name), name).toBe(true);
    for (const name of ['', 'A', '2a', '_a', 'a-b', 'a.b', 'é', 'a b']) expect(NAME_PATTERN.test(name), name).toBe(false);
  });

  it('are not words of the formula language', () => {
    for (const word of [
      'in',
      'm',
      'mm',
      'deg',
      'rad',
      'g',
      'lb',
      'at',
      'where',
      'min',
      'sin',
      'pi',
      'and',
      'or',
      'not',
      'mod',
      'to',
      'true',
    ]) {
      expect(RESERVED.has(word), word).toBe(true);
      expect(reservedAs(word), word).toBeDefined();
    }
    for (const word of ['reach', 'shaft', 'pedal', 'e', 'i', 'n', 'constructor', 'toString']) {
      expect(RESERVED.has(word), word).toBe(false);
      expect(reservedAs(word), word).toBeUndefined();
    }
  });
});

describe('the nearest word', () => {
  it('forgives a slip or two, more in long words', () => {
    const words = ['pivot', 'radius', 'angle', 'reference', 'mm'];
    expect(nearestWord('pivit', words)).toBe('pivot');
    expect(nearestWord('pviot', words)).toBe('pivot');
    expect(nearestWord('Radius', words)).toBe('radius');
    expect(nearestWord('raduis', words)).toBe('radius');
    expect(nearestWord('refrnce', words)).toBe('reference');
    expect(nearestWord('mmm', words)).toBe('mm');
    expect(nearestWord('spring', words)).toBeUndefined();
    expect(nearestWord('x', words)).toBeUndefined();
    expect(nearestWord('x', ['y'])).toBeUndefined();
    expect(nearestWord('', words)).toBeUndefined();
    expect(nearestWord('a'.repeat(100000), words)).toBeUndefined();
  });

  it('prefers the nearer, and the first of equals', () => {
    expect(nearestWord('bat', ['cat', 'bats', 'bat'])).toBe('bat');
    expect(nearestWord('bat', ['cat', 'bats'])).toBe('cat');
  });
});
