/**
 * `levers`: everything that turns about a fixed axis.
 */
import type { Arm, Axis, Drum, Lever, Place, Sense, Stops, Value } from '../definition.ts';
import type { SourceNode } from '../source/tree.ts';
import { direction, either, listOf, pair, place, shaped } from './places.ts';
import { polygon } from './polygon.ts';
import { keptPart } from './keptPart.ts';
import { mapOf, optional, record, required } from './record.ts';
import { choice, quantity } from './scalars.ts';
import { defined, named, problem, type Shape } from './shape.ts';

/** Turning sense, as seen with the lever's axis pointing at the viewer. */
export const sense: Shape<Sense> = choice<Sense>(
  {
    counterclockwise: 'positive, as seen with the axis pointing at the viewer',
    clockwise: 'negative, as seen with the axis pointing at the viewer',
  },
  { anticlockwise: 'counterclockwise', ccw: 'counterclockwise', cw: 'clockwise', positive: 'counterclockwise', negative: 'clockwise' },
);

const isMap = (node: SourceNode): boolean => node.kind === 'map';

const axis: Shape<Axis> = either<Axis>(
  [
    {
      when: isMap,
      shape: record(
        {
          through: required(place(), { doc: 'A second place on the axis; the axis points from the pivot to it.', example: 'second_point' }),
        },
        ({ through }): Axis => ({ kind: 'through', place: through }),
      ),
    },
  ],
  shaped(direction(), (value): Axis => ({ kind: 'direction', direction: value })),
);

const arm: Shape<Arm> = record(
  {
    radius: optional(quantity('length', { above: 0 }), { doc: 'Distance of the pin from the axis.', example: '40 mm', vital: true }),
    angle: optional(quantity('angle'), {
      doc: "Where the pin is drawn, counted from the lever's `reference` about its axis, counter-clockwise positive.",
      example: '160 deg',
      vital: true,
    }),
    offset: optional(quantity('length'), {
      doc: 'Where the pin stands along the axis, counted from the pivot in the direction of the axis.',
      fallback: '0 mm',
      example: '4 mm',
      vital: true,
    }),
    at: optional(place(), { doc: 'The drawn place of the pin, in place of radius and angle.', example: '[131, 18]', vital: true }),
    bolt: optional(direction(), {
      doc: "Direction of the bolt on which the rod's or cable's end sits.",
      fallback: "the lever's axis",
      example: '[0, 0, 1]',
    }),
  },
  ({ radius, angle, offset, at, bolt }, { site }): Arm | undefined => {
    const common = { ...named(site), ...defined({ bolt }) };
    if (at !== undefined) return { ...common, position: { kind: 'place', place: at } };
    if (radius === undefined || angle === undefined) return undefined;
    return { ...common, position: { kind: 'polar', radius, angle, ...defined({ offset }) } };
  },
  {
    choices: [
      {
        what: 'where its pin is',
        forms: [
          { name: 'polar', needs: ['radius', 'angle'], allows: ['offset'] },
          { name: 'drawn place', needs: ['at'], allows: [] },
        ],
      },
    ],
  },
);

const profile = shaped(
  listOf(pair(quantity('angle'), quantity('length', { above: 0 })), 'points `[opening, radius]`', 2),
  (value, _node, site, reading) => {
    const points = value.items.map(({ first, second }) => ({ opening: first, radius: second }));
    for (const [index, point] of points.entries()) {
      const before = points[index - 1];
      if (before === undefined || point.opening.nominal > before.opening.nominal) continue;
      reading.report(
        problem('out-of-range', point.opening.span, `The openings of \`${site.name}\` must rise from point to point`, {
          cure: 'Write the points in the order of their openings, each opening once',
          related: [{ span: before.opening.span, message: 'The point before is here' }],
        }),
      );
      return undefined;
    }
    return { span: value.span, points };
  },
);

const drum: Shape<Drum> = record(
  {
    radius: optional(quantity('length', { above: 0 }), {
      doc: 'Radius of a round drum, to the centreline of the inner cable.',
      example: '24 mm',
      vital: true,
    }),
    profile: optional(profile, {
      doc: "Effective radius against the lever's opening, for a drum that is not round: points `[opening, radius]` with rising openings, joined by a monotone cubic (PCHIP) and constant outside.",
      example: '[[0 deg, 18 mm], [40 deg, 24 mm], [80 deg, 33 mm]]',
      vital: true,
    }),
    wraps: required(sense, {
      doc: 'The way the drum turns when its cable is pulled; on a driving drum, the way it turns to take cable in.',
      example: 'clockwise',
    }),
    groove: optional(quantity('angle', { above: 0 }), {
      doc: 'Turn for which the groove holds the cable; beyond it the cable leaves its seat.',
      example: '110 deg',
    }),
  },
  ({ radius, profile: points, wraps, groove }, { site }): Drum | undefined => {
    const common = { ...named(site), wraps, ...defined({ groove }) };
    if (points !== undefined) return { ...common, form: { kind: 'profile', ...points } };
    return radius === undefined ? undefined : { ...common, form: { kind: 'round', radius } };
  },
  {
    choices: [
      {
        what: 'its radius',
        forms: [
          { name: 'round', needs: ['radius'], allows: [] },
          { name: 'profiled', needs: ['profile'], allows: [] },
        ],
      },
    ],
  },
);

const stops: Shape<Stops> = record(
  {
    closed: optional(quantity('angle'), {
      doc: "Opening at which the closed stop holds the lever. Without it only plates' levers (at 0) and the pedal (as drawn) have one.",
      example: '0 deg',
      vital: true,
    }),
    open: optional(quantity('angle'), { doc: 'Opening at which the open stop holds the lever.', example: '82 deg', vital: true }),
  },
  ({ closed, open }, { node }, reading): Stops | undefined => {
    if (closed !== undefined && open !== undefined && open.nominal <= closed.nominal) {
      reading.report(
        problem('out-of-range', open.span, 'The open stop must lie above the closed stop', {
          cure: 'Count both in terms of opening, which grows as the throttle opens',
          related: [{ span: closed.span, message: 'The closed stop is here' }],
        }),
      );
      return undefined;
    }
    return { span: node.span, ...defined({ closed, open }) };
  },
);

const bearing = record(
  {
    diameter: required(quantity('length', { above: 0 }), { doc: 'Diameter on which the bearing rubs.', example: '8 mm' }),
    friction: required(quantity('number', { least: 0 }), { doc: 'Coefficient of friction in the bearing.', example: '0.15' }),
  },
  (values) => values,
);

const lever: Shape<Lever> = record(
  {
    pivot: required(place(), { doc: 'A place on the axis, from which offsets are counted.', example: '[120, 40]' }),
    axis: optional(axis, {
      doc: 'Direction of the axis, or `{through: place}` for a second place on it. Turning is positive about it by the right-hand rule.',
      fallback: '[0, 0, 1]',
      example: '[0, 0, 1]',
      vital: true,
    }),
    reference: optional(direction(), {
      doc: 'Where the polar angles of its arms start; squared to the axis.',
      fallback: 'x, squared to the axis; y where the axis lies along x',
      example: '[1, 0, 0]',
      vital: true,
    }),
    opens: optional(sense, {
      doc: 'Its opening direction.',
      fallback: 'the sign of its greatest rotation over the travel',
      example: 'clockwise',
      vital: true,
    }),
    arms: optional(mapOf(arm, 'arm'), {
      doc: 'Its arms: pins for rods, cables, springs, forks and the foot, by name.',
      example: '{out: {radius: 36 mm, angle: 62 deg}}',
    }),
    drums: optional(mapOf(drum, 'drum'), {
      doc: 'Its drums: seats on which a cable winds, by name.',
      example: '{quadrant: {radius: 24 mm, wraps: clockwise}}',
    }),
    stops: optional(stops, { doc: 'Its stops, in terms of opening.', example: '{closed: 0 deg, open: 82 deg}', vital: true }),
    friction: optional(quantity('torque', { least: 0 }), {
      doc: 'Torque of seal and grease that holds it back.',
      fallback: '0 N*mm',
      example: '15 N*mm',
    }),
    bearing: optional(bearing, { doc: 'Its bearing, whose friction grows with the load.', example: '{diameter: 8 mm, friction: 0.15}' }),
    inertia: optional(quantity('inertia', { least: 0 }), {
      doc: 'Moment of inertia about its axis, with all that turns with it.',
      example: '95 kg*mm^2',
    }),
    width: optional(quantity('length', { above: 0 }), { doc: "Width of its arms' outline.", example: '12 mm' }),
    outline: optional(polygon('places'), {
      doc: 'Its drawn outline, corner by corner, where its arms alone do not describe it.',
      example: '[[100, 30], [140, 30], [120, 70]]',
    }),
    layer: optional(quantity('number', { whole: true }), {
      doc: 'Outlines on one layer can touch each other.',
      fallback: '0',
      example: '1',
    }),
  },
  (values, source, reading): Lever | undefined => {
    const { pivot, axis: line, arms, drums } = values;
    if (line?.kind === 'through' && samePlace(pivot, line.place)) {
      reading.report(
        problem('out-of-range', source.valueSpan('axis'), 'The axis runs through two places that are the same', {
          cure: 'Give a place other than the pivot',
        }),
      );
      return undefined;
    }
    const { reference, opens, stops: ends, friction, bearing: bush, inertia, width, outline, layer } = values;
    return {
      ...named(source.site),
      pivot,
      arms: arms ?? [],
      drums: drums ?? [],
      ...defined({ axis: line, reference, opens, stops: ends, friction, bearing: bush, inertia, width, outline, layer }),
    };
  },
);

/** The block `levers`. */
export const levers = mapOf(keptPart(lever), 'lever');

function samePlace(a: Place, b: Place): boolean {
  const z = (value: Value | undefined): number => value?.nominal ?? 0;
  return a.x.nominal === b.x.nominal && a.y.nominal === b.y.nominal && z(a.z) === z(b.z);
}
