/** Drums of a lever with a point of their rim. */
import { axisOf, pivotOf } from '../kinematics/drawnAxis.ts';
import type { DrumModel, LeverModel } from '../kinematics/model.ts';
import { anySquare, plus } from '../numeric/vector.ts';
import type { DrawnDrum } from '../protocol/picture.ts';
import type { Drawable } from './drawable.ts';
import { rimOf, type RimEnd } from '../kinematics/drumRim.ts';
import { turningAbout } from './turning.ts';

export function drawDrums(drawable: Drawable, lever: LeverModel): readonly DrawnDrum[] {
  return [...lever.drums.values()].flatMap((drum) => drawDrum(drawable, lever, drum) ?? []);
}

function drawDrum(drawable: Drawable, lever: LeverModel, drum: DrumModel): DrawnDrum | undefined {
  const { build } = drawable;
  const { name, form } = drum;
  if (form.kind === 'profile') {
    const pivot = pivotOf(build, lever.index);
    const axis = axisOf(build, lever.index);
    const rim = rimOf(build, drum, endOn(drawable, lever, drum), BETWEEN)
      .map((at) => turningAbout(pivot, axis, at))
      .filter((place) => place !== undefined);
    const [mark] = rim;
    return mark && { name, form: { kind: 'profile', rim }, mark };
  }
  const radius = build.parameters[form.radius]!;
  const pivot = pivotOf(build, lever.index);
  const axis = axisOf(build, lever.index);
  const mark = turningAbout(pivot, axis, plus(pivot, anySquare(axis), radius));
  return mark && { name, form: { kind: 'round', radius }, mark };
}

/** Points between two of a profile, so that the rim looks round. */
const BETWEEN = 8;

/** The cable end that lies on a drum: the one that it is turned by before one that it pulls; undefined where none does. */
function endOn({ joints }: Drawable, { index }: LeverModel, { name }: DrumModel): RimEnd | undefined {
  for (const which of ['enters', 'leaves'] as const) {
    for (const { joint, build } of joints) {
      if (joint.kind !== 'cable') continue;
      const end = which === 'enters' ? joint.drivenEnd : joint.driverEnd;
      const lever = which === 'enters' ? joint.driven : joint.driver;
      if (end?.kind === 'drum' && lever === index && end.drum.name === name) return { joint, build, which };
    }
  }
  return undefined;
}
