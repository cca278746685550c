/**
 * `plates` and `sensors`: what the linkage moves and what reports it.
 */
import type { Plates, Sensor } from '../definition.ts';
import { range } from './places.ts';
import { keptPart } from './keptPart.ts';
import { mapOf, optional, record, required } from './record.ts';
import { flag, quantity, reference } from './scalars.ts';
import { defined, named, problem, type Shape } from './shape.ts';

/** More plates than any engine has on one shaft; beyond it a figure is mistyped. */
const MOST_PLATES = 100;

const plateSet: Shape<Plates> = record(
  {
    lever: required(reference('lever'), { doc: 'The lever, mostly a shaft, on which they sit.', example: 'shaft' }),
    count: optional(quantity('number', { least: 1, most: MOST_PLATES, whole: true }), {
      doc: 'How many there are.',
      fallback: '1',
      example: '4',
    }),
    bore: required(quantity('length', { above: 0 }), { doc: 'Diameter of the bore.', example: '45 mm' }),
    shaft: optional(quantity('length', { least: 0 }), {
      doc: 'Diameter of the shaft, whose shadow takes area away.',
      fallback: '0 mm',
      example: '8 mm',
    }),
    seat: optional(quantity('angle', { least: 0, below: 90 }), {
      doc: 'Angle from square to the bore at which a plate seats.',
      fallback: '0 deg',
      example: '6 deg',
    }),
    idle: optional(quantity('angle', { least: 0, below: 90 }), {
      doc: 'Angle by which the idle stop holds it off its seat.',
      fallback: '0 deg',
      example: '1.5 deg',
    }),
    vacuum: optional(quantity('pressure', { least: 0 }), { doc: 'Pressure difference across the closed plate.', example: '70 kPa' }),
  },
  ({ lever, count, bore, shaft, seat, idle, vacuum }, { site }, reading): Plates | undefined => {
    if (shaft !== undefined && shaft.nominal >= bore.nominal) {
      reading.report(
        problem('out-of-range', shaft.span, 'The shaft must be thinner than the bore', {
          cure: 'Write both as diameters',
          related: [{ span: bore.span, message: 'The bore is here' }],
        }),
      );
      return undefined;
    }
    return { ...named(site), lever, bore, ...defined({ count, shaft, seat, idle, vacuum }) };
  },
);

/** The block `plates`. */
export const plates = mapOf(keptPart(plateSet), 'set of plates');

const sensor: Shape<Sensor> = record(
  {
    lever: required(reference('lever'), { doc: 'The lever that turns its rotor.', example: 'shaft' }),
    at_closed: required(quantity('angle'), { doc: 'Its angle in the drawn position.', example: '14 deg' }),
    reversed: optional(flag(), { doc: 'Whether its angle falls as the lever opens.', fallback: 'false', example: 'true', vital: true }),
    range: required(range(quantity('angle'), 'rising'), {
      doc: 'Angles between which its signal is linear; it is held outside them.',
      example: '[0 deg, 110 deg]',
    }),
    signal: required(range(quantity('voltage'), 'different'), {
      doc: 'Signal at the two ends of `range`; it may fall.',
      example: '[0.5 V, 4.5 V]',
    }),
    mechanical: optional(range(quantity('angle'), 'rising'), {
      doc: 'Angles at which it hits its own stops.',
      example: '[-5 deg, 115 deg]',
    }),
    supply: optional(quantity('voltage', { above: 0 }), { doc: 'Its supply.', example: '5 V' }),
    bits: optional(quantity('number', { least: 1, most: 32, whole: true }), { doc: 'Bits of the converter that reads it.', example: '10' }),
  },
  ({ lever, at_closed: atClosed, reversed, range: span, signal, mechanical, supply, bits }, { site }): Sensor => ({
    ...named(site),
    lever,
    atClosed,
    reversed: reversed ?? false,
    range: span,
    signal,
    ...defined({ mechanical, supply, bits }),
  }),
);

/** The block `sensors`. */
export const sensors = mapOf(keptPart(sensor), 'sensor');
