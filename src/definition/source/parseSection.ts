/**
 * One section of a file by itself: sound, or with a single slip as a line has it that is being typed, a word without its colon and value.
 *
 * Such a slip ends where the next section begins, which is shown by a key that is put in its place: where the library takes that key for what
 * it is, or where the section is sound once the word is blanked, nothing outside is touched. Any other mistake is left to `parse.ts`.
 */
import { isMap, type Document, type YAMLError } from 'yaml';
import type { ProblemCode } from '../codes.ts';
import type { Problem } from '../problem.ts';
import type { Span } from '../span.ts';
import { withColon, type Colonless } from './colonless.ts';
import { compose } from './compose.ts';
import { convert } from './convert.ts';
import { blank, mishapOf } from './mishap.ts';
import type { SourceEntry } from './tree.ts';

/** What a section stands below while it is parsed, so that its entries are what they are in the file: in a block within a block. */
export const IN_BLOCK = 'p:\n';
export const IN_FILE = '\n';

/** What stands in a section. */
export interface Content {
  readonly entries: readonly SourceEntry[];
  readonly problems: readonly Problem[];
}

/** The content of a section with a slip. */
export interface Spoilt extends Content {
  readonly slip: Problem;
  /** What of it was blanked. */
  readonly masks: readonly Span[];
}

/**
 * Places count from the start of the parent.
 * @returns undefined where the section by itself does not tell what it is in the file: it has a mistake of YAML, or something unusual as an
 * anchor or a tag
 */
export function parseSection(source: string, parent: string): Content | undefined {
  const document = composed(source);
  return document === undefined || faultsOf(document).length > 0 ? undefined : contentOf(document, { source, parent });
}

/**
 * The same of a section that is not sound.
 * @param indentation of the next section; undefined where it is the last
 */
export function parseSpoilt(source: string, parent: string, indentation: number | undefined): Spoilt | undefined {
  const next = indentation === undefined ? '' : `${' '.repeat(indentation)}${NEXT}:\n`;
  const document = composed(source + next);
  const [fault, ...others] = document === undefined ? [] : faultsOf(document);
  if (document === undefined || fault === undefined || others.length > 0 || !isSlip(fault)) return undefined;
  const { problem: slip, mask: masks = [], colonless } = mishapOf(fault, source + next) ?? {};
  if (slip === undefined || ![slip.span, ...masks].every(({ start, end }) => start > parent.length && end <= source.length))
    return undefined;
  if (masks.length > 0 || colonless !== undefined) {
    const mended = colonless === undefined ? masks.reduce(blank, source) : withColon(source, colonless);
    const sound = composed(mended);
    if (sound === undefined || faultsOf(sound).length > 0) return undefined;
    const content = contentOf(sound, { source: mended, parent, masks, colonless: colonless === undefined ? [] : [colonless] });
    return content && { ...content, slip, masks };
  }
  const content = contentOf(document, { source: source + next, parent, damages: [slip.span], indentation });
  return content && { ...content, slip, masks };
}

const NEXT = 'q';

/** A word that is no key yet, or one without its value. */
function isSlip({ code, message }: YAMLError): boolean {
  return code === 'MULTILINE_IMPLICIT_KEY' || (code === 'MISSING_CHAR' && message.includes('followed by map values'));
}

function composed(source: string): Document.Parsed | undefined {
  const { documents, tooDeep, farReaching } = compose(source);
  return documents.length > 1 || tooDeep !== undefined || farReaching ? undefined : documents[0]?.document;
}

function faultsOf({ errors, warnings }: Document.Parsed): readonly YAMLError[] {
  return warnings.length === 0 ? errors : [...errors, ...warnings];
}

interface Given {
  readonly source: string;
  readonly parent: string;
  readonly masks?: readonly Span[];
  readonly damages?: readonly Span[];
  readonly colonless?: readonly Colonless[];
  /** Of the key that stands behind the section; absent where there is none. */
  readonly indentation?: number | undefined;
}

function contentOf(
  { contents }: Document.Parsed,
  { source, parent, masks = [], damages = [], colonless = [], indentation }: Given,
): Content | undefined {
  if (!isMap(contents)) return undefined;
  const { root, problems } = convert(contents, source, { masks, damages, colonless });
  if (root?.kind !== 'map' || !problems.every(({ code }) => WITHIN.has(code))) return undefined;
  const isWithin = parent !== IN_FILE;
  const [outer, block] = isWithin ? [contents.items[0]?.value, root.entries[0]?.value] : [contents, root];
  if (!isMap(outer) || block?.kind !== 'map' || block.flow) return undefined;
  // What was blanked damages the block, which is told of the whole of it.
  if (block.damaged && masks.length === 0) return undefined;
  // Keys that stand twice are told by the whole block, after all that is in it.
  if (block.entries.length !== outer.items.length) return undefined;
  if (indentation === undefined) return root.entries.length > 1 && isWithin ? undefined : { entries: block.entries, problems };
  const behind = isWithin && indentation === 0 ? root : block;
  if (behind.entries.at(-1)?.key !== NEXT || (isWithin && root.entries.length !== (behind === root ? 2 : 1))) return undefined;
  return { entries: behind === block ? block.entries.slice(0, -1) : block.entries, problems };
}

/** Mistakes whose effects end where the value or the block ends in which they stand. */
const WITHIN: ReadonlySet<ProblemCode> = new Set<ProblemCode>(['duplicate-key', 'quote-formula', 'bad-quantity']);
