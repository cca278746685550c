import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Value } from '../../src/definition/definition.ts';
import { addItem, addKey, applyEdits, formatQuantity, removeKey, setFigure, setValue } from '../../src/definition/edit.ts';
import { readDefinition } from '../../src/definition/read.ts';
import { walkValues } from '../support/walkValues.ts';

const SAMPLE = readFileSync(new URL('../support/sample.throttle.yaml', import.meta.url), 'utf8');

function edited(text: string, path: string, written: string): string {
  const edit = setValue(text, path, written);
  return edit === undefined ? 'nothing there' : applyEdits(text, [edit]);
}

const valuesOf = (text: string): readonly Value[] => {
  const { definition } = readDefinition(text);
  return definition === undefined ? [] : walkValues(definition);
};

describe('setting a value', () => {
  it('changes its text and nothing else', () => {
    expect(edited('a:\n  b: 1 mm   # why\n  c: 2\n', 'a.b', '3 mm')).toBe('a:\n  b: 3 mm   # why\n  c: 2\n');
    expect(edited('\ufeffa: {b: 1 mm ,c: [2,  3 ]}\r\n', 'a.c.1', '4')).toBe('\ufeffa: {b: 1 mm ,c: [2,  4 ]}\r\n');
  });

  it('stays within quotes, and puts them where the text needs them', () => {
    expect(edited(`a: {b: "1 mm", c: '2'}`, 'a.b', 'max(x, y)')).toBe(`a: {b: "max(x, y)", c: '2'}`);
    expect(edited(`a: {b: "1 mm", c: '2'}`, 'a.c', "it's")).toBe(`a: {b: "1 mm", c: 'it''s'}`);
    expect(edited('a: {b: 1 mm}', 'a.b', 'max(x, y)')).toBe('a: {b: "max(x, y)"}');
    expect(edited('a: 1 mm', 'a', 'max(x, y)')).toBe('a: max(x, y)');
    expect(edited('a: x', 'a', 'b: c')).toBe('a: "b: c"');
    expect(edited('a: x', 'a', 'say "hi" # now')).toBe('a: "say \\"hi\\" # now"');
    expect(edited('a: x', 'a', '')).toBe('a: ""');
    expect(edited('a: {b: 1}', 'a.b', '-3 mm')).toBe('a: {b: -3 mm}');
  });

  it('finds names with dots and spaces', () => {
    expect(edited('require:\n  opens. fully: x > 1\n', 'require.opens. fully', 'x > 2')).toBe('require:\n  opens. fully: x > 2\n');
  });

  it('does nothing where there is no single value', () => {
    expect(setValue('a: {b: 1}', 'a', '2')).toBeUndefined();
    expect(setValue('a: {b: 1}', 'a.c', '2')).toBeUndefined();
    expect(setValue('a: [1]', 'a.1', '2')).toBeUndefined();
    expect(setValue('', 'a', '2')).toBeUndefined();
  });

  it('replaces a block text as a whole', () => {
    expect(edited('title: |\n  one\n  two\nformat: 1\n', 'title', 'three')).toBe('title: three\nformat: 1\n');
  });
});

describe('taking a key out', () => {
  const less = (text: string, path: string): string => {
    const edit = removeKey(text, path);
    return edit === undefined ? 'left alone' : applyEdits(text, [edit]);
  };

  it('takes its lines and nothing else', () => {
    expect(less('a:\n  b: 1 # why\n  c:\n    d: 2\n    e: 3\n  f: 4\n', 'a.c')).toBe('a:\n  b: 1 # why\n  f: 4\n');
    expect(less('a:\r\n  b: {x: 1,\r\n    y: 2}  # both\r\n  c: 2', 'a.b')).toBe('a:\r\n  c: 2');
    expect(less('a:\n  b: 1\n  c: 2', 'a.c')).toBe('a:\n  b: 1\n');
    expect(less('\ufeffa: 1\nb: 2\n', 'a')).toBe('\ufeffb: 2\n');
  });

  it('takes its comma in a row of keys', () => {
    expect(less('a: {b: 1, c: 2, d: 3}', 'a.b')).toBe('a: {c: 2, d: 3}');
    expect(less('a: {b: 1, c: 2, d: 3}', 'a.c')).toBe('a: {b: 1, d: 3}');
    expect(less('a: {b: 1, c: 2, d: 3}', 'a.d')).toBe('a: {b: 1, c: 2}');
    expect(less('a: {b: 1}', 'a.b')).toBe('a: {}');
  });

  it('takes the block too where it was all of it', () => {
    expect(less('a: 1\nsprings:\n  only: {rate: 2}\nb: 2\n', 'springs.only')).toBe('a: 1\nb: 2\n');
  });

  it('leaves alone what is not there, or not on lines of its own', () => {
    expect(less('a: {b: 1}', 'a.c')).toBe('left alone');
    expect(less('a: [1, 2]', 'a.0')).toBe('left alone');
    expect(less('? a\n: 1\n', 'a')).toBe('left alone');
    expect(less('', 'a')).toBe('left alone');
  });
});

describe('setting a figure', () => {
  const TEXT =
    'format: 1\nlet:\n  a: 38 mm ± 0.1 mm  # keep\n  b: 2 * a\n  c: 1.5 in\n  d: 25°\n  e: 38 mm +0.2/-0.1 mm\n  f: "- 38 mm"\npoints:\n  p: [184, -62.5]\n';
  const set = (path: string, nominal: number, digits?: number): string | undefined => {
    const value = valuesOf(TEXT).find((candidate) => candidate.path === path);
    const edit = value === undefined ? undefined : setFigure(TEXT, value, nominal, digits);
    return edit?.text;
  };

  it('keeps unit, tolerance and a bare number as they were written', () => {
    expect(set('let.a', 0.04125)).toBe('41.25 mm ± 0.1 mm');
    expect(set('let.c', 0.0254)).toBe('1 in');
    expect(set('let.d', Math.PI / 6)).toBe('30°');
    expect(set('let.f', -0.039)).toBe('-39 mm');
    expect(set('let.e', 0.039)).toBe('39 mm +0.2/-0.1 mm');
    expect(set('points.p.0', 0.1851)).toBe('185.1');
    expect(set('points.p.1', -0.0001234567, 4)).toBe('-0.1235');
  });

  it('leaves formulas alone', () => {
    expect(set('let.b', 1)).toBeUndefined();
  });

  it('changes that figure and no other, for every plain figure of the sample and any size', () => {
    const before = valuesOf(SAMPLE);
    const plain = before.filter((value) => value.formula === undefined);
    expect(plain.length).toBeGreaterThan(60);
    const variants = [SAMPLE, SAMPLE.replaceAll('\n', '\r\n'), `\ufeff${SAMPLE}`];
    fc.assert(
      fc.property(
        fc.constantFrom(...variants),
        fc.nat(plain.length - 1),
        fc.double({ min: 0.97, max: 1.03, noNaN: true }),
        (text, index, factor) => {
          const value = plain[index];
          if (
            value === undefined ||
            value.path === 'plates.bank_a.count' ||
            value.path === 'plates.bank_b.count' ||
            value.path === 'sensors.tps.bits'
          )
            return;
          const wanted = value.nominal * factor;
          const edit = setFigure(text, value, wanted, 12);
          const after = applyEdits(text, edit === undefined ? [] : [edit]);
          expect(after.length - text.length).toBe((edit?.text.length ?? 0) - ((edit?.span.end ?? 0) - (edit?.span.start ?? 0)));
          const now = valuesOf(after);
          expect(now.map((entry) => entry.path)).toEqual(before.map((entry) => entry.path));
          for (const [k, entry] of now.entries()) {
            if (entry.path === value.path) expect(Math.abs(entry.nominal - wanted)).toBeLessThanOrEqual(1e-11 * Math.abs(wanted));
            else if (entry.formula === undefined) expect(entry.nominal).toBe(before[k]?.nominal);
          }
        },
      ),
      { numRuns: 150, seed: 7 },
    );
  }, 60_000);
});

describe('adding a key', () => {
  const add = (text: string, path: string, key: string, written: string): string | undefined => {
    const edit = addKey(text, path, key, written);
    return edit && applyEdits(text, [edit]);
  };

  it('writes it at the end of the block, in the block’s own form', () => {
    expect(add('r: {a: 1}  # x\n', 'r', 'b', '2 mm')).toBe('r: {a: 1, b: 2 mm}  # x\n');
    expect(add('r: {}\n', 'r', 'b', 'max(1, 2)')).toBe('r: {b: "max(1, 2)"}\n');
    expect(add('r:\n  s:\n    a: 1  # x\n  t: 3\n', 'r.s', 'b', '2')).toBe('r:\n  s:\n    a: 1  # x\n    b: 2\n  t: 3\n');
    expect(add('r:\r\n  a: 1', 'r', 'b', '2')).toBe('r:\r\n  a: 1\r\n  b: 2');
    expect(add('r: {a: 1}', 'r', 'a', '2')).toBeUndefined();
    expect(add('r: 3', 'r', 'a', '2')).toBeUndefined();
  });

  it('writes it behind an alias, and not where a key is written with a question mark', () => {
    expect(add('a: &x 3\nr: {b: *x}\n', 'r', 'c', '2')).toBe('a: &x 3\nr: {b: *x, c: 2}\n');
    expect(add('r:\n  ? a\n  : 3\n', 'r', 'b', '2')).toBeUndefined();
  });
});

describe('writing a quantity', () => {
  it('keeps to the unit and the digits', () => {
    expect(formatQuantity(0.0381, 'in')).toBe('1.5 in');
    expect(formatQuantity(0.0382, 'mm', 3)).toBe('38.2 mm');
    expect(formatQuantity(Math.PI / 2, '°')).toBe('90°');
    expect(formatQuantity(0.35, '%')).toBe('35%');
    expect(formatQuantity(-0, 'mm')).toBe('0 mm');
    expect(formatQuantity(1e-10, 'mm')).toBe('0.0000001 mm');
    expect(formatQuantity(2, '')).toBe('2');
    expect(formatQuantity(2, 'parsec')).toBeUndefined();
    expect(formatQuantity(NaN, 'mm')).toBeUndefined();
  });
});

describe('adding an item to a list', () => {
  const added = (text: string, path: string): string => {
    const edit = addItem(text, path, '5');
    return edit === undefined ? 'nothing there' : applyEdits(text, [edit]);
  };

  it('puts it at the end, on a line of its own in a block, before the comment of nothing else', () => {
    expect(added('a: [1, 2 ] # why\n', 'a')).toBe('a: [1, 2, 5 ] # why\n');
    expect(added('a:\r\n  - 1\r\n  - 2 # why\r\nb: 3\r\n', 'a')).toBe('a:\r\n  - 1\r\n  - 2 # why\r\n  - 5\r\nb: 3\r\n');
    expect(added('a:\n- 1\n-  2', 'a')).toBe('a:\n- 1\n-  2\n-  5');
  });

  it('is left alone where there is no list, or where its end cannot be told', () => {
    for (const text of ['a: 1\n', 'a: []\n', 'b: [1]\n', 'a:\n  - - 1\n    - 2\n', 'a:\n  - |\n    one\n'])
      expect(added(text, 'a')).toBe('nothing there');
  });
});
