/** Springs between two levers of which the pedal moves one: the same is told whichever end the file names first. */
import { describe, expect, it } from 'vitest';
import { solve, type Answers } from '../../src/solve.ts';
import { onShaft, TWO } from './hungSprings.ts';

/** A post that stands still, with a hook at [60, 65]; the spring opens the shaft all the way. */
const withPost = (spring: string): string =>
  onShaft([...TWO, spring], { angle: 0 }).replace(
    'levers:\n',
    'levers:\n  post: {pivot: [60, 60], arms: {hook: {radius: 5, angle: 90 deg}}}\n',
  );
const REST = 'rate: 0.5 N/mm, free_length: 20 mm';
const NAMED_FIRST = withPost(`tail: {from: post.hook, to: shaft.tail, ${REST}}`);
const NAMED_LAST = withPost(`tail: {from: shaft.tail, to: post.hook, ${REST}}`);

const found = ({ findings }: Answers): readonly string[] => findings.map(({ severity, code, message }) => `${severity} ${code} ${message}`);
const left = ({ notChecked }: Answers, part: string): readonly string[] =>
  notChecked.filter((each) => each.part === part).map(({ message }) => message);

describe('a spring from a lever that turns to one that stands still', () => {
  const [first, last] = [solve(NAMED_FIRST), solve(NAMED_LAST)];

  it('opens the shaft whichever end is named first', () => {
    expect(found(first).some((line) => line.startsWith('error spring-opens tail opens shaft'))).toBe(true);
    expect(found(last)).toEqual(found(first));
    // Of a spring given by its rate only its stress.
    expect(left(last, 'tail')).toEqual([expect.stringContaining('stressed too much')]);
  });

  it('is slack whichever end is named first', () => {
    const slack = (text: string): readonly string[] =>
      found(solve(text.replace('free_length: 20 mm', 'free_length: 70 mm'))).filter((line) => line.includes('spring-slack'));
    expect(slack(NAMED_FIRST)).toHaveLength(1);
    expect(slack(NAMED_LAST)).toEqual(slack(NAMED_FIRST));
  });

  it('leaves the pedal’s effort untold where its torque is not known', () => {
    const unknown = solve(NAMED_LAST.replace(', free_length: 20 mm', ''));
    expect(left(unknown, 'pedal')).toContain('Not checked: pedal effort, since the torque of tail is not known');
    expect(unknown.facts.find(({ key }) => key === 'effort-at-rest')?.why).toBe('the torque of tail is not known');
  });

  it('is not checked where neither end turns', () => {
    const still = NAMED_LAST.replace('from: shaft.tail', 'from: mast.hook').replace(
      'levers:\n',
      'levers:\n  mast: {pivot: [20, 60], arms: {hook: {radius: 5, angle: 90 deg}}}\n',
    );
    expect(left(solve(still), 'tail')).toEqual([
      'Not checked: whether it closes the throttle, since the pedal does not move post and mast',
      expect.stringContaining('stressed too much'),
    ]);
  });
});

it('a file whose only spring is not understood is not said to describe none', () => {
  const answers = solve(onShaft(['one: {lever: shaft, rate: soft, preload: 300 N*mm}']));
  expect(left(answers, 'pedal')).toContain('Not checked: pedal effort, since a spring of the file is not understood');
});

it('springs before free play are said to be before it', () => {
  const { findings } = solve(`format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40, angle: 90}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40, angle: 90}}, stops: {closed: 0 deg, open: 40 deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: 40}
rods: {link: {from: pedal.out, to: shaft.arm, lost: 2 mm}}
plates: {bank: {lever: shaft, bore: 40, seat: 6 deg, idle: 1.5 deg}}
springs:
  one: {lever: pedal, rate: 2 N*mm/deg, preload: 300 N*mm}
  two: {lever: pedal, rate: 2 N*mm/deg, preload: 300 N*mm}
`);
  const related = findings.find(({ code }) => code === 'no-return-spring')?.related ?? [];
  expect(related.map(({ message }) => message)).toEqual(
    ['one', 'two'].map(
      (name) =>
        `${name} works on pedal, from which no closing torque comes to it: a cable, a one-way coupling or free play does not push it closed`,
    ),
  );
});
