/**
 * What has to be brought back: the inertia of each lever about its axis and the mass of each rod.
 *
 * A lever's is as the file gives it, with all that turns with it. Where the file gives none:
 *     outline   J = ρ t Σ (a × b)(a·a + a·b + b·b)/12 over its edges from a to b, seen along the axis from the pivot
 *     arms      m (r²/3 + w²/12), a bar of width w from the pivot to the pin; drums ½ m r²
 *     plates    m D²/16, a disc about its diameter
 * (moments of inertia of a polygon, a bar and a disc: any mechanics book, from memory). Thicknesses and materials are put in and told.
 * Hubs, bolts, shafts, rod ends, springs and the inner of a cable are left out, and a rod is a slender bar.
 */
import type { Build } from '../../kinematics/build.ts';
import type { LeverModel, RodJoint } from '../../kinematics/model.ts';
import type { PlatesModel } from '../../kinematics/attached.ts';
import { cross, dot, minus, size, vectorAt, type Vector } from '../../numeric/vector.ts';
import type { Assumption } from './assumed.ts';

export interface Inertias {
  /** By lever, kg·m². */
  readonly levers: Float64Array;
  /** By joint index, kg; 0 for what is no rod. */
  readonly rods: Float64Array;
  /** At the pedal's end of its cable, kg: of a pedal that is only a cable; else 0. */
  readonly pedal: number;
  readonly assumed: readonly Assumption[];
}

/** Common practice for brackets and pedals cut from sheet, no source. */
const SHEET = { thickness: 5e-3, density: 7850, words: 'steel 5 mm thick' };
/** m: of an arm whose width is not given. Common practice, no source. */
const USUAL_WIDTH = 12e-3;
/** Common practice for plates, no source. */
const PLATE = { thickness: 2e-3, density: 8500, words: 'brass 2 mm thick' };
/** m: of a rod whose width is not given. Common practice, no source. */
const USUAL_ROD = 6e-3;
/**
 * A pedal that the file does not describe is taken for a bar of the sheet above, with the pad at its end: m, from its pivot to the pad, and
 * pad travel over cable travel where that is not given either. Common practice, no source.
 */
const PEDAL = { length: 0.25, ratio: 4 };
/** kg·m²: less than any lever has; it stands in for none at all, which no motion could be computed with. */
const LEAST_INERTIA = 1e-9;

export function inertiasOf(build: Build, isLost: (name: string) => boolean): Inertias {
  const { mechanism } = build;
  const assumed: Assumption[] = [];
  const levers = Float64Array.from(mechanism.levers, (lever) => leverInertia(build, lever, assumed));
  const rods = Float64Array.from(mechanism.joints, (joint) =>
    joint.kind === 'rod' && !isLost(joint.name) ? rodMass(build, joint, assumed) : 0,
  );
  const pedal = mechanism.drive.kind === 'cable' ? pedalMass(build, assumed) : 0;
  return { levers, rods, pedal, assumed };
}

function leverInertia(build: Build, lever: LeverModel, assumed: Assumption[]): number {
  const { source, name } = lever;
  const given = source.inertia?.nominal;
  const tell = (value: number, text: string, kind: Assumption['kind'] = 'lever-inertia'): number => {
    assumed.push({ kind, part: name, value, text: `\`${name}\`: ${text}` });
    return value;
  };
  if (given !== undefined && Number.isFinite(given)) {
    return given >= LEAST_INERTIA ? given : tell(LEAST_INERTIA, 'its inertia of 0 is taken for 0.001 kg·mm²', 'left-out');
  }
  const ways: string[] = [];
  let sum = 0;
  if (source.outline !== undefined) {
    sum += SHEET.density * SHEET.thickness * polarMoment(build, lever);
    ways.push(`its outline as ${SHEET.words}`);
  } else {
    const width = source.width?.nominal ?? USUAL_WIDTH;
    const arms = [...lever.pins.values()].map((pin) => size(vectorAt(build.parameters, pin + 3)));
    for (const reach of arms) sum += SHEET.density * SHEET.thickness * width * reach * (reach ** 2 / 3 + width ** 2 / 12);
    const drums = [...lever.drums.values()].map(({ form }) => greatestRadius(build.parameters, form));
    for (const radius of drums) sum += (SHEET.density * SHEET.thickness * Math.PI * radius ** 4) / 2;
    if (arms.length > 0) ways.push(`its arms as bars of ${SHEET.words}, ${mm(width)} wide${source.width ? '' : ' by assumption'}`);
    if (drums.length > 0) ways.push(`its drums as discs of ${SHEET.words}`);
  }
  const plates = build.mechanism.attached.plates.filter((each) => each.lever === lever.index);
  for (const each of plates) sum += plateInertia(build.parameters, each);
  if (plates.length > 0) ways.push(`its plates as ${PLATE.words}`);
  if (!(sum >= LEAST_INERTIA)) return tell(LEAST_INERTIA, 'nothing tells of its inertia, which is taken for 0.001 kg·mm²', 'left-out');
  return tell(sum, `inertia from ${ways.join(', ')}`);
}

/** Of the drawn outline about the pivot, seen along the axis, m⁴. */
function polarMoment({ parameters: p }: Build, { source, axis, pivot }: LeverModel): number {
  const about = vectorAt(p, axis);
  const corners = (source.outline ?? []).map(({ x, y, z }): Vector => {
    const from = minus([x.nominal, y.nominal, z?.nominal ?? 0], vectorAt(p, pivot));
    const along = dot(from, about);
    return [from[0] - along * about[0], from[1] - along * about[1], from[2] - along * about[2]];
  });
  let sum = 0;
  corners.forEach((a, i) => {
    const b = corners[(i + 1) % corners.length]!;
    sum += (dot(about, cross(a, b)) * (dot(a, a) + dot(a, b) + dot(b, b))) / 12;
  });
  return Math.abs(sum);
}

function greatestRadius(
  p: Float64Array,
  form: LeverModel['drums'] extends ReadonlyMap<string, infer D> ? (D extends { form: infer F } ? F : never) : never,
): number {
  return form.kind === 'round' ? p[form.radius]! : Math.max(...p.subarray(form.radii, form.radii + form.count));
}

/** All plates of a set about their shaft, kg·m². */
function plateInertia(p: Float64Array, { bore, count }: PlatesModel): number {
  const diameter = p[bore]!;
  const mass = (PLATE.density * PLATE.thickness * Math.PI * diameter ** 2) / 4;
  return (p[count]! * mass * diameter ** 2) / 16;
}

function rodMass({ parameters: p }: Build, { name, source, length }: RodJoint, assumed: Assumption[]): number {
  const diameter = source.width?.nominal ?? USUAL_ROD;
  const value = (SHEET.density * Math.PI * diameter ** 2 * Math.abs(p[length]!)) / 4;
  const text = `\`${name}\`: a slender steel rod ${mm(diameter)} thick${source.width ? '' : ' by assumption'}`;
  assumed.push({ kind: 'rod-mass', part: name, value, text });
  return value;
}

function pedalMass({ parameters: p, mechanism }: Build, assumed: Assumption[]): number {
  const { pad } = mechanism.attached;
  const given = pad?.kind === 'cable' && pad.ratio !== undefined ? p[pad.ratio]! : undefined;
  const ratio = given ?? PEDAL.ratio;
  const atPad = (SHEET.density * SHEET.thickness * USUAL_WIDTH * PEDAL.length) / 3;
  const value = atPad * ratio * ratio;
  const text = `the pedal, which the file does not describe: a bar of ${SHEET.words}, ${mm(USUAL_WIDTH)} by ${mm(PEDAL.length)}, with a lever ratio of ${ratio}${given === undefined ? ' by assumption' : ''}, without friction and springs`;
  assumed.push({ kind: 'pedal-mass', part: undefined, value, text });
  return value;
}

function mm(metres: number): string {
  return `${Number((metres * 1e3).toPrecision(3))} mm`;
}
