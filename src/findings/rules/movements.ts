/**
 * What a movement of the engine does with the pedal still: to the throttle at rest, and to its opening at full pedal.
 *
 * Cure for a shaft that it opens: route the cable so that housing and shaft move together, or give it more slack.
 */
import type { Finding } from '../finding.ts';
import { movedBuild } from '../../kinematics/movement.ts';
import { travelOf, type Travel } from '../../travel/travel.ts';
import type { Study } from '../study.ts';
import { degrees } from '../words.ts';

/** rad (0.01°); less is not worth a line. Common practice, no source. */
const STILL = 0.01 * (Math.PI / 180);

export function movements(study: Study): readonly Finding[] {
  const { travel, definition } = study;
  return definition.movements.flatMap((movement) => {
    const moved = travelOf(movedBuild(travel.build, movement));
    return travel.mechanism.levers.flatMap((lever): Finding[] => {
      if (lever.plates.length === 0 || lever.group < 0) return [];
      const common = { part: movement.name, span: movement.nameSpan, related: [{ span: lever.source.nameSpan, message: lever.name }] };
      const before = openingAt(travel, lever.index, 0);
      const rest = openingAt(moved, lever.index, 0) - before;
      const unmoved = openingAt(travel, lever.index, lowest(travel));
      // What the linkage cannot do unmoved is no fault of the movement.
      const full = Number.isNaN(unmoved) ? 0 : openingAt(moved, lever.index, lowest(moved)) - unmoved;
      const found: Finding[] = [];
      if (Number.isNaN(rest) || Math.abs(rest) > STILL) {
        found.push({
          ...common,
          code: 'movement-at-rest',
          severity: 'error',
          message: Number.isNaN(rest)
            ? `The movement ${movement.name} tears the linkage of ${lever.name} apart with the foot off`
            : `The movement ${movement.name} ${rest > 0 ? 'opens' : 'closes'} ${lever.name} by ${degrees(Math.abs(rest), 2)} with the foot off`,
          cure: 'Move housing end and shaft together, or give the cable more slack',
          ...(!Number.isNaN(rest) && { worst: { value: rest, dimension: 'angle' as const, travel: 0 } }),
          limit: { value: STILL, dimension: 'angle', from: 'common practice, no source' },
        });
      }
      if (Number.isNaN(full) || Math.abs(full) > STILL) {
        found.push({
          ...common,
          code: 'movement-at-full',
          severity: Number.isNaN(full) ? 'error' : 'note',
          message: Number.isNaN(full)
            ? `With the movement ${movement.name}, ${lever.name} cannot follow the pedal to the floor`
            : `The movement ${movement.name} changes the opening of ${lever.name} at full pedal by ${degrees(full, 2)}`,
          ...(!Number.isNaN(full) && { worst: { value: full, dimension: 'angle' as const, travel: 1 } }),
        });
      }
      return found;
    });
  });
}

/** How far down the pedal goes, a fraction: less than all where an open stop without a cable before it holds it. */
function lowest({ build, mechanism }: Travel): number {
  const { drive } = mechanism;
  return drive.kind === 'lever' ? Math.min(1, build.bounds.pedalStop / build.parameters[drive.travel]!) : 1;
}

function openingAt(travel: Travel, lever: number, at: number): number {
  return travel.mechanism.senses[lever]! * travel.poseAt(at).rotation[lever]!;
}
