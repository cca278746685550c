import { expect, test } from 'vitest';
import { withSeverities, type ChosenSeverity } from '../../src/findings/chosenSeverities.ts';
import type { Finding, FindingSeverity } from '../../src/findings/finding.ts';

const found = (code: Finding['code'], severity: FindingSeverity, following?: readonly Finding[]): Finding => ({
  code,
  severity,
  part: 'link',
  span: { start: 0, end: 4 },
  message: code,
  ...(following && { following }),
});

const FOUND = [
  found('toggle-opening', 'error', [found('not-assembled', 'error'), found('opening-missed', 'warning')]),
  found('single-return-spring', 'note'),
];

const chosen = (severities: Readonly<Record<string, ChosenSeverity>>): readonly string[] =>
  withSeverities(FOUND, new Map(Object.entries(severities))).map(({ code, severity }) => `${severity} ${code}`);

test('findings keep their severity where none is chosen, and what follows stays with its cause', () => {
  expect(chosen({})).toEqual(['error toggle-opening', 'note single-return-spring']);
  expect(chosen({ 'single-return-spring': 'error' })).toEqual(['error toggle-opening', 'error single-return-spring']);
});

test('what follows from a finding that is off stands in its place', () => {
  expect(chosen({ 'toggle-opening': 'off' })).toEqual(['error not-assembled', 'warning opening-missed', 'note single-return-spring']);
  expect(chosen({ 'toggle-opening': 'off', 'not-assembled': 'off' })).toEqual(['warning opening-missed', 'note single-return-spring']);
});

test('what follows from a finding that is made milder stands behind it where it is worse', () => {
  expect(chosen({ 'toggle-opening': 'warning' })).toEqual(['warning toggle-opening', 'error not-assembled', 'note single-return-spring']);
  expect(chosen({ 'toggle-opening': 'note', 'not-assembled': 'off', 'opening-missed': 'error' })).toEqual([
    'note toggle-opening',
    'error opening-missed',
    'note single-return-spring',
  ]);
});
