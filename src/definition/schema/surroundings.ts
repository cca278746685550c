/**
 * `keep_out`, `movements` and `limits`: what stands around the linkage, how the engine moves in it, and from
 * which figure on a finding is raised.
 */
import type { KeepOut, Limit, LimitKey, Moved, Movement, Value } from '../definition.ts';
import type { Dimension } from '../dimensions.ts';
import { nearestWord } from '../names.ts';
import type { SourceNode } from '../source/tree.ts';
import { KIND_WORDS, kindNamed } from './declared.ts';
import { coordinates, direction, either, listOf, pair, place, shaped } from './places.ts';
import { polygon } from './polygon.ts';
import { keptPart } from './keptPart.ts';
import { mapOf, optional, record, required, type RecordSource } from './record.ts';
import { nameIsKnown, quantity, text } from './scalars.ts';
import { defined, named, problem, type Reading, type Shape } from './shape.ts';
import { shortened } from '../source/shortened.ts';

const keepOut: Shape<KeepOut> = record(
  {
    circle: optional(place(), { doc: 'Centre of a round obstacle.', example: '[140, 120]', vital: true }),
    radius: optional(quantity('length', { above: 0 }), { doc: 'Its radius.', example: '11 mm', vital: true }),
    polygon: optional(polygon('corners'), {
      doc: 'Corners of an obstacle with straight sides.',
      example: '[[60, 150], [260, 150], [260, 160], [60, 160]]',
      vital: true,
    }),
    clearance: optional(quantity('length', { least: 0 }), { doc: 'Distance to keep from it.', fallback: '0 mm', example: '3 mm' }),
    layer: optional(quantity('number', { whole: true }), { doc: 'The layer that it stands on.', fallback: 'all layers', example: '0' }),
    from: optional(quantity('length'), {
      doc: 'Where it begins along z; with `to`. What turns about another direction than z is held against it from there to `to`, whatever the layer; without both that is not checked. What turns about z is seen along z, and goes by layers alone.',
      example: '-20 mm',
    }),
    to: optional(quantity('length'), { doc: 'Where it ends along z; with `from`.', example: '35 mm' }),
  },
  ({ circle, radius, polygon, clearance, layer, from, to }, source, reading): KeepOut | undefined => {
    const extent = extentOf(from, to, source, reading);
    const common = { ...named(source.site), ...defined({ clearance, layer, extent }) };
    if (polygon !== undefined) return { ...common, shape: { kind: 'polygon', corners: polygon } };
    return circle === undefined || radius === undefined ? undefined : { ...common, shape: { kind: 'circle', centre: circle, radius } };
  },
  {
    choices: [
      {
        what: 'its shape',
        forms: [
          { name: 'circle', needs: ['circle', 'radius'], allows: [] },
          { name: 'polygon', needs: ['polygon'], allows: [] },
        ],
      },
    ],
  },
);

/** Undefined where one end is missing, or they do not rise: the keep-out then has no extent. */
function extentOf(from: Value | undefined, to: Value | undefined, source: RecordSource, reading: Reading): KeepOut['extent'] {
  if (from === undefined || to === undefined) {
    const [given, missing] = from === undefined ? (['to', 'from'] as const) : (['from', 'to'] as const);
    // An end that is written and could not be read, or is misspelt, has its own problem.
    const isMeant = source.has(missing) || source.node.entries.some(({ key }) => !ENDS.includes(key) && nearestWord(key, ENDS) === missing);
    if ((from ?? to) !== undefined && !isMeant) {
      reading.report(
        problem('missing-key', source.keySpan(given), `\`${given}\` has no \`${missing}\``, {
          cure: 'Write both ends along z, or none',
        }),
      );
    }
    return undefined;
  }
  if (from.nominal < to.nominal) return { from, to };
  reading.report(
    problem('out-of-range', to.span, '`to` must lie above `from`, or the keep-out has no extent along z', {
      cure: 'Write the lower end along z as `from`',
      related: [{ span: from.span, message: '`from` is here' }],
    }),
  );
  return undefined;
}

const ENDS: readonly string[] = ['from', 'to'];

/** The block `keep_out`. */
export const keepOuts = mapOf(keptPart(keepOut), 'obstacle');

const moved: Shape<Moved> = shaped(text('`lever`, `cable.leaves`, `cable.enters` or `spring.from`'), (written, node, _site, reading) =>
  findMoved(written, node, reading),
);

const movement: Shape<Movement> = record(
  {
    moves: required(listOf(moved, 'parts', 1), {
      doc: 'What moves with the engine: levers, housing ends (`cable.leaves`, `cable.enters`) and spring anchors (`spring.from`).',
      example: '[shaft, main.enters, second.from]',
    }),
    shift: optional(coordinates('a displacement'), {
      doc: 'How far it shifts.',
      fallback: 'not at all',
      example: '[0, 6, 0]',
      vital: true,
    }),
    turn: optional(quantity('angle'), {
      doc: 'How far it turns, by the right-hand rule about `axis`.',
      fallback: '0 deg',
      example: '2 deg',
      vital: true,
    }),
    about: optional(place(), { doc: 'A place on the axis about which it turns.', example: 'shaft_centre', vital: true }),
    axis: optional(direction(), {
      doc: 'Direction of the axis about which it turns.',
      fallback: '[0, 0, 1]',
      example: '[0, 0, 1]',
      vital: true,
    }),
  },
  ({ moves, shift, turn, about, axis }, source, reading): Movement | undefined => {
    if (shift === undefined && turn === undefined) {
      reading.report(
        problem('missing-key', source.site.nameSpan, `\`${source.site.name}\` moves nothing`, {
          cure: 'Write `shift: [x, y, z]`, or `turn` and `about`',
        }),
      );
      return undefined;
    }
    if (turn !== undefined && about === undefined) {
      reading.report(
        problem('missing-key', source.keySpan('turn'), '`turn` has no `about`', { cure: 'Write `about`, a place on the axis of the turn' }),
      );
      return undefined;
    }
    return { ...named(source.site), moves: moves.items, ...defined({ shift, turn, about, axis }) };
  },
);

/** The block `movements`. */
export const movements = mapOf(keptPart(movement), 'movement');

/** Whether the error lies below the warning. */
const LIMITS: Readonly<
  Record<
    LimitKey,
    { readonly dimension: Dimension; readonly falls: boolean; readonly doc: string; readonly fallback: string; readonly example: string }
  >
> = {
  transmission: {
    dimension: 'angle',
    falls: true,
    doc: 'Least transmission angle at a driven arm.',
    fallback: '[40 deg, 25 deg]',
    example: '[40 deg, 25 deg]',
  },
  drive: {
    dimension: 'angle',
    falls: true,
    doc: 'Least angle at a driving arm, through which the return springs push back.',
    fallback: '[20 deg, 10 deg]',
    example: '[20 deg, 10 deg]',
  },
  misalignment: {
    dimension: 'angle',
    falls: false,
    doc: "Greatest tilt of a rod's end.",
    fallback: 'by kind: rod end 12°, ball stud 15°, clevis 1°',
    example: '12 deg',
  },
  lead: {
    dimension: 'angle',
    falls: false,
    doc: "Greatest angle of a cable to its housing end's direction.",
    fallback: '[5 deg, 10 deg]',
    example: '[5 deg, 10 deg]',
  },
  step: {
    dimension: 'angle',
    falls: false,
    doc: 'Greatest difference in opening between shafts with plates.',
    fallback: '0.1° below 5° of opening, 0.5° above',
    example: '0.3 deg',
  },
  closing_margin: {
    dimension: 'number',
    falls: true,
    doc: 'Least closing torque over friction with any one spring off.',
    fallback: '[2, 1]',
    example: '[2, 1]',
  },
};

/** Keys of `limits`, in the order of the reference. */
export const LIMIT_KEYS = Object.keys(LIMITS) as readonly LimitKey[];

type ReadLimit = Omit<Limit, 'key'>;

function limit(key: LimitKey): Shape<Limit> {
  const { dimension, falls } = LIMITS[key];
  const figure = quantity(dimension, { least: 0 });
  const isList = (node: SourceNode): boolean => node.kind === 'list';
  const both = shaped(pair(figure, figure), ({ span, first: warning, second: error }, _node, site, reading): ReadLimit | undefined => {
    if (falls ? error.nominal <= warning.nominal : error.nominal >= warning.nominal) return { span, warning, error };
    reading.report(
      problem('out-of-range', error.span, `The error of \`${site.name}\` must lie ${falls ? 'below' : 'above'} its warning`, {
        cure: 'Write `[warning, error]`',
      }),
    );
    return undefined;
  });
  const one = shaped(figure, (warning: Value, node): ReadLimit => ({ span: node.span, warning }));
  return shaped(either([{ when: isList, shape: both }], one), (read): Limit => ({ key, ...read }));
}

function limitKey(key: LimitKey) {
  const { doc, fallback, example } = LIMITS[key];
  return optional(limit(key), { doc: `${doc} \`[warning, error]\`, or one figure for the warning.`, fallback, example });
}

/** The block `limits`, in file order. */
export const limits: Shape<readonly Limit[]> = record(
  {
    transmission: limitKey('transmission'),
    drive: limitKey('drive'),
    misalignment: limitKey('misalignment'),
    lead: limitKey('lead'),
    step: limitKey('step'),
    closing_margin: limitKey('closing_margin'),
  },
  (values, { node }) =>
    node.entries
      .flatMap((entry) => Object.values(values).filter((value) => value?.key === entry.key))
      .filter((value) => value !== undefined),
);

const CURE_MOVED = 'Write a lever, `cable.leaves`, `cable.enters` or `spring.from`';

function findMoved(written: string, node: SourceNode, reading: Reading): Moved | undefined {
  const span = node.span;
  const [owner = '', end] = written.split('.', 2);
  if (end === undefined) return nameIsKnown(owner, span, 'lever', reading) ? { kind: 'lever', lever: owner, span } : undefined;
  const kind = kindNamed(reading.declared, owner);
  if (kind === 'cable' && (end === 'leaves' || end === 'enters')) return { kind: 'cable-end', cable: owner, end, span };
  if (kind === 'spring' && end === 'from') return { kind: 'spring-anchor', spring: owner, span };
  if (kind === undefined) {
    const nearest = nearestWord(owner, [...reading.declared.parts.cable.keys(), ...reading.declared.parts.spring.keys()]);
    reading.report(
      problem('unknown-name', span, `There is no cable or spring \`${shortened(owner)}\``, {
        cure: nearest === undefined ? CURE_MOVED : `Did you mean \`${nearest}.${end}\`?`,
      }),
    );
    return undefined;
  }
  reading.report(
    problem('wrong-value', span, `\`${shortened(written)}\` cannot be moved: \`${owner}\` is ${KIND_WORDS[kind]}`, { cure: CURE_MOVED }),
  );
  return undefined;
}
