/** Outlines and obstacles with straight sides: corners that go once around an area. */
import type { Place } from '../definition.ts';
import { doubleArea, faultOf, MOST_CORNERS, type Corner } from '../../numeric/polygon.ts';
import { coordinates, listOf, shaped } from './places.ts';
import { problem, type Reading, type Shape, type Site } from './shape.ts';
import type { Span } from '../span.ts';

/** @param what the corners are called, in the plural */
export function polygon(what: string): Shape<readonly Place[]> {
  return shaped(listOf(coordinates('a place'), what, 3), ({ span, items }, _node, site, reading) =>
    bounds(items, span, site, reading) ? items : undefined,
  );
}

function bounds(places: readonly Place[], span: Span, { name }: Site, reading: Reading): boolean {
  if (places.length > MOST_CORNERS) return true;
  const fault = faultOf(flattened(places));
  if (fault === undefined) return true;
  if (fault.kind === 'flat') {
    reading.report(
      problem('out-of-range', span, `The corners of \`${name}\` bound no area`, {
        cure: 'Give three corners or more that do not lie on one line, in the order in which its sides join them',
      }),
    );
    return false;
  }
  const [first, second] = [places[fault.first], places[fault.second]];
  reading.report(
    problem(
      'out-of-range',
      second?.span ?? span,
      `The sides of \`${name}\` that begin at its corners ${fault.first + 1} and ${fault.second + 1} cross or touch`,
      {
        cure: 'Write the corners in the order in which its sides join them, once around',
        related: first === undefined ? [] : [{ span: first.span, message: 'The other side begins here' }],
      },
    ),
  );
  return false;
}

/** Seen along that axis along which they bound most. */
function flattened(places: readonly Place[]): readonly Corner[] {
  const views = [
    places.map(({ x, y }): Corner => [x.nominal, y.nominal]),
    places.map(({ y, z }): Corner => [y.nominal, z?.nominal ?? 0]),
    places.map(({ x, z }): Corner => [z?.nominal ?? 0, x.nominal]),
  ] as const;
  return views.reduce((best, view) => (Math.abs(doubleArea(view)) > Math.abs(doubleArea(best)) ? view : best), views[0]);
}
