/** A part lost that leaves plates open is told where the throttle closes with all of them; a sound near neighbour is not accused. */
import { expect, it } from 'vitest';
import { solve } from '../../src/solve.ts';
import { CRANK, textOf, torsion } from '../failures/throttles.ts';

const told = (text: string): readonly (readonly string[])[] =>
  (solve(text).failures()?.late ?? []).map(({ code, part, severity }) => [code, part, severity]);
const springsOn = (lever: string): string => textOf(CRANK, { springs: { first: torsion(lever, 450), second: torsion(lever, 450) } });

it('a rod that is lost leaves plates open whose springs all hang before it', () => {
  expect(told(springsOn('crank'))).toEqual([['failure-holds-open', 'link', 'warning']]);
});

it('the same springs on the shaft of the plates close it without the rod', () => {
  expect(told(springsOn('shaft'))).toEqual([]);
});
