/** Torques that grow without bound, where a rod comes in line with the arm that it drives: no figure of rounding is told of them. */
import { describe, expect, it } from 'vitest';
import { solve, type Answers } from '../../src/solve.ts';

/** A shaft that the pedal turns itself, and behind it a lever that the rod cannot turn to the end: it is in line at 39.7 %. */
const toDeadCentre = (springs: string): Answers =>
  solve(`format: 1
levers:
  shaft: {pivot: [0, 0], arms: {out: {radius: 40, angle: 60}, tail: {radius: 10, angle: 90}}, stops: {closed: 0 deg}}
  rear: {pivot: [100, 0], arms: {arm: {radius: 25, angle: 60}}}
pedal: {lever: shaft, opens: counterclockwise, travel: 120}
rods: {link: {from: shaft.out, to: rear.arm}}
plates: {bank: {lever: shaft, bore: 40, seat: 6 deg, idle: 1.5 deg}}
springs:
${springs}`);

const fact = ({ facts }: Answers, key: string): unknown => facts.find((each) => each.key === key);

describe('a torque without bound', () => {
  it('is told in words where a spring opens, and is no worst figure', () => {
    const answers = toDeadCentre(`  one: {lever: shaft, rate: 1 N*mm/deg, preload: 500 N*mm}
  tie: {from: rear.arm, to: shaft.tail, rate: 0.5 N/mm, free_length: 20 mm}
`);
    for (const [code, words] of [
      ['spring-opens', 'tie opens shaft from 0 % to 39.7 % of pedal travel, without bound at 39.7 %'],
      ['closing-lost', 'the springs open shaft without bound at 39.7 %'],
    ] as const) {
      const finding = answers.findings.find((each) => each.code === code);
      expect(finding?.message).toContain(words);
      expect(finding).not.toHaveProperty('worst');
    }
    expect(fact(answers, 'closing-least')).toMatchObject({ why: 'without bound, at a dead centre' });
    expect(fact(answers, 'closing-least')).not.toHaveProperty('figure');
  });

  it('is told in words where springs close', () => {
    const answers = toDeadCentre(`  one: {lever: shaft, rate: 1 N*mm/deg, preload: 500 N*mm}
  two: {lever: rear, rate: 1 N*mm/deg, preload: 500 N*mm}
`);
    expect(fact(answers, 'closing-greatest')).toMatchObject({ why: 'without bound, at a dead centre' });
    expect(fact(answers, 'closing-least')).toHaveProperty('figure');
  });

  it('is nothing that a preload is aimed at a share of', () => {
    const { findings } = toDeadCentre(`  one: {lever: shaft, rate: 1 N*mm/deg, preload: 0 N*mm}
  two: {lever: rear, rate: 1 N*mm/deg}
`);
    const lost = findings.find(({ code }) => code === 'closing-lost');
    expect(lost?.message).toContain('Nothing closes shaft at 0 % of pedal travel: the springs bring 0 N·mm to shaft');
    expect(lost).not.toHaveProperty('mend');
  });
});
