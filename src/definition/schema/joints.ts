/**
 * `cables`, `rods`, `slots` and `couplings`: what carries the motion from one lever to the next.
 */
import type { Cable, Coupling, Rod, RodEnds, Slot } from '../definition.ts';
import type { Span } from '../span.ts';
import { direction, place, range } from './places.ts';
import { keptPart } from './keptPart.ts';
import { mapOf, optional, record, required, type RecordSource } from './record.ts';
import { choice, flag, part, quantity, reference } from './scalars.ts';
import { defined, named, problem, type Reading, type Shape } from './shape.ts';

const cable: Shape<Cable> = record(
  {
    from: optional(part(['arm', 'drum']), {
      doc: 'Pin or drum that pulls it. Left out only where the pedal is this cable.',
      example: 'pedal.clevis',
      vital: true,
    }),
    leaves: optional(place(), {
      doc: 'Where it enters its housing at the driving side. Left out only where the pedal is this cable.',
      example: '[30, 66]',
      vital: true,
    }),
    enters: required(place(), { doc: 'Where it comes out of its housing at the driven side.', example: '[90, 95]' }),
    leaves_along: optional(direction(), {
      doc: 'The way the housing end at `leaves` points, from the housing to the free inner cable.',
      example: '[1, 0.1]',
    }),
    enters_along: optional(direction(), {
      doc: 'The way the housing end at `enters` points, from the housing to the free inner cable.',
      example: '[1, -0.8]',
    }),
    to: required(part(['arm', 'drum']), { doc: 'Pin or drum that it pulls.', example: 'bellcrank.cable' }),
    slack: optional(quantity('length', { least: 0 }), {
      doc: 'Free length to be taken in before it pulls, as drawn.',
      fallback: '0 mm',
      example: '1 mm',
      vital: true,
    }),
    bend: optional(quantity('angle', { least: 0 }), { doc: 'Total bend of its housing.', example: '180 deg' }),
    friction: optional(quantity('number', { least: 0 }), {
      doc: 'Coefficient of friction between inner cable and housing.',
      example: '0.12',
    }),
    stiffness: optional(quantity('linear-rate', { above: 0 }), {
      doc: 'Stiffness of inner cable and housing together.',
      example: '50 N/mm',
    }),
    diameter: optional(quantity('length', { above: 0 }), {
      doc: 'Outer diameter of the inner cable where it runs free between housing end and pin or drum: with it the free ends are held against keep-outs.',
      example: '1.5 mm',
    }),
  },
  (values, source, reading): Cable | undefined => {
    const {
      from,
      leaves,
      enters,
      to,
      leaves_along: leavesAlong,
      enters_along: entersAlong,
      slack,
      bend,
      friction,
      stiffness,
      diameter,
    } = values;
    const rest = {
      ...named(source.site),
      enters,
      to,
      ...defined({ leavesAlong, entersAlong, slack, bend, friction, stiffness, diameter }),
    };
    if (reading.pedalCable === source.site.name) return pedalCableIsBare(source, reading) ? rest : undefined;
    const missing = ['from', 'leaves'].filter((key) => !source.has(key));
    if (missing.length > 0) {
      const lost = missing.map((key) => `\`${key}\``).join(' and ');
      reading.report(
        problem('missing-key', source.site.nameSpan, `\`${source.site.name}\` has no ${lost}`, {
          cure: `Write ${lost}, or name the cable in \`pedal\` where the pedal itself is not known`,
        }),
      );
      return undefined;
    }
    if (from === undefined || leaves === undefined) return undefined;
    return twoLevers(from, to, source, reading) ? { ...rest, from, leaves } : undefined;
  },
);

/** The block `cables`. */
export const cables = mapOf(keptPart(cable), 'cable');

const adjust = record(
  {
    min: optional(quantity('length', { above: 0 }), { doc: 'Shortest it can be set.', example: '69 mm' }),
    max: optional(quantity('length', { above: 0 }), { doc: 'Longest it can be set.', example: '75 mm' }),
    pitch: optional(quantity('length', { above: 0 }), { doc: 'Length gained per turn.', example: '1 mm' }),
  },
  ({ min, max, pitch }, { node }, reading): Rod['adjust'] => {
    if (min !== undefined && max !== undefined && min.nominal > max.nominal) {
      reading.report(
        problem('out-of-range', min.span, '`min` is greater than `max`', {
          cure: 'Exchange the two',
          related: [{ span: max.span, message: '`max` is here' }],
        }),
      );
      return undefined;
    }
    return { span: node.span, ...defined({ min, max, pitch }) };
  },
);

const ends: Shape<RodEnds> = record(
  {
    kind: required(
      choice({
        rod_end: 'spherical bearing on a bolt; tilts a little, turns about the bolt',
        ball_stud: 'ball in a socket',
        clevis: 'fork and pin; tilts hardly at all',
      }),
      { doc: 'What its two ends are.', example: 'rod_end' },
    ),
    misalignment: optional(quantity('angle', { above: 0, most: 90 }), {
      doc: 'Tilt that an end can take.',
      fallback: 'by kind, see the limits',
      example: '12 deg',
    }),
    pin: optional(quantity('length', { above: 0 }), { doc: 'Diameter of the pin or ball on which an end rubs.', example: '6 mm' }),
    friction: optional(quantity('number', { least: 0 }), { doc: 'Coefficient of friction in an end.', example: '0.1' }),
    play: optional(quantity('length', { least: 0 }), { doc: 'Play of one end.', fallback: '0 mm', example: '0.02 mm' }),
  },
  ({ kind, misalignment, pin, friction, play }, { node }): RodEnds => ({
    span: node.span,
    kind,
    ...defined({ misalignment, pin, friction, play }),
  }),
);

const rod: Shape<Rod> = record(
  {
    from: required(part(['arm']), { doc: 'The driving pin.', example: 'bellcrank.out' }),
    to: required(part(['arm']), { doc: 'The driven pin.', example: 'shaft.arm' }),
    length: optional(quantity('length', { above: 0 }), {
      doc: 'Distance between its pins.',
      fallback: 'as drawn',
      example: '71.5 mm',
      vital: true,
    }),
    adjust: optional(adjust, { doc: 'How far and how finely its length can be set.', example: '{min: 69 mm, max: 75 mm, pitch: 1 mm}' }),
    lost: optional(quantity('length', { least: 0 }), {
      doc: 'Free play end to end: it pulls at its length and pushes at its length less this.',
      fallback: '0 mm',
      example: '0.5 mm',
      vital: true,
    }),
    ends: optional(ends, { doc: 'Its ends.', example: '{kind: rod_end, misalignment: 12 deg}' }),
    width: optional(quantity('length', { above: 0 }), { doc: 'Width of its outline.', example: '8 mm' }),
  },
  ({ from, to, length, adjust: setting, lost, ends: joints, width }, source, reading): Rod | undefined => {
    if (!twoLevers(from, to, source, reading)) return undefined;
    return { ...named(source.site), from, to, ...defined({ length, adjust: setting, lost, ends: joints, width }) };
  },
);

/** The block `rods`. */
export const rods = mapOf(keptPart(rod), 'rod');

const slot: Shape<Slot> = record(
  {
    pin: required(part(['arm']), { doc: 'The pin that runs in the fork.', example: 'bellcrank.tang' }),
    fork: required(reference('lever'), { doc: 'The lever that carries the fork.', example: 'idler' }),
    drives: optional(choice({ fork: 'the pin turns the forked lever', pin: "the forked lever turns the pin's lever" }), {
      doc: 'Which of the two is driven.',
      fallback: 'fork',
      example: 'fork',
      vital: true,
    }),
    angle: required(quantity('angle'), {
      doc: "Direction of the fork's centreline as drawn, from the forked lever's `reference`.",
      example: '92 deg',
    }),
    offset: optional(quantity('length'), {
      doc: "Distance of the centreline from the fork's pivot, positive to the left of its direction as seen with the axis pointing at the viewer.",
      fallback: '0 mm',
      example: '2 mm',
      vital: true,
    }),
    reach: optional(range(quantity('length'), 'not falling'), {
      doc: "Where along the fork the slot begins and ends, from the foot of its pivot's perpendicular.",
      example: '[12 mm, 30 mm]',
    }),
    play: optional(quantity('length', { least: 0 }), { doc: 'Play of the pin in the slot.', fallback: '0 mm', example: '0.1 mm' }),
    friction: optional(quantity('number', { least: 0 }), { doc: 'Coefficient of friction between pin and slot.', example: '0.15' }),
  },
  ({ pin, fork, drives, angle, offset, reach, play, friction }, source, reading): Slot | undefined => {
    if (pin.lever === fork.name) {
      reading.report(
        problem('wrong-value', fork.span, `The pin \`${pin.lever}.${pin.part}\` is part of the forked lever itself`, {
          cure: 'Name the fork of one lever and a pin of another',
          related: [{ span: pin.span, message: 'The pin is named here' }],
        }),
      );
      return undefined;
    }
    const length = reach === undefined ? undefined : { span: reach.span, min: reach.from, max: reach.to };
    return { ...named(source.site), pin, fork, drives: drives ?? 'fork', angle, ...defined({ offset, reach: length, play, friction }) };
  },
);

/** The block `slots`. */
export const slots = mapOf(keptPart(slot), 'slot');

const coupling: Shape<Coupling> = record(
  {
    from: required(reference('lever'), { doc: 'The driving lever.', example: 'shaft' }),
    to: required(reference('lever'), { doc: 'The driven lever.', example: 'rotor' }),
    ratio: optional(quantity('number', { notZero: true }), {
      doc: 'Rotation of the driven lever over rotation of the driving one.',
      fallback: '1',
      example: '-1',
      vital: true,
    }),
    lag: optional(quantity('angle', { least: 0 }), {
      doc: 'Rotation of the driving lever before it takes the driven one along.',
      fallback: '0 deg',
      example: '2 deg',
      vital: true,
    }),
    one_way: optional(flag(), {
      doc: 'Whether it only pushes open; the way back is left to the springs of the driven lever.',
      fallback: 'false',
      example: 'true',
      vital: true,
    }),
  },
  ({ from, to, ratio, lag, one_way: oneWay }, source, reading): Coupling | undefined => {
    if (from.name === to.name) {
      reading.report(
        problem('wrong-value', to.span, `\`${source.site.name}\` couples \`${to.name}\` to itself`, { cure: 'Name two levers' }),
      );
      return undefined;
    }
    return { ...named(source.site), from, to, oneWay: oneWay ?? false, ...defined({ ratio, lag }) };
  },
);

/** The block `couplings`. */
export const couplings = mapOf(keptPart(coupling), 'coupling');

function pedalCableIsBare(source: RecordSource, reading: Reading): boolean {
  const extra = ['from', 'leaves', 'leaves_along'].filter((key) => source.has(key));
  for (const key of extra) {
    reading.report(
      problem('wrong-shape', source.keySpan(key), `\`${source.site.name}\` is the pedal here, so it has no \`${key}\``, {
        cure: `Remove \`${key}\`, or describe the pedal as a lever`,
      }),
    );
  }
  return extra.length === 0;
}

function twoLevers(
  from: { lever: string; span: Span },
  to: { lever: string; span: Span },
  source: RecordSource,
  reading: Reading,
): boolean {
  if (from.lever !== to.lever) return true;
  reading.report(
    problem('wrong-value', to.span, `\`${source.site.name}\` has both ends on \`${to.lever}\``, {
      cure: 'Join two levers',
      related: [{ span: from.span, message: 'The other end is here' }],
    }),
  );
  return false;
}
