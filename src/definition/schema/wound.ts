/**
 * What springs are wound from: round `wire` that is coiled, and flat `strip` of spirals.
 */
import type { Spring, Strip, StripMaterial, Value, Wire, WireMaterial } from '../definition.ts';
import { optional, record, required } from './record.ts';
import { choice, quantity } from './scalars.ts';
import { defined, problem, type Reading, type Shape } from './shape.ts';

const wireMaterial = choice<WireMaterial>(
  {
    music_wire: 'music wire, ASTM A228',
    hard_drawn: 'hard-drawn carbon steel, ASTM A227',
    oil_tempered: 'oil-tempered carbon steel, ASTM A229',
    chrome_vanadium: 'chrome-vanadium steel, ASTM A232',
    chrome_silicon: 'chrome-silicon steel, ASTM A401',
    stainless_302: 'stainless steel 302, ASTM A313',
  },
  { piano_wire: 'music_wire', stainless: 'stainless_302' },
);

/** Of springs of any kind; what belongs to one kind only is held against it by `isOfKind`. */
export const wire: Shape<Wire> = record(
  {
    diameter: required(quantity('length', { above: 0 }), { doc: 'Diameter of the wire.', example: '2 mm' }),
    mean_coil: required(quantity('length', { above: 0 }), {
      doc: 'Mean diameter of the coil, from wire centre to wire centre, without load; three times the wire at least.',
      example: '18 mm',
    }),
    active_turns: required(quantity('number', { above: 0 }), {
      doc: 'Turns that give way. Torsion spring: turns of the coil, and the length of both legs / (3 π mean coil) more. Extension spring with full hooks: turns of the coil, and G/E, about 0.4, more.',
      example: '5.25',
    }),
    material: required(wireMaterial, { doc: 'Its material.', example: 'music_wire' }),
    total_turns: optional(quantity('number', { above: 0 }), {
      doc: 'Of a compression spring, its turns with those at the ends: times the diameter of the wire its length when turn lies on turn. Where the ends are not ground, one more.',
      example: '8',
      vital: true,
    }),
    arbor: optional(quantity('length', { above: 0 }), {
      doc: 'Of a torsion spring, the diameter of what stands in its coil. It is taken to wind up, and so to narrow, as it is loaded.',
      example: '12 mm',
      vital: true,
    }),
    hook_bend: optional(quantity('length', { above: 0 }), {
      doc: 'Of an extension spring, the mean radius of the bend by which the wire leaves the coil into its hook.',
      example: '3 mm',
      vital: true,
    }),
  },
  (values, { node, valueSpan }, reading): Wire | undefined => {
    const { diameter, mean_coil: meanCoil, active_turns: activeTurns, material } = values;
    const { total_turns: totalTurns, arbor, hook_bend: hookBend } = values;
    const isWindable = isWide(diameter, meanCoil, reading) && isClear(arbor, diameter, meanCoil, reading);
    const bends = hookBend === undefined || isBent(hookBend, diameter, reading);
    const turns = totalTurns === undefined || isEnough(totalTurns, activeTurns, reading);
    if (!isWindable || !bends || !turns) return undefined;
    return {
      span: node.span,
      diameter,
      meanCoil,
      activeTurns,
      material: { name: material, span: valueSpan('material') },
      ...defined({ totalTurns, arbor, hookBend }),
    };
  },
);

/** Flat strip of a spiral spring. */
export const strip: Shape<Strip> = record(
  {
    width: required(quantity('length', { above: 0 }), { doc: 'Width of the strip.', example: '6 mm' }),
    thickness: required(quantity('length', { above: 0 }), { doc: 'Thickness of the strip.', example: '0.8 mm' }),
    length: required(quantity('length', { above: 0 }), { doc: 'Length that bends, along the strip.', example: '600 mm' }),
    material: required(
      choice<StripMaterial>({
        carbon_steel: 'carbon spring steel, E = 207 GPa',
        stainless_301: 'stainless steel 301, E = 193 GPa',
      }),
      { doc: 'Its material.', example: 'carbon_steel' },
    ),
  },
  ({ width, thickness, length, material }, { node }): Strip => ({ span: node.span, width, thickness, length, material }),
);

/** Whether all that is said of a wire can be said of a spring of that kind; reports the first that cannot. */
export function isOfKind(of: Wire | undefined, kind: Spring['kind'], reading: Reading): boolean {
  if (of === undefined) return true;
  const owned: readonly (readonly [key: string, value: Value | undefined, owner: Spring['kind']])[] = [
    ['total_turns', of.totalTurns, 'compression'],
    ['arbor', of.arbor, 'torsion'],
    ['hook_bend', of.hookBend, 'extension'],
  ];
  for (const [key, value, owner] of owned) {
    if (value === undefined || owner === kind) continue;
    const message = `\`${key}\` is of ${ARTICLE[owner]} spring, and this is ${ARTICLE[kind]} spring`;
    reading.report(problem('wrong-shape', value.span, message, { cure: `Remove \`${key}\`` }));
    return false;
  }
  return true;
}

const ARTICLE: Readonly<Record<Spring['kind'], string>> = {
  torsion: 'a torsion',
  extension: 'an extension',
  compression: 'a compression',
};

/** Least mean coil of cold-wound springs, in diameters of the wire; common practice, no source. */
const LEAST_INDEX = 3;
/** Relative; what is just as wide is wide enough, however it was rounded. */
const ROUNDING = 1e-12;

function isWide(diameter: Value, meanCoil: Value, reading: Reading): boolean {
  const related = [{ span: diameter.span, message: 'The wire is here' }];
  if (meanCoil.nominal <= diameter.nominal) {
    reading.report(
      problem('out-of-range', meanCoil.span, 'The mean coil diameter must be greater than the wire', {
        cure: 'Measure the coil from wire centre to wire centre',
        related,
      }),
    );
    return false;
  }
  const index = meanCoil.nominal / diameter.nominal;
  if (index >= LEAST_INDEX * (1 - ROUNDING)) return true;
  reading.report(
    problem(
      'out-of-range',
      meanCoil.span,
      `The mean coil diameter is ${Number(index.toPrecision(3))} times the wire: springs are not wound tighter than ${LEAST_INDEX} times`,
      { cure: 'Measure the coil from wire centre to wire centre', related },
    ),
  );
  return false;
}

function isClear(arbor: Value | undefined, diameter: Value, meanCoil: Value, reading: Reading): boolean {
  if (arbor === undefined || arbor.nominal < meanCoil.nominal - diameter.nominal) return true;
  reading.report(
    problem('out-of-range', arbor.span, 'The arbor does not go into the coil', {
      cure: 'It must be thinner than the mean coil less the wire',
      related: [{ span: meanCoil.span, message: 'The coil is here' }],
    }),
  );
  return false;
}

function isBent(hookBend: Value, diameter: Value, reading: Reading): boolean {
  if (hookBend.nominal > diameter.nominal / 2) return true;
  reading.report(
    problem('out-of-range', hookBend.span, 'The mean radius of the bend must be greater than half the wire', {
      cure: 'Measure to the centre of the wire',
      related: [{ span: diameter.span, message: 'The wire is here' }],
    }),
  );
  return false;
}

function isEnough(totalTurns: Value, activeTurns: Value, reading: Reading): boolean {
  if (totalTurns.nominal >= activeTurns.nominal * (1 - ROUNDING)) return true;
  reading.report(
    problem('out-of-range', totalTurns.span, 'There are fewer turns in all than turns that give way', {
      cure: 'Count the turns at the ends too',
      related: [{ span: activeTurns.span, message: 'The turns that give way are here' }],
    }),
  );
  return false;
}
