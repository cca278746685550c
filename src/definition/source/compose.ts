/**
 * The YAML library at work: from text to its documents.
 */
import { Composer, CST, Lexer, Parser, type Document } from 'yaml';

/** Nesting beyond anything the format has; the library's composer is recursive. */
export const MAX_DEPTH = 60;
/** Tokens that belong to nothing; a text with more of them is not worth taking apart to its end. */
const MAX_STRAYS = 2_000;

/** A document of the library. */
export interface ComposedDocument {
  readonly document: Document.Parsed;
  /** Offset of its `---`, or of the file's start. */
  readonly start: number;
}

/** What the library made of a text. */
export interface Composed {
  /** Two at most, which is one more than is read. */
  readonly documents: readonly ComposedDocument[];
  /** Where the nesting goes too deep, so that nothing behind it was read; undefined where it does not. */
  readonly tooDeep: number | undefined;
  /** Whether something stands in it whose effect may reach beyond its place: anchors, tags, block scalars, marks of documents. */
  readonly farReaching: boolean;
}

/** Never throws. */
export function compose(text: string): Composed {
  const tokens: CST.Token[] = [];
  const parser = new Parser();
  let offset = 0;
  let tooDeep: number | undefined;
  let strays = 0;
  let farReaching = false;
  for (const lexeme of new Lexer().lex(text)) {
    for (const token of parser.next(lexeme)) {
      tokens.push(token);
      if (token.type === 'error') strays++;
    }
    if (strays > MAX_STRAYS) break;
    if (parser.stack.length > MAX_DEPTH) {
      tooDeep = offset;
      break;
    }
    if (!MARKERS.has(lexeme)) offset += lexeme.length;
    farReaching ||= isFarReaching(lexeme);
  }
  for (const token of parser.end()) tokens.push(token);
  const starts = tokens.flatMap((token) => (token.type === 'document' ? [documentStart(token)] : []));
  const composer = new Composer({ schema: 'failsafe', uniqueKeys: false, merge: false });
  const documents: ComposedDocument[] = [];
  for (const document of composer.compose(tokens, false, text.length)) {
    documents.push({ document, start: starts[documents.length] ?? 0 });
    if (documents.length === 2) break;
  }
  return { documents, tooDeep, farReaching };
}

/** Of what the lexer tells apart; the text of a plain scalar may look the same. */
function isFarReaching(lexeme: string): boolean {
  switch (CST.tokenType(lexeme)) {
    case 'alias':
    case 'anchor':
    case 'tag':
    case 'block-scalar-header':
    case 'explicit-key-ind':
    case 'doc-start':
    case 'doc-end':
    case 'directive-line':
    case 'byte-order-mark':
      return true;
    default:
      return false;
  }
}

/** Lexemes by which the lexer marks document, flow end and scalar; they stand for no text. */
const MARKERS: ReadonlySet<string> = new Set(['\u0002', '\u0018', '\u001f']);

function documentStart(document: CST.Document): number {
  return document.start.find((token) => token.type === 'doc-start')?.offset ?? document.offset;
}
