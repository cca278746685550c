/**
 * Where in the file the words of a text stand: inside quotes, behind escapes, over several lines.
 */
import type { Span } from '../definition/span.ts';
import type { SourceScalar } from '../definition/source/tree.ts';

/** From a stretch of the text that a scalar means to the place where it is written; the stretch begins and ends with no blank. */
export type ScalarPlaces = (stretch: Span) => Span;

/** @param file the whole file. @returns undefined where it cannot be told, as behind escapes that run over several lines */
export function placesIn(node: SourceScalar, file: string): ScalarPlaces | undefined {
  const { textStart, offsets } = node;
  if (node.exact) return ({ start, end }) => ({ start: textStart + start, end: textStart + end });
  if (offsets !== undefined) return ({ start, end }) => ({ start: offsets[start] ?? node.span.end, end: offsets[end] ?? node.span.end });
  const places = folded(node, file);
  if (places === undefined) return undefined;
  return ({ start, end }) => {
    const from = places[start] ?? node.span.end;
    return { start: from, end: end > start ? (places[end - 1] ?? node.span.end) + 1 : from };
  };
}

/**
 * Place of each character of a text whose lines YAML has joined or cut free of their indentation: what is not blank
 * stands in the file in the same order.
 */
function folded(node: SourceScalar, file: string): readonly number[] | undefined {
  const { text, style, span } = node;
  const quoted = style === 'single' || style === 'double';
  const end = quoted ? span.end - 1 : span.end;
  let at = style === 'block' ? afterLine(file, span.start) : quoted ? span.start + 1 : span.start;
  const written = file.slice(at, end);
  if ((style === 'double' && written.includes('\\')) || (style === 'single' && written.includes("''"))) return undefined;
  const places: number[] = [];
  for (let i = 0; i < text.length; i++) {
    if (isBlank(text[i])) {
      places.push(at);
      continue;
    }
    while (at < end && isBlank(file[at])) at++;
    if (at >= end || file[at] !== text[i]) return undefined;
    places.push(at);
    at++;
  }
  return places;
}

function afterLine(file: string, start: number): number {
  let at = start;
  while (at < file.length && file[at] !== '\n' && file[at] !== '\r') at++;
  return at;
}

function isBlank(character: string | undefined): boolean {
  return character === ' ' || character === '\t' || character === '\n' || character === '\r';
}
