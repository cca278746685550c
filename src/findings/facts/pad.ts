/**
 * The foot's side: how far it goes, and what guidance for pedals says of travel and force. MIL-STD-1472, figure on pedals, from memory:
 * guidance for any foot-operated pedal, not for this one.
 */
import type { Definition } from '../../definition/definition.ts';
import type { PadModel } from '../../kinematics/attached.ts';
import type { Build } from '../../kinematics/build.ts';
import { size, vectorAt } from '../../numeric/vector.ts';
import type { Fact } from '../finding.ts';
import type { Study } from '../study.ts';

const SOURCE = 'MIL-STD-1472, from memory';

const PAD_TRAVEL = `13 mm to 65 mm where only the ankle turns, up to 180 mm where the leg moves; ${SOURCE}`;
export const LEAST_EFFORT = `18 N or more, 45 N where the foot rests on it; ${SOURCE}`;
export const GREATEST_EFFORT = `90 N at most, 45 N where only the ankle turns; ${SOURCE}`;

/** How far the foot goes; none where the file does not say where the foot presses. */
export function padFacts(study: Study): readonly Fact[] {
  const { pad } = study.travel.mechanism.attached;
  const path = pathOfForce(study.definition, study.travel.build);
  if (!isAtPad(pad) || path === undefined || !Number.isFinite(path)) return [];
  const label = pad?.kind === 'arm' ? 'travel of the pad along its arc' : 'travel of the pad';
  return [{ key: 'pad-travel', part: 'pedal', label, figure: { value: path, dimension: 'length' }, guidance: PAD_TRAVEL }];
}

/** Whether pedal effort is what the foot presses with; else it is the pull of a cable. */
export function isAtPad(pad: PadModel | undefined): boolean {
  return pad !== undefined && (pad.kind === 'arm' || pad.ratio !== undefined);
}

/** Path of the point where pedal effort is read, over the whole travel, m; undefined where the file does not say where that is. */
export function pathOfForce({ pedal }: Definition, { parameters, mechanism }: Build): number | undefined {
  const { pad } = mechanism.attached;
  if (pad === undefined || pedal === undefined) return undefined;
  if (pedal.kind === 'cable') return pedal.pull.nominal * (pad.kind === 'cable' && pad.ratio !== undefined ? parameters[pad.ratio]! : 1);
  return pad.kind === 'arm' ? size(vectorAt(parameters, pad.pin + 3)) * pedal.travel.nominal : undefined;
}
