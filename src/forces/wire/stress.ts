/** Where a spring wound from wire is stressed most, and how much for each newton or newton-metre that it gives. */
import type { SpringModel, WireModel } from '../../kinematics/attached.ts';
import type { Build } from '../../kinematics/build.ts';
import { coilShear } from './helical.ts';
import { hookBending, hookTwist } from './hook.ts';
import { stressLimits, type StressLimits, type StressPlace } from './limits.ts';
import { coilOf } from './rate.ts';
import { coilBending } from './torsion.ts';

export interface WireStress {
  readonly place: StressPlace;
  /** Pa for each N·m of a torsion spring, for each N of others. */
  readonly perLoad: number;
  readonly limits: StressLimits;
}

/** Of an extension spring coil and hook; the twist of its hook only where the file gives the bend. */
export function wireStresses(build: Build, spring: SpringModel, wire: WireModel): readonly WireStress[] {
  const coil = coilOf(build, wire);
  const at = (place: StressPlace, perLoad: number): WireStress => ({
    place,
    perLoad,
    limits: stressLimits(wire.source.material.name, place),
  });
  switch (spring.kind) {
    case 'torsion':
      return [at('torsion-coil', coilBending(coil))];
    case 'compression':
      return [at('compression-coil', coilShear(coil))];
    case 'extension': {
      const bend = wire.hookBend && build.parameters[wire.hookBend]!;
      return [
        at('extension-coil', coilShear(coil)),
        at('hook-bend', hookBending(coil)),
        ...(bend === undefined ? [] : [at('hook-twist', hookTwist(coil, bend))]),
      ];
    }
  }
}
