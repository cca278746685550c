/** Where along the pedal a set of plates has opened a share of its greatest possible area. */
import type { PlatesModel } from '../../kinematics/attached.ts';
import { areaSamples } from '../../plates/platesAt.ts';
import { following, zerosOf } from '../../travel/extremes.ts';
import type { Fact } from '../finding.ts';
import { along, type Study } from '../study.ts';
import { SHARES } from './progression.ts';

/** The first place of each share, where the plates pass it more than once. */
export function areaFacts(study: Study, plates: PlatesModel): readonly Fact[] {
  const fraction = along(study, `${plates.name}.fraction`);
  const samples = areaSamples(study.travel, plates);
  return SHARES.map((share): Fact => {
    const common = { key: `area-travel-at-${share * 100}`, part: plates.name, label: `pedal travel at ${share * 100} % of open area` };
    if (fraction(0) > share) return { ...common, why: 'open that far at rest' };
    const [travel] = zerosOf(
      following(fraction, (value) => value - share),
      samples,
    );
    if (travel === undefined) return { ...common, why: 'never reached' };
    return { ...common, figure: { value: travel, dimension: 'number' }, travel };
  });
}
