/**
 * Places in a quoted text: where in the file each character of the text stands that the quotes and escapes mean.
 */

/**
 * @param raw what stands between the quotes, on one line
 * @param start its place in the file
 * @param length how many UTF-16 units the text has that it means
 * @returns file offset of each of them, and of the end; undefined where the count does not come out, so that nothing can be told
 */
export function offsetsOf(raw: string, style: 'single' | 'double', start: number, length: number): readonly number[] | undefined {
  const offsets: number[] = [];
  for (let i = 0; i < raw.length;) {
    const [written, meant] = style === 'single' ? inSingle(raw, i) : inDouble(raw, i);
    for (let unit = 0; unit < meant; unit++) offsets.push(start + i);
    i += written;
  }
  offsets.push(start + raw.length);
  return offsets.length === length + 1 ? offsets : undefined;
}

/** Units written and units meant at a place. */
type Step = readonly [number, number];

function inSingle(raw: string, at: number): Step {
  return raw.startsWith("''", at) ? [2, 1] : [1, 1];
}

function inDouble(raw: string, at: number): Step {
  if (raw[at] !== '\\') return [1, 1];
  switch (raw[at + 1]) {
    case 'x':
      return [4, 1];
    case 'u':
      return [6, 1];
    case 'U':
      return [10, Number.parseInt(raw.slice(at + 2, at + 10), 16) > 0xffff ? 2 : 1];
    default:
      return [2, 1];
  }
}
