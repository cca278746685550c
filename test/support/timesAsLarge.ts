/**
 * A file several times as large, made of one with a pedal and a cable from it: the same linkage again and again behind the one pedal, each
 * time with its own points, levers, joints, plates, springs, `let` values, comments and requirements.
 */
import { readDefinition } from '../../src/definition/read.ts';

/** @param text in blocks, its comments among them, with a pedal that is a lever called `pedal` */
export function timesAsLarge(text: string, times: number): string {
  const { definition } = readDefinition(text);
  if (definition?.pedal?.kind !== 'lever') throw new Error('There is no pedal');
  const { levers, lets, points, rods, cables, plates, sensors, springs } = definition;
  const parts: readonly { readonly name: string }[] = [levers, lets, points, rods, cables, plates, sensors, springs].flat();
  const names = parts.map(({ name }) => name).filter((name) => name !== 'pedal');
  const named = new RegExp(`(?<![\\w])(${names.join('|')})(?!\\w)`, 'g');
  return blocksOf(text)
    .map(({ key, head, body }) => {
      if (key === '' || SINGLE.has(key)) return head + body;
      const again = key === 'levers' ? body.slice(pedalEnd(body)) : body;
      const further = Array.from({ length: times - 1 }, (_, i) => {
        const other = again.replace(/#.*/g, (comment) => `${comment} (${i + 2})`).replace(named, `$1_${i + 2}`);
        return key === 'require' ? other.replace(/^( {2}[a-z][^:]*):/gm, `$1, ${i + 2}:`) : other;
      });
      return [head + body, ...further].join('');
    })
    .join('');
}

/** Of these a file has one. */
const SINGLE: ReadonlySet<string> = new Set(['format', 'title', 'pedal']);

interface Block {
  /** Empty for what stands before the first. */
  readonly key: string;
  readonly head: string;
  readonly body: string;
}

function blocksOf(text: string): readonly Block[] {
  return text.split(/^(?=[a-z])/m).map((block): Block => {
    const [, head = '', body = ''] = /^(.*\n)([^]*)$/.exec(block) ?? [];
    return { key: /^[a-z]+/.exec(head)?.[0] ?? '', head, body };
  });
}

/** Where the lever of the pedal ends, which stands first. */
function pedalEnd(levers: string): number {
  const next = /\n {2}(?!pedal)[a-z]/.exec(levers);
  if (!levers.startsWith('  pedal:') || next === null) throw new Error('The pedal is not the first lever of several');
  return next.index + 1;
}
