/** Figures that were found and that no car has: a sign that readings or file are wrong. */
import type { Dimension } from '../../definition/dimensions.ts';
import type { Build } from '../../kinematics/build.ts';

/** What a figure goes beyond. */
export interface CannotBe {
  /** `adjust` of its rod, or a slack, which is not below 0. */
  readonly of: 'adjust' | 'slack';
  /** SI; undefined where that side is open. */
  readonly from: number | undefined;
  readonly to: number | undefined;
  readonly dimension: Dimension;
}

/** Of each dimension by its index; without those that can be. @param build as the car is @param errorOf standard error of a dimension, SI */
export function whatCannotBe({ mechanism, parameters: p }: Build, errorOf: (index: number) => number): ReadonlyMap<number, CannotBe> {
  const found = new Map<number, CannotBe>();
  const indexOf = new Map(mechanism.dimensions.map(({ path, index }) => [path, index]));
  const hold = (path: string, now: number, limits: Pick<CannotBe, 'of' | 'from' | 'to'>): void => {
    const index = indexOf.get(path);
    const { from = -Infinity, to = Infinity } = limits;
    if (index === undefined || !(Math.max(from - now, now - to) > SURE * errorOf(index))) return;
    found.set(index, { ...limits, dimension: 'length' });
  };
  for (const joint of mechanism.joints) {
    if (joint.kind === 'rod' && joint.source.adjust !== undefined) {
      const { min, max } = joint.source.adjust;
      hold(`rods.${joint.name}.length`, p[joint.length]!, { of: 'adjust', from: min?.nominal, to: max?.nominal });
    }
    if (joint.kind === 'cable') hold(`cables.${joint.name}.slack`, p[joint.slack]!, { of: 'slack', from: 0, to: undefined });
  }
  return found;
}

/** Standard errors. */
const SURE = 3;
