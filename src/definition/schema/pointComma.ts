/**
 * A point `[pedal travel, value]` with a decimal comma in it reads as one with a weight.
 */
import type { SourceList } from '../source/tree.ts';
import { decimalComma } from './figureList.ts';
import { problem, type Reading } from './shape.ts';

/**
 * Reports a decimal comma that makes three figures of a point's two, and says whether it is one for certain. It is where the digits behind
 * it have a unit, which no weight has, and where a space follows the other comma; of `[50 %,29,5]` it is only warned.
 */
export function reportComma(node: SourceList, reading: Reading): boolean {
  const found = node.items.length === 3 ? decimalComma(node) : undefined;
  if (found === undefined) return false;
  const { index, decimals, text } = found;
  const isBare = /^[\d.]+$/.test(decimals);
  const isTravel = index === 0;
  if (isTravel && !(found.certain && (isBare || decimals.endsWith('%')))) return false;
  const certain = found.certain || !isBare;
  const [before, behind] = [node.items[index], node.items[index + 1]];
  const span = { start: before?.span.start ?? node.span.start, end: behind?.span.end ?? node.span.end };
  const spaced = `[${node.items.map((item) => (item.kind === 'scalar' ? item.text : '')).join(', ')}]`;
  const has = certain ? 'has' : 'may have';
  reading.report({
    ...problem('bad-quantity', span, `\`${before?.kind === 'scalar' ? before.text : ''},${decimals}\` ${has} a decimal comma`, {
      cure: isBare ? `Write \`${text}\`, or \`${spaced}\` where the last figure is a weight` : `Write \`${text}\``,
      replacements: isBare ? undefined : [{ span: node.span, text }],
    }),
    ...(!certain && { severity: 'warning' }),
  });
  return certain;
}
