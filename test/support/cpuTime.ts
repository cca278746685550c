/** Time that this process was at work, ms: what other programs on the machine take does not count. */
import process from 'node:process';

export function cpuTime(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}
