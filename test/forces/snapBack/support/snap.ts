/** Snap-back of a throttle file's text, as tests ask for it. */
import { snapBack, type NotComputed, type SnapBack, type SnapBackOptions } from '../../../../src/forces/snapBack/snapBack.ts';
import { solveTravel } from '../../../../src/travel/travel.ts';
import { mechanismOf } from '../../../support/solveSketch.ts';

export function snapOf(text: string, options: SnapBackOptions = {}): SnapBack {
  const answer = anySnapOf(text, options);
  if (answer.method === undefined) throw new Error(answer.reason);
  return answer;
}

export function anySnapOf(text: string, options: SnapBackOptions = {}): SnapBack | NotComputed {
  return snapBack(solveTravel(mechanismOf(text)).build, options);
}

/** One lever that is pedal and shaft at once. kg·mm², N·mm, N·mm/deg, degrees. */
export interface OneLever {
  readonly inertia: number;
  readonly preload: number;
  readonly rate: number;
  readonly drag?: number;
  /** From where the foot comes off. */
  readonly opening: number;
}

export function oneLeverText({ inertia, preload, rate, drag = 0, opening }: OneLever): string {
  return `format: 1
levers:
  shaft: {pivot: [0, 0], arms: {pad: {radius: 100, angle: 0 deg}}, inertia: ${inertia}, friction: ${drag}, stops: {open: ${opening}}}
pedal: {lever: shaft, opens: counterclockwise, travel: ${opening}, pad: pad}
plates:
  bank: {lever: shaft, bore: 40 mm}
springs:
  first: {lever: shaft, rate: ${rate}, preload: ${preload}}
`;
}

/** SI figures of the same. */
export function inSi({ inertia, preload, rate, drag = 0, opening }: OneLever): Required<OneLever> {
  const degree = Math.PI / 180;
  return { inertia: inertia * 1e-6, preload: preload * 1e-3, rate: (rate * 1e-3) / degree, drag: drag * 1e-3, opening: opening * degree };
}
