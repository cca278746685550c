/**
 * `springs`: torsion springs about a lever's axis, and springs stretched or pressed between two places.
 */
import type { Spring, SpringAnchor } from '../definition.ts';
import type { SourceNode } from '../source/tree.ts';
import { either, place, shaped } from './places.ts';
import { keptPart } from './keptPart.ts';
import { mapOf, optional, record, required } from './record.ts';
import { choice, flag, part, quantity, reference } from './scalars.ts';
import { isOfKind, strip, wire } from './wound.ts';
import { defined, named, problem, type Shape } from './shape.ts';

const isPart = (node: SourceNode): boolean => node.kind === 'scalar' && node.text.includes('.');

const anchor: Shape<SpringAnchor> = either<SpringAnchor>(
  [{ when: isPart, shape: shaped(part(['arm']), (pin): SpringAnchor => ({ kind: 'pin', pin })) }],
  shaped(place(), (value): SpringAnchor => ({ kind: 'place', place: value })),
);

/** The rate's dimension depends on the kind of spring, which the other keys decide. */
const rate = {
  torsional: quantity('torsional-rate', { above: 0 }),
  linear: quantity('linear-rate', { above: 0 }),
};

const isLinear = (node: SourceNode): boolean => node.kind === 'map' && node.entries.some((entry) => LINEAR_KEYS.has(entry.key));
const LINEAR_KEYS: ReadonlySet<string> = new Set(['from', 'to', 'kind', 'free_length', 'initial_tension']);

const common = {
  wire: optional(wire, {
    doc: 'The wire from which its rate follows, in place of `rate`.',
    example: '{diameter: 2 mm, mean_coil: 18 mm, active_turns: 5.25, material: music_wire}',
    vital: true,
  }),
  counts_as_return: optional(flag(), {
    doc: 'Whether it counts as one of the springs that must close the throttle.',
    fallback: 'true',
    example: 'false',
  }),
};

const form = (key: string) => ({ name: key, needs: [key], allows: [] });
const rateChoice = { what: 'its rate', forms: [form('rate'), form('wire')] };
const torsionalChoice = { what: 'its rate', forms: [...rateChoice.forms, form('strip')] };

const torsion: Shape<Spring> = record(
  {
    lever: required(reference('lever'), { doc: 'The lever about whose axis it works.', example: 'shaft' }),
    rate: optional(rate.torsional, { doc: 'Torque per angle.', example: '2.4 N*mm/deg', vital: true }),
    preload: optional(quantity('torque'), {
      doc: 'Closing torque in the drawn position.',
      fallback: '0 N*mm',
      example: '180 N*mm',
      vital: true,
    }),
    ...common,
    strip: optional(strip, {
      doc: 'The flat strip of a spiral spring, both ends held against turning, from which its rate follows, in place of `rate`.',
      example: '{width: 6 mm, thickness: 0.8 mm, length: 600 mm, material: carbon_steel}',
      vital: true,
    }),
  },
  (values, { site }, reading): Spring | undefined => {
    const { lever, rate: stiffness, preload, wire: coil, strip: flat, counts_as_return: counts } = values;
    if (!isOfKind(coil, 'torsion', reading)) return undefined;
    const given = defined({ rate: stiffness, preload, wire: coil, strip: flat });
    return { ...named(site), kind: 'torsion', lever, countsAsReturn: counts ?? true, ...given };
  },
  { choices: [torsionalChoice] },
);

const linear: Shape<Spring> = record(
  {
    from: required(anchor, { doc: 'Its fixed end: a place, or a pin.', example: '[150, 10]' }),
    to: required(part(['arm']), { doc: 'The pin on which it works.', example: 'shaft.spring_arm' }),
    kind: optional(choice({ extension: 'pulls its ends together', compression: 'presses its ends apart' }), {
      doc: 'Which way it works.',
      fallback: 'extension',
      example: 'compression',
      vital: true,
    }),
    rate: optional(rate.linear, { doc: 'Force per length.', example: '0.9 N/mm', vital: true }),
    free_length: optional(quantity('length', { above: 0 }), {
      doc: 'Its length without load, from end to end.',
      example: '46 mm',
      vital: true,
    }),
    initial_tension: optional(quantity('force', { least: 0 }), {
      doc: 'Force at which an extension spring begins to open.',
      fallback: '0 N',
      example: '4 N',
      vital: true,
    }),
    ...common,
  },
  (values, source, reading): Spring | undefined => {
    const {
      from,
      to,
      kind,
      rate: stiffness,
      free_length: freeLength,
      initial_tension: initialTension,
      wire: coil,
      counts_as_return: counts,
    } = values;
    if (from.kind === 'pin' && from.pin.lever === to.lever) {
      reading.report(
        problem('wrong-value', to.span, `\`${source.site.name}\` has both ends on \`${to.lever}\``, {
          cure: 'Hang one end on a place or another lever',
        }),
      );
      return undefined;
    }
    if (kind === 'compression' && initialTension !== undefined) {
      reading.report(
        problem('wrong-shape', source.keySpan('initial_tension'), 'A compression spring has no initial tension', {
          cure: 'Remove `initial_tension`',
        }),
      );
      return undefined;
    }
    if (!isOfKind(coil, kind ?? 'extension', reading)) return undefined;
    return {
      ...named(source.site),
      kind: kind ?? 'extension',
      from,
      to,
      countsAsReturn: counts ?? true,
      ...defined({ rate: stiffness, freeLength, initialTension, wire: coil }),
    };
  },
  { choices: [rateChoice] },
);

const SPRING_KEYS: ReadonlySet<string> = new Set(
  [torsion, linear].flatMap(({ about }) => (about.kind === 'record' ? Object.keys(about.keys) : [])),
);

/** Keys of the other kind of spring, said as such and not as unknown words. */
const spring: Shape<Spring> = {
  about: { kind: 'either', forms: [torsion.about, linear.about] },
  read(node, site, reading) {
    if (node.kind !== 'map') return torsion.read(node, site, reading);
    const has = (key: string) => node.entries.find((entry) => entry.key === key);
    const ofTorsion = has('lever') ?? has('preload');
    const ofLinear = node.entries.find((entry) => LINEAR_KEYS.has(entry.key));
    if (ofTorsion !== undefined && ofLinear !== undefined) {
      reading.report(
        problem(
          'wrong-shape',
          ofLinear.keySpan,
          `\`${ofLinear.key}\` does not go with \`${ofTorsion.key}\`: a spring either turns about a lever or works between two places`,
          {
            cure: 'Write `lever`, `rate` and `preload`, or `from`, `to`, `rate` and `free_length`',
            related: [{ span: ofTorsion.keySpan, message: `\`${ofTorsion.key}\` is here` }],
          },
        ),
      );
      return undefined;
    }
    // What is only misspelt is told as that.
    const isAllKnown = node.entries.every(({ key }) => SPRING_KEYS.has(key));
    if (ofTorsion === undefined && ofLinear === undefined && isAllKnown && !node.damaged) {
      reading.report(
        problem('missing-key', site.nameSpan, `\`${site.name}\` does not say on what it works`, {
          cure: 'Write `lever`, or `from` and `to`',
        }),
      );
      return undefined;
    }
    return (isLinear(node) ? linear : torsion).read(node, site, reading);
  },
};

/** The block `springs`. */
export const springs = mapOf(keptPart(spring), 'spring');
