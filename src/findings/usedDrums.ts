/** The drums on which cables lie. */
import type { Drum, Lever } from '../definition/definition.ts';
import type { DrumModel } from '../kinematics/model.ts';
import type { Study } from './study.ts';

export interface UsedDrum {
  readonly drum: DrumModel;
  readonly lever: Lever;
  readonly source: Drum;
}

/** Each once, though several cables may lie on it. */
export function usedDrums({ travel: { mechanism } }: Study): readonly UsedDrum[] {
  const ends = mechanism.cables.flatMap((cable) => [cable.driverEnd, cable.drivenEnd]);
  const drums = new Set(ends.flatMap((end) => (end?.kind === 'drum' ? [end.drum] : [])));
  return [...drums].flatMap((drum) => {
    const lever = mechanism.levers[drum.lever]!.source;
    const source = lever.drums.find((each) => each.name === drum.name);
    return source === undefined ? [] : [{ drum, lever, source }];
  });
}
