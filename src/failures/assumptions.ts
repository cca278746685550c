/** What the failures rest on that is not in the file, in words. */
import { USUAL_VACUUM } from '../forces/friction/plateLoad.ts';
import { isPlanar } from '../forces/snapBack/byPlanck.ts';
import type { Travel } from '../travel/travel.ts';
import { fixed } from '../travel/words.ts';
import type { Failure } from './failure.ts';
import { listed } from './words.ts';

/** Sentences without a full stop. */
export function assumptionsOf({ mechanism, build }: Travel, failures: readonly Failure[]): readonly string[] {
  const { levers, friction, attached, drive } = mechanism;
  const usual = attached.plates.filter(
    ({ lever }, i) => levers[lever]!.group >= 0 && friction.levers[lever]!.bearing !== undefined && friction.vacuum[i] === undefined,
  );
  const has = (kind: 'lost' | 'seized'): boolean => failures.some((failure) => (failure.kind === 'cable-seized') === (kind === 'seized'));
  return [
    'Weight, vibration, the air that turns the plates, and the mass of cables, springs and rod ends are left out; friction is the same at rest and in motion',
    'A time ends where the plates are within 1 % of their full opening for good, bounces included',
    ...(isPlanar(build)
      ? []
      : [
          'The linkage leaves its plane: its times go by the equation of motion alone, without the rigid bodies that those of planar linkages are held against',
        ]),
    ...(drive.kind === 'cable'
      ? [
          'For margins and times the pedal, of which the file gives the cable alone, is taken to come back by itself and to hold nothing. That is not checked, and no row reads better for it',
        ]
      : []),
    ...(has('lost')
      ? [
          'A part that is lost is gone: it neither jams nor holds anything. What it drove stands wherever it had been, and turns under its own springs to a stop',
        ]
      : []),
    ...(has('seized')
      ? [
          'The inner of a seized cable stands still in its housing, wherever that happens: what it draws goes on open and not back, with all that hangs on it',
        ]
      : []),
    ...(usual.length === 0
      ? []
      : [
          `A vacuum of ${fixed(USUAL_VACUUM / 1e3, 0)} kPa is taken to press ${listed(usual.map(({ name }) => name))} on their shaft: common practice, no source`,
        ]),
  ];
}
