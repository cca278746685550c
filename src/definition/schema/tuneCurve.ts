/**
 * `tune.curve`: the curve that is wanted, by points or by its slopes at both ends.
 */
import type { ColumnReference } from '../definition.ts';
import type { CurvePoint, TuneCurve } from '../tune.ts';
import { column, columnName, mayNotFall } from './columnName.ts';
import { hasCount } from './figureList.ts';
import { deferred, type Deferred } from './noted.ts';
import { listOf } from './places.ts';
import { reportComma } from './pointComma.ts';
import { optional, record, required } from './record.ts';
import { quantity } from './scalars.ts';
import { defined, itemSite, problem, reportShape, type About, type Reading, type Shape } from './shape.ts';
import { figureAbout, readAs, readOfColumn, tellUseless, travel } from './tuneFigures.ts';

const points: About = {
  kind: 'list',
  of: { kind: 'list', of: figureAbout('a figure'), least: 2 },
  least: 2,
};

const slopes = record(
  {
    tip_in: required(quantity('number', { least: 0 }), { doc: 'Slope where the pedal begins to move.', example: '0.4' }),
    end: required(quantity('number', { least: 0 }), { doc: 'Slope at full pedal.', example: '1.4' }),
  },
  ({ tip_in: tipIn, end }, { node }, reading) => {
    if (!turnsBack(tipIn.nominal, end.nominal)) return { tipIn, end };
    reading.report(
      problem('out-of-range', node.span, 'With these slopes the curve turns back on its way', {
        cure: 'Write smaller slopes: both of 3 or less never turn back',
      }),
    );
    return undefined;
  },
);

/** The block `curve`. */
export const curve: Shape<TuneCurve> = record(
  {
    of: required(column('curve'), {
      doc: "What the curve is of: a lever's opening, the area or fraction of plates, `pedal.effort` or `pedal.release`.",
      example: 'shaft.opening',
    }),
    through: optional(deferred(points), {
      doc: 'Points `[pedal travel, value]`, or `[pedal travel, value, weight]` with a weight other than 1, joined by a monotone cubic (PCHIP). With a weight of 0 the curve does not count between the points beside. An opening, area or fraction must not fall.',
      example: '[[0 %, 0 deg], [25 %, 8 deg], [100 %, 82 deg, 2]]',
      vital: true,
    }),
    slopes: optional(slopes, {
      doc: "The curve's slopes at its ends, as multiples of the straight line's from closed to full opening; a cubic between.",
      example: '{tip_in: 0.4, end: 1.4}',
      vital: true,
    }),
  },
  ({ of, through, slopes: ends }, { site, keySpan }, reading): TuneCurve | undefined => {
    const common = { nameSpan: site.nameSpan, span: site.span, of };
    if (through !== undefined) {
      const read = readPoints(through, of, reading);
      return read === undefined ? undefined : { ...common, kind: 'through', points: read };
    }
    if (ends === undefined) return undefined;
    if (mayNotFall(of)) return { ...common, kind: 'slopes', ...ends };
    reading.report(
      problem(
        'wrong-shape',
        keySpan('slopes'),
        `\`slopes\` does not go with \`${columnName(of)}\`, which has no closed and no full opening`,
        {
          cure: 'Write `through` with points of the curve',
        },
      ),
    );
    return undefined;
  },
  {
    choices: [
      {
        what: 'its shape',
        forms: [
          { name: 'points', needs: ['through'], allows: [] },
          { name: 'slopes', needs: ['slopes'], allows: [] },
        ],
      },
    ],
  },
);

/**
 * Whether the cubic Hermite from 0 to 1 with slopes a and b falls somewhere:
 * y′(t) = a + 2 (3 − 2a − b) t + 3 (a + b − 2) t², its least within 0 … 1 where it has one there.
 */
function turnsBack(a: number, b: number): boolean {
  const curvature = 3 * (a + b - 2);
  const turn = curvature > 0 ? (2 * a + b - 3) / curvature : 0;
  if (turn <= 0 || turn >= 1) return false;
  return a - curvature * turn * turn < -SLACK;
}

/** Slopes that just touch level are not refused for rounding. */
const SLACK = 1e-9;

function readPoints({ node, site }: Deferred, of: ColumnReference, reading: Reading): readonly CurvePoint[] | undefined {
  const read = listOf(pointOf(of), 'points `[pedal travel, value]`', 2).read(node, site, reading);
  if (read === undefined) return undefined;
  for (const [index, point] of read.items.entries()) {
    const before = read.items[index - 1];
    if (before === undefined) continue;
    const related = (span: CurvePoint['span']) => [{ span, message: 'The point before is here' }];
    if (point.travel.nominal <= before.travel.nominal) {
      reading.report(
        problem('out-of-range', point.travel.span, 'The pedal travels of `through` must rise from point to point', {
          cure: 'Write the points in the order of their pedal travel, each travel once',
          related: related(before.travel.span),
        }),
      );
      return undefined;
    }
    if (mayNotFall(of) && point.value.nominal < before.value.nominal) {
      reading.report(
        problem('out-of-range', point.value.span, `The curve of \`${columnName(of)}\` turns back here: it falls from the point before`, {
          cure: 'Write a value that is not below the one before',
          related: related(before.value.span),
        }),
      );
      return undefined;
    }
  }
  const [first] = read.items;
  if (first === undefined || read.items.some(({ weight }) => weight?.nominal !== 0)) return read.items;
  reading.report(
    problem('out-of-range', site.nameSpan, `Every weight of \`${site.name}\` is 0, so no point counts`, {
      cure: 'Write a weight above 0 at the points that count, or leave the weights out',
      related: [{ span: first.weight?.span ?? first.span, message: 'The first weight is here' }],
    }),
  );
  return undefined;
}

function pointOf(of: ColumnReference): Shape<CurvePoint> {
  const cure = 'Write `[pedal travel, value]`, or a weight behind them';
  return {
    about: points.kind === 'list' ? points.of : points,
    read(node, site, reading) {
      if (node.kind !== 'list') return reportShape(node, site, reading, 'a list of points `[pedal travel, value]`', cure);
      if (!hasCount(node, site, reading, [2, 3], 'two or three figures in each point', cure)) return undefined;
      if (reportComma(node, reading)) return undefined;
      const [first, second, third] = node.items;
      const at = first && travel.read(first, itemSite(site, 0, first), reading);
      const value = second && readOfColumn(of, second, itemSite(site, 1, second), reading);
      const weight = third && readAs('number', { least: 0 }, third, itemSite(site, 2, third), reading);
      tellUseless([at, value, weight], 'Write the figure alone', reading);
      if (at === undefined || value === undefined || (third !== undefined && weight === undefined)) return undefined;
      return { span: node.span, travel: at, value, ...defined({ weight }) };
    },
  };
}
