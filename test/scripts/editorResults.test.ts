import { describe, expect, test } from 'vitest';
import { collectResults } from '../../scripts/editorHosts/results.mjs';

function countsOf(...lines: readonly string[]): { passed: number; failed: number } {
  const { hear, results } = collectResults(() => undefined);
  lines.forEach(hear);
  const { passed, failed } = results();
  return { passed, failed };
}

describe('what an editor prints of its tests', () => {
  test('counts, whatever else the editor says between', () => {
    const lines = ['# editor 1.91.1', '1..2', 'noise: ok 1 - x', 'ok 1 - a (3 ms)', 'not ok 2 - b (4 ms)', '#   why', '# end'];
    expect(countsOf(...lines)).toEqual({ passed: 1, failed: 1 });
  });

  test('says which editor it was', () => {
    const { hear, results } = collectResults(() => undefined);
    hear('# editor 1.91.1');
    expect(results().version).toBe('1.91.1');
  });

  test('passes only where all that was promised passed and the run came to its end', () => {
    expect(countsOf('1..1', 'ok 1 - a (3 ms)', '# end')).toEqual({ passed: 1, failed: 0 });
    expect(countsOf('1..1', 'ok 1 - a (3 ms)')).toEqual({ passed: 1, failed: 1 });
    expect(countsOf('1..3', 'ok 1 - a (3 ms)', '# end')).toEqual({ passed: 1, failed: 2 });
  });

  test('goes on where the window is loaded anew, and has failed where nothing comes after that', () => {
    const before = ['# editor 1.91.1', '1..1', 'ok 1 - a (3 ms)'];
    expect(countsOf(...before, '# editor 1.91.1', '1..2', 'ok 1 - b (3 ms)', 'ok 2 - c (3 ms)', '# end')).toEqual({ passed: 3, failed: 0 });
    expect(countsOf(...before, '# editor 1.91.1', '1..2', 'ok 1 - b (3 ms)')).toEqual({ passed: 2, failed: 1 });
    expect(countsOf(...before)).toEqual({ passed: 1, failed: 1 });
  });

  test('fails where there was no test at all', () => {
    expect(countsOf()).toEqual({ passed: 0, failed: 1 });
    expect(countsOf('1..0', '# end')).toEqual({ passed: 0, failed: 1 });
  });

  test('keeps the name of each test that failed and why, and what was promised and did not come', () => {
    const failuresOf = (...lines: readonly string[]): unknown => {
      const { hear, results } = collectResults(() => undefined);
      lines.forEach(hear);
      return results().failures;
    };
    const b = { name: 'hover: b (4 ms)', reason: ['why', '  at c'] };
    const lines = ['1..3', 'ok 1 - hover: a (3 ms)', 'not ok 2 - hover: b (4 ms)', '#   why', '#     at c'];
    expect(failuresOf(...lines, 'ok 3 - hover: c (3 ms)', '# end')).toEqual([b]);
    expect(failuresOf(...lines, '# end')).toEqual([b, { name: '1 more were not run', reason: [] }]);
    expect(failuresOf('1..1', 'ok 1 - a (3 ms)')).toEqual([{ name: 'the run did not come to its end', reason: [] }]);
    expect(failuresOf()).toEqual([{ name: 'there was no test', reason: [] }]);
    expect(failuresOf('1..1', 'ok 1 - a (3 ms)', '# end')).toEqual([]);
  });

  test('shows a person the name of each test, and why one failed', () => {
    const shown: string[] = [];
    const { hear } = collectResults((line) => shown.push(line));
    ['1..2', 'ok 1 - a (3 ms)', 'not ok 2 - b (4 ms)', '#   why', 'noise'].forEach(hear);
    expect(shown).toEqual(['  ✓ a (3 ms)', '  ✗ b (4 ms)', '      why']);
  });
});
