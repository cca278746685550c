import { expect, test } from 'vitest';
import { indexNames } from '../../src/language/names.ts';
import { partAt } from '../../src/language/partAt.ts';

const TEXT = `format: 1
let:
  reach: 3
levers:
  crank:
    pivot: [0, 0]
    arms: {out: {radius: reach, angle: 0}}
pedal: {lever: crank}
rods:
  link: {from: crank.out, to: shaft.arm}
`;

const at = (words: string): string | undefined => {
  const part = partAt(indexNames(TEXT), TEXT.indexOf(words));
  return part && `${part.kind} ${part.name}`;
};

test('a part is told from anywhere in it, the innermost one that the load path knows', () => {
  expect([at('crank:'), at('angle: 0'), at('lever: crank'), at('crank.out'), at('link')]).toEqual([
    'lever crank',
    'lever crank',
    'pedal pedal',
    'rod link',
    'rod link',
  ]);
});

test('there is none between parts and in what is no part', () => {
  expect([at('format'), at('reach: 3'), at('rods:')]).toEqual([undefined, undefined, undefined]);
});
