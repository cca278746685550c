/** What is told of a file once its single failures were looked at. */
import { describe, expect, it } from 'vitest';
import { withFailures } from '../../src/outputs/withFailures.ts';
import { solve } from '../../src/solve.ts';
import { CRANK, RUBS, SHAFT, textOf, torsion } from '../failures/throttles.ts';

const LATER = 'what is left with any one spring';
const onCrank = textOf(CRANK, { springs: { first: torsion('crank', 450), second: torsion('crank', 450) } });
const openLines = (text: string): readonly string[] => withFailures(solve(text)).notChecked.map(({ message }) => message);

it('has what a lost part does among its findings, in the order in which they are told', () => {
  const before = solve(onCrank);
  const after = withFailures(before);
  expect(before.findings.map(({ code }) => code)).not.toContain('failure-holds-open');
  const added = after.findings.filter((finding) => !before.findings.includes(finding));
  expect(added.map(({ code, part }) => `${code} ${part}`)).toEqual(['failure-holds-open link']);
  expect(after.findings.filter((finding) => before.findings.includes(finding))).toEqual(before.findings);
});

it('says no more that failures were not looked at, where all of them were', () => {
  const sound = solve(textOf(CRANK));
  expect(sound.notChecked.filter(({ message }) => message.includes(LATER))).toHaveLength(1);
  const after = withFailures(sound);
  expect(after.notChecked).toEqual(sound.notChecked.filter(({ message }) => !message.includes(LATER)));
  expect(after.findings).toEqual(sound.findings);
});

describe('what could not be checked is said in its place', () => {
  it('of each part lost for the same reason together', () => {
    const bare = textOf(SHAFT).replace(`, ${RUBS()}`, '').replace(', bend: 90 deg, friction: 0.1', '');
    expect(openLines(bare)).toContain(
      'Not checked: whether shaft closes with every part and with each of first, second and main lost: the file gives no friction; without any, it closes',
    );
  });

  it('of all where a part is not understood, or nothing is solved', () => {
    const unread = openLines(textOf(SHAFT, { springs: { second: '{lever: shaft, rate: nonsense}' } }));
    expect(unread.filter((line) => line.includes(LATER))).toEqual([
      'Not checked: what is left with any one spring, rod, cable or pin lost: `springs.second` is not understood',
    ]);
    const unsolved = openLines(textOf(SHAFT, { pedal: undefined }));
    expect(unsolved.filter((line) => line.includes(LATER))).toEqual([
      'Not checked: what is left with any one spring, rod, cable or pin lost',
    ]);
  });
});
