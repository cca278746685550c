/**
 * Lists of figures with too few or too many of them, and what may have been meant: spaces in place of the commas,
 * or decimal commas.
 */
import type { Replacement } from '../problem.ts';
import type { SourceList, SourceNode, SourceScalar } from '../source/tree.ts';
import { problem, type Reading, type Site } from './shape.ts';

/**
 * Reports a list that does not have as many figures as its place takes; its items are then not read, since what is wrong
 * with them mostly follows from it.
 * @param counts how many figures the place takes
 * @param wanted the same in words, after "must have"
 * @param cure what to write where nothing better can be told
 * @returns whether the number is right; a list that a reported mistake may have cut is right as it is
 */
export function hasCount(node: SourceList, site: Site, reading: Reading, counts: readonly number[], wanted: string, cure: string): boolean {
  if (node.damaged || counts.includes(node.items.length)) return true;
  const message = `\`${site.name}\` must have ${wanted}, not ${node.items.length}`;
  const scalars = node.items.filter(isPlain);
  const whole = node.flow && scalars.length === node.items.length;
  const spaced = whole ? withoutCommas(scalars) : undefined;
  const pointed = whole ? withDecimalCommas(scalars) : undefined;
  if (spaced !== undefined && counts.includes(spaced.length)) {
    const list = listText(spaced);
    const replacements = [{ span: node.span, text: list }];
    reading.report(
      problem('wrong-shape', node.span, `${message}: there is no comma between them`, { cure: `Write \`${list}\``, replacements }),
    );
  } else if (pointed !== undefined && counts.includes(pointed.figures.length)) {
    const list = listText(pointed.figures);
    const replacements: readonly Replacement[] | undefined = pointed.certain ? [{ span: node.span, text: list }] : undefined;
    const meant = pointed.certain ? 'has decimal commas' : 'may have decimal commas';
    const code = pointed.certain ? 'bad-quantity' : 'wrong-shape';
    reading.report(
      problem(code, node.span, `${message}: it ${meant}`, {
        cure: pointed.certain ? `Write \`${list}\`` : `Write \`${list}\` where the commas are decimal ones, else ${wanted}`,
        replacements,
      }),
    );
  } else {
    reading.report(problem('wrong-shape', node.span, message, { cure }));
  }
  return false;
}

/** A list as it would be with the decimal comma in it a point. */
export interface Pointed {
  readonly text: string;
  /** Which of the figures has it. */
  readonly index: number;
  /** The digits behind the comma, with their unit. */
  readonly decimals: string;
  /** Whether a space follows every other comma. */
  readonly certain: boolean;
}

/** The one decimal comma that a list of as many figures as it should have may have; undefined where there are none or several. */
export function decimalComma(node: SourceList): Pointed | undefined {
  const scalars = node.items.filter(isPlain);
  if (!node.flow || scalars.length < node.items.length) return undefined;
  const pointed = withDecimalCommas(scalars);
  if (pointed?.figures.length !== scalars.length - 1) return undefined;
  const index = pointed.figures.findIndex((figure, i) => figure !== scalars[i]!.text);
  return { text: listText(pointed.figures), index, decimals: scalars[index + 1]!.text, certain: pointed.certain };
}

const isPlain = (node: SourceNode): node is SourceScalar => node.kind === 'scalar' && node.style === 'plain' && node.exact;

/** Names and figures, each with its unit, that stand side by side; undefined where an item is anything else. */
function withoutCommas(items: readonly SourceScalar[]): readonly string[] | undefined {
  const pieces: string[] = [];
  for (const { text } of items) {
    PIECE.lastIndex = 0;
    while (PIECE.lastIndex < text.length) {
      const piece = PIECE.exec(text)?.[1];
      if (piece === undefined) return undefined;
      pieces.push(piece);
    }
  }
  return pieces;
}

/** A figure with its unit, or a name, and what parts it from the next. */
const PIECE = /([-+\u2212]?(?:\d+\.?\d*|\.\d+)(?:[ \t]?[A-Za-z°%\u00b5\u03bc][^\s;,\d]*)?|[a-z]\w*)(?:[\s;]+|$)/uy;

/**
 * The items with whole figures joined to the digits that follow their comma without a space.
 * @returns undefined where nothing can be joined. Certain where a space follows every other comma.
 */
function withDecimalCommas(items: readonly SourceScalar[]): { readonly figures: readonly string[]; readonly certain: boolean } | undefined {
  const figures: string[] = [];
  let certain = true;
  for (let i = 0; i < items.length; i++) {
    const item = items[i];
    const next = items[i + 1];
    if (item === undefined) break;
    const after =
      next !== undefined && /^[-+\u2212]?\d+$/.test(item.text) && /^\d/.test(next.text) && adjoins(item, next) ? next : undefined;
    const last = after ?? item;
    const following = items[i + (after === undefined ? 1 : 2)];
    if (following !== undefined && adjoins(last, following)) certain = false;
    figures.push(after === undefined ? item.text : `${item.text}.${after.text}`);
    if (after !== undefined) i++;
  }
  return figures.length === items.length ? undefined : { figures, certain };
}

/** Whether nothing but the comma stands between. */
function adjoins(before: SourceScalar, after: SourceScalar): boolean {
  return after.span.start - before.span.end === 1;
}

function listText(figures: readonly string[]): string {
  return `[${figures.join(', ')}]`;
}
