import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { solve } from '../../src/solve.ts';

const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
const files = [...readme.matchAll(/^```yaml\n(.*?)^```/gms)].map(([, text = '']) => text);

describe('the throttle file that the README shows', () => {
  test('is there', () => {
    expect(files).toHaveLength(1);
  });

  test.each(files)('solves without a problem or an error', (text) => {
    const { problems, findings } = solve(text);
    expect(problems).toEqual([]);
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  });
});
