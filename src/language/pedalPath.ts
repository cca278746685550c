/** Where the pedal's travel stands in the file. */
import type { Study } from '../findings/study.ts';

/** Path of its travel, or of its pull where the pedal is a cable. */
export function pedalPath({ travel }: Study): string {
  return travel.mechanism.drive.kind === 'lever' ? 'pedal.travel' : 'pedal.pull';
}
