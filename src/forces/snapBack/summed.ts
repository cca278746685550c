/** What is told of all plates together. */
import type { PlateReturn, SnapBack } from './snapBack.ts';

export function summed(plates: readonly PlateReturn[]): Pick<SnapBack, 'plates' | 'time' | 'bounces' | 'stopSpeed'> {
  const times = plates.flatMap(({ time }) => time ?? []);
  const speeds = plates.flatMap(({ stopSpeed }) => stopSpeed ?? []);
  return {
    plates,
    time: times.length === 0 || times.length < plates.length ? undefined : Math.max(...times),
    bounces: plates.reduce((sum, { bounces }) => sum + bounces, 0),
    stopSpeed: speeds.length === 0 ? undefined : Math.max(...speeds),
  };
}
