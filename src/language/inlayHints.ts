/** Figures that follow from what is written, shown where they follow: results of formulas, lengths of rods, offsets at rest. */
import type { Definition } from '../definition/definition.ts';
import type { Span } from '../definition/span.ts';
import { along, type Study } from '../findings/study.ts';
import { figureText } from '../outputs/figure.ts';
import type { Answers } from '../solve.ts';
import { isBlank } from './cursor/scalars.ts';
import { figureOfValue } from './figures.ts';
import { putIn } from './hover/values.ts';
import { code } from './markdown.ts';
import { letOf, valuesOf } from './values.ts';

/** Each can be switched off by itself. */
export const INLAY_KINDS = ['formula', 'rod-length', 'rest'] as const;
export type InlayKind = (typeof INLAY_KINDS)[number];

export interface InlayHint {
  readonly kind: InlayKind;
  /** Where it is shown: behind the character before it, with a gap. */
  readonly offset: number;
  /** Short, e.g. `= 38.2 mm`. */
  readonly label: string;
  /** Markdown. */
  readonly tooltip: string;
}

/**
 * In the order of the text.
 * @param range only hints within; all where absent
 * @param kinds those that are wanted; all where absent
 */
export function inlayHints(answers: Answers, range?: Span, kinds: readonly InlayKind[] = INLAY_KINDS): readonly InlayHint[] {
  const { text, definition, study } = answers;
  if (definition === undefined) return [];
  const hints = [
    ...(kinds.includes('formula') ? formulaHints(text, definition) : []),
    ...(kinds.includes('rod-length') && study !== undefined ? lengthHints(text, study) : []),
    ...(kinds.includes('rest') && study !== undefined ? restHints(text, study) : []),
  ];
  const within = range === undefined ? hints : hints.filter(({ offset }) => range.start <= offset && offset <= range.end);
  return within.sort((a, b) => a.offset - b.offset || INLAY_KINDS.indexOf(a.kind) - INLAY_KINDS.indexOf(b.kind));
}

function formulaHints(text: string, definition: Definition): InlayHint[] {
  return valuesOf(definition).flatMap((value): InlayHint[] => {
    if (value.formula === undefined) return [];
    const figure = figureOfValue(value, letOf(definition, value)?.kind);
    const put = putIn(definition, value.formula.text);
    return [{ kind: 'formula', offset: behindQuote(text, value.span), label: `= ${figure}`, tooltip: `${code(put)} = ${code(figure)}` }];
  });
}

/** Of a rod that is as long as it is drawn. */
function lengthHints(text: string, { travel }: Study): InlayHint[] {
  const { mechanism, build } = travel;
  return mechanism.joints.flatMap((joint): InlayHint[] => {
    if (joint.kind !== 'rod' || joint.source.length !== undefined) return [];
    const length = build.parameters[joint.length]!;
    if (!Number.isFinite(length)) return [];
    const figure = figureText({ value: length, dimension: 'length' });
    const tooltip = `${code(joint.name)} has no ${code('length')}: it is as long as it is drawn, from ${code(endText(joint.source.from))} to ${code(endText(joint.source.to))}`;
    return [{ kind: 'rod-length', offset: behindEntry(text, joint.source), label: `length ${figure}`, tooltip }];
  });
}

/** Of a lever that stands off its drawn position with the foot off. */
function restHints(text: string, study: Study): InlayHint[] {
  return study.travel.mechanism.levers.flatMap(({ name, source, group }): InlayHint[] => {
    if (group < 0) return [];
    const opening = along(study, `${name}.opening`)(0);
    if (!(Math.abs(opening) >= LEAST_OFFSET)) return [];
    const figure = figureText({ value: opening, dimension: 'angle' });
    const tooltip = `With the foot off ${code(name)} stands ${code(figure)} from where it is drawn, counted in its opening direction`;
    return [{ kind: 'rest', offset: behindEntry(text, source), label: `rests at ${figure}`, tooltip }];
  });
}

/** rad, a thousandth of a degree; what is less nobody can set. */
const LEAST_OFFSET = Math.PI / 180_000;

function endText({ lever, part }: { readonly lever: string; readonly part: string }): string {
  return `${lever}.${part}`;
}

function behindQuote(text: string, { end }: Span): number {
  return text[end] === '"' || text[end] === "'" ? end + 1 : end;
}

/** Behind the brackets of a part that stands in brackets, else behind the colon of its name. */
function behindEntry(text: string, { nameSpan, span }: { readonly nameSpan: Span; readonly span: Span }): number {
  let at = behindQuote(text, nameSpan);
  while (isBlank(text, at)) at++;
  if (text[at] !== ':') return behindQuote(text, nameSpan);
  let value = at + 1;
  while (isBlank(text, value)) value++;
  return text[value] === '{' ? span.end : at + 1;
}
