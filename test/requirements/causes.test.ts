/** What is not decidable for want of a force names the cause. */
import { expect, it } from 'vitest';
import { solve } from '../../src/solve.ts';

const text = (cable: string, spring: string): string => `format: 1
levers: {shaft: {pivot: [100, 0], arms: {tail: {radius: 20, angle: 240}}, drums: {wheel: {radius: 24, wraps: counterclockwise}}, stops: {open: 50 deg}}}
pedal: {cable: main, pull: 25.13 mm}
cables: {main: {enters: [40, 24], to: shaft.wheel${cable}}}
plates: {bank: {lever: shaft, bore: 40, shaft: 8, seat: 6 deg, idle: 1.5 deg}}
${spring}require: {light: max(pedal.effort) <= 90 N}
`;
const ONE = 'springs: {one: {lever: shaft, rate: 2 N*mm/deg, preload: 300 N*mm}}\n';
const ENDLESS = 'springs: {one: {from: [60, -40], to: shaft.tail, rate: 0.5 N/mm}}\n';
const reason = (of: string): string | undefined => {
  const [answer] = solve(of).requirements;
  expect(answer?.outcome).toBe('undecided');
  return answer?.reason;
};

it('names a cable without a stiffness, a spring without a free length, and springs that are not there', () => {
  expect(reason(text('', ONE))).toMatch(
    /^pedal\.effort has no value from 83\.3 % to 100 % .*: the cable main stretches there and has no `stiffness`$/,
  );
  expect(reason(text(', stiffness: 50 N/mm', ENDLESS))).toMatch(/: one has no `free_length`$/);
  expect(reason(text(', stiffness: 50 N/mm', ''))).toBe('pedal.effort is not known: the file describes no springs');
  expect(solve(text(', stiffness: 50 N/mm', ONE)).requirements[0]?.outcome).not.toBe('undecided');
});
