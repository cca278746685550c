import { describe, expect, it } from 'vitest';
import { foldingRanges } from '../../src/language/folding.ts';
import { indexNames } from '../../src/language/names.ts';

/** Lines from 0, `from-to` with the kind where there is one. */
function folded(text: string): readonly string[] {
  return foldingRanges(indexNames(text)).map(
    ({ startLine, endLine, kind }) => `${startLine}-${endLine}${kind === undefined ? '' : ` ${kind}`}`,
  );
}

const FILE = `# one
# two
format: 1
levers:
  crank:
    pivot: [0, 0]
    arms:
      out: {
        radius: 3 mm,
        angle: 0 deg
      }
  shaft: {pivot: [9, 0]}

# alone
rods:
  link: {from: crank.out,
    to: shaft.arm}
require:
  a: >
    # not a comment
    # and neither this
    1 < 2
`;

describe('folding', () => {
  it('folds comments, blocks, parts, values over several lines and long texts', () => {
    // A closing bracket that begins its line stays to be seen.
    const ranges = ['0-1 comment', '3-11', '4-10', '6-10', '7-9', '14-16', '15-16', '17-21', '18-21'];
    expect(folded(FILE)).toEqual(ranges);
    expect(folded(FILE.replaceAll('\n', '\r\n'))).toEqual(ranges);
    expect(folded(`\ufeff${FILE}`)).toEqual(ranges);
  });

  it('folds items of lists and one range a line', () => {
    expect(folded('levers:\n  a:\n    outline:\n      - [0,\n        0]\n      - [1, 1]\n')).toEqual(['0-5', '1-5', '2-5', '3-4']);
    expect(folded('levers: {a: {\n  pivot: [0, 0]\n}}\n')).toEqual(['0-1']);
  });

  it('folds what stands of a broken file, and nothing of an empty one', () => {
    expect(folded('levers:\n  a:\n    pivot: [0, 0\n    arms:\n')).toEqual(expect.arrayContaining(['0-3']));
    expect(folded('')).toEqual([]);
    expect(folded('# one')).toEqual([]);
    expect(folded('# one\n# two')).toEqual(['0-1 comment']);
  });
});
