/** Springs wound from wire or strip: the rate that follows, how much the wire is stressed at both ends of the pedal, and what is left. */
import { hasRate, rateOf, stripOf } from '../../forces/wire/rate.ts';
import { plainShear, solidLength } from '../../forces/wire/helical.ts';
import { stripBending } from '../../forces/wire/spiral.ts';
import { PRACTICE_SHARE, woundInside } from '../../forces/wire/torsion.ts';
import type { StressPlace } from '../../forces/wire/limits.ts';
import type { SpringModel } from '../../kinematics/attached.ts';
import { isMoved } from '../../forces/springsReaching.ts';
import { greatestOf } from '../../travel/extremes.ts';
import type { Fact } from '../finding.ts';
import { along, type Study } from '../study.ts';
import { wireLoads, worstStress, type WireLoad } from '../wireLoads.ts';

/** None of a spring that is given by its rate. */
export function wireFacts(study: Study): readonly Fact[] {
  const { mechanism } = study.travel;
  return mechanism.attached.springs
    .filter((spring) => spring.rate === undefined && hasRate(spring))
    .flatMap((spring) => [...rateFacts(study, spring), ...(isMoved(mechanism, spring) ? loadFacts(study, spring) : [])]);
}

function rateFacts({ travel: { build } }: Study, spring: SpringModel): readonly Fact[] {
  const value = rateOf(build, spring);
  const dimension = spring.kind === 'torsion' ? 'torsional-rate' : 'linear-rate';
  const wound = spring.wire === undefined ? 'strip' : 'wire';
  const fact = (key: string, label: string, share: number): Fact => ({
    key,
    part: spring.name,
    label,
    figure: { value: value * share, dimension },
  });
  return [
    fact('rate', `rate from its ${wound}`, 1),
    ...(spring.kind === 'torsion' && spring.wire !== undefined
      ? [fact('rate-in-practice', 'rate as practice takes it, with 10.8 in place of 10.19', PRACTICE_SHARE)]
      : []),
  ];
}

function loadFacts(study: Study, spring: SpringModel): readonly Fact[] {
  if (spring.kind === 'torsion' && spring.strip !== undefined) {
    const perTorque = stripBending(stripOf(study.travel.build, spring.strip));
    const torque = along(study, `${spring.name}.torque`);
    return ENDS.map(({ at, key, words }) =>
      stressFact(`stress-${key}`, spring.name, `bending stress of its strip ${words}`, Math.abs(torque(at)) * perTorque),
    );
  }
  const load = wireLoads(study).find((each) => each.spring.name === spring.name);
  if (load === undefined) return [];
  return [...ENDS.flatMap((end) => endFacts(load, end)), ...ownFacts(study, load)];
}

interface End {
  readonly at: 0 | 1;
  readonly key: string;
  readonly words: string;
}

const ENDS: readonly End[] = [
  { at: 0, key: 'at-rest', words: 'at rest' },
  { at: 1, key: 'at-full', words: 'at full pedal' },
];

function endFacts(load: WireLoad, { at, key, words }: End): readonly Fact[] {
  const part = load.spring.name;
  const worst = worstStress(load, load.load(at));
  if (worst === undefined) return [];
  const label = `factor of safety against taking a set ${words}`;
  const value = load.load(at);
  const pull: Fact = {
    key: `load-${key}`,
    part,
    label: `${load.spring.kind === 'torsion' ? 'torque' : 'force'} ${words}`,
    ...(Number.isFinite(value)
      ? { figure: { value, dimension: load.spring.kind === 'torsion' ? 'torque' : 'force' } }
      : { why: 'it is not known there' }),
  };
  const common = { key: `safety-${key}`, part, label };
  return [
    pull,
    stressFact(`stress-${key}`, part, `${STRESS_OF[worst.place]} ${words}`, worst.stress),
    worst.safety === undefined
      ? { ...common, why: 'the strength of its wire is not known' }
      : Number.isFinite(worst.safety)
        ? { ...common, figure: { value: worst.safety, dimension: 'number' } }
        : { ...common, why: Number.isNaN(worst.safety) ? 'it has no load there that is known' : 'it is not loaded there' },
  ];
}

/** What only a spring of its kind has. */
function ownFacts(study: Study, { spring, wire, coil, samples }: WireLoad): readonly Fact[] {
  const part = spring.name;
  const { build } = study.travel;
  const p = build.parameters;
  switch (spring.kind) {
    case 'torsion': {
      const torque = greatestOf(along(study, `${part}.torque`), samples)?.value ?? NaN;
      const value = woundInside(coil, torque / rateOf(build, spring));
      return [{ key: 'wound-inside', part, label: 'inside of its coil, wound furthest', figure: { value, dimension: 'length' } }];
    }
    case 'extension': {
      const tension = p[spring.initialTension]!;
      return tension > 0 ? [stressFact('initial-stress', part, 'initial shear stress, without factor', tension * plainShear(coil))] : [];
    }
    case 'compression': {
      if (wire.totalTurns === undefined) return [];
      const value = solidLength(coil, p[wire.totalTurns]!);
      return [{ key: 'solid-length', part, label: 'solid length', figure: { value, dimension: 'length' } }];
    }
  }
}

/** @param stress Pa; told in MPa, as stresses are */
function stressFact(key: string, part: string, label: string, stress: number): Fact {
  return Number.isFinite(stress)
    ? { key, part, label: `${label}, in MPa`, figure: { value: stress * 1e-6, dimension: 'number' } }
    : { key, part, label, why: 'its load there is not known' };
}

const STRESS_OF: Readonly<Record<StressPlace, string>> = {
  'torsion-coil': 'bending stress of its coil',
  'compression-coil': 'shear stress of its coil',
  'extension-coil': 'shear stress of its coil',
  'hook-bend': 'bending stress of its hook',
  'hook-twist': 'shear stress of its hook',
};
