/** How a shaft with plates follows the pedal: where it stands at given openings, and how it quickens. */
import type { LeverModel } from '../../kinematics/model.ts';
import { startOfOpening } from '../../plates/tipIn.ts';
import { following, greatestOf, leastOf, zerosOf } from '../../travel/extremes.ts';
import { merge } from '../../travel/places.ts';
import type { Fact } from '../finding.ts';
import { along, type Study } from '../study.ts';

/** Shares of the whole of which the pedal travel is told. */
export const SHARES = [0.1, 0.25, 0.5, 0.9];

export function progression(study: Study, lever: LeverModel): readonly Fact[] {
  const { build, samples, poseAt } = study.travel;
  const part = lever.name;
  const opening = along(study, `${part}.opening`);
  const ratio = along(study, `${part}.ratio`);
  const ratioDimension = study.columns.get(`${part}.ratio`)?.dimension ?? 'number';
  const full = lever.fullOpening === undefined ? NaN : build.parameters[lever.fullOpening]!;
  const facts = SHARES.map((share): Fact => {
    const [travel] = zerosOf(
      following(opening, (value) => value - share * full),
      samples,
    );
    const common = { key: `travel-at-${share * 100}`, part, label: `pedal travel at ${share * 100} % of opening` };
    if (travel === undefined) return { ...common, why: opening(0) > share * full ? 'open that far at rest' : 'never reached' };
    return { ...common, figure: { value: travel, dimension: 'number' }, travel };
  });
  // The ratio turns where the second derivative passes zero; that place is known better than one searched for by the ratio itself.
  const turning = merge(
    samples,
    zerosOf((at) => poseAt(at, lever.index).curvature[lever.index]!, samples),
  );
  const greatest = greatestOf(ratio, turning);
  // The least while it moves: before slack is taken up and past a stop it is none.
  const least = leastOf(
    following(ratio, (value) => (value === 0 ? NaN : value)),
    turning,
  );
  if (greatest) {
    const common = { key: 'greatest-ratio', part, label: 'greatest ratio', travel: greatest.travel };
    // At a dead centre the driven lever turns infinitely faster than the pedal.
    const bounded = Math.abs(study.travel.poseAt(greatest.travel).rate[lever.index]!) < UNBOUNDED;
    const figure = { value: greatest.value, dimension: ratioDimension };
    facts.push(bounded ? { ...common, figure } : { ...common, why: 'without bound, at a dead centre' });
  }
  if (least)
    facts.push({
      key: 'least-ratio',
      part,
      label: 'least ratio while it moves',
      figure: { value: least.value, dimension: ratioDimension },
      travel: least.travel,
    });
  facts.push(tipIn(study, lever));
  return facts;
}

/** Slope where the lever begins to move against the mean slope from there to where it has opened most. */
function tipIn(study: Study, lever: LeverModel): Fact {
  const { samples, poseAt, mechanism } = study.travel;
  const sense = mechanism.senses[lever.index]!;
  const common = { key: 'tip-in', part: lever.name, label: 'slope at tip-in against the mean slope' };
  const opening = along(study, `${lever.name}.opening`);
  const start = startOfOpening(study.travel, lever.index);
  const most = greatestOf(opening, samples);
  if (start === undefined || most === undefined || !(most.travel > start)) return { ...common, why: 'it does not open' };
  const end = samples.find((travel) => travel > start && opening(travel) >= most.value - SAME) ?? most.travel;
  const slope = sense * poseAt(start).rate[lever.index]!;
  const mean = (opening(end) - opening(start)) / (end - start);
  return { ...common, figure: { value: slope / mean, dimension: 'number' }, travel: start };
}

/** rad. */
const SAME = 1e-9;
/** rad over the whole travel; met only where a dead centre lies within the last bits of the travel. */
const UNBOUNDED = 1e5;
