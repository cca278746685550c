/** Which part of one file is which of the other. */
import { formulaWords, type Renames } from './names.ts';
import type { ComparedPart, Field, Names } from './partsOf.ts';

export type Pair = readonly [was: ComparedPart, is: ComparedPart];

export interface Pairing {
  /** In the order of the second file, block by block. */
  readonly pairs: readonly Pair[];
  readonly added: readonly ComparedPart[];
  readonly gone: readonly ComparedPart[];
  /** Those of the pairs that have another name in the second file. */
  readonly renamed: readonly Pair[];
}

/**
 * By block and name, then by being equal in all else. New names are noted in `renames` as they are found, since later parts speak of
 * earlier ones by name. Of several equal parts with other names the first goes with the first.
 */
export function pairUp(was: readonly ComparedPart[], is: readonly ComparedPart[], renames: Renames): Pairing {
  const found: { pairs: Pair[]; added: ComparedPart[]; gone: ComparedPart[]; renamed: Pair[] } = {
    pairs: [],
    added: [],
    gone: [],
    renamed: [],
  };
  for (const block of new Set([...is, ...was].map((part) => part.block))) {
    const before = was.filter((part) => part.block === block);
    const after = is.filter((part) => part.block === block);
    const known = new Map(before.map((part) => [nameNow(part, renames), part]));
    const left = new Set(before);
    for (const { name } of after) {
      const same = known.get(name);
      if (same !== undefined) left.delete(same);
    }
    const nowhere = NAMELESS.has(block) ? new Map<string, ComparedPart[]>() : bySignature(left, renames);
    for (const part of after) {
      let other = known.get(part.name);
      if (other === undefined) {
        other = nowhere.get(signature(part, formulaOrWord))?.shift();
        if (other !== undefined) {
          left.delete(other);
          found.renamed.push([other, part]);
          renames.add(other, part);
        }
      }
      if (other === undefined) {
        found.added.push(part);
        continue;
      }
      found.pairs.push([other, part]);
      const inner = pairUp(other.inner, part.inner, renames);
      found.pairs.push(...inner.pairs);
      found.added.push(...inner.added);
      found.gone.push(...inner.gone);
      found.renamed.push(...inner.renamed);
    }
    found.gone.push(...left);
  }
  return found;
}

/** Blocks whose entries are no things with names: another key is another thing. */
const NAMELESS: ReadonlySet<string> = new Set(['file', 'pedal', 'limits', 'tune', 'free', 'measured']);

/** Arms and drums take part in another name of their lever, free values in that of their `let`. */
function nameNow({ block, name }: ComparedPart, renames: Renames): string {
  return block === 'arms' || block === 'drums' || block === 'free' ? renames.part(name) : name;
}

function bySignature(parts: Iterable<ComparedPart>, renames: Renames): Map<string, ComparedPart[]> {
  const found = new Map<string, ComparedPart[]>();
  for (const part of parts) {
    const own = signature(part, renames.word);
    const same = found.get(own);
    if (same === undefined) found.set(own, [part]);
    else same.push(part);
  }
  return found;
}

/**
 * All of a part but its name, as one text: equal for equal parts, whatever the units, the blanks in formulas and the figures behind them.
 * @param word writes a word as the second file does
 */
function signature(part: ComparedPart, word: Renames['word']): string {
  const fields = [...part.fields].map(([key, field]) => `${key}=${fieldSignature(field, word)}`).sort();
  const inner = part.inner
    .map((each) => `${each.block}.${each.name.slice(each.name.lastIndexOf('.') + 1)}{${signature(each, word)}}`)
    .sort();
  return [...fields, ...inner].join('\n');
}

function fieldSignature(field: Field, word: Renames['word']): string {
  if (field.kind === 'word') return field.refersTo === undefined ? field.word : word(field.word, field.refersTo);
  const { formula, nominal, tolerance, dimension } = field.value;
  // Where a place is given by a point's name, the name says it.
  if (field.by === 'point') return '';
  if (formula !== undefined) return word(formula.text, 'formula');
  return [dimension, nominal, tolerance?.plus, tolerance?.minus]
    .map((each) => (typeof each === 'number' ? each.toPrecision(DIGITS) : each))
    .join(' ');
}

/** More than anybody writes, and fewer than a conversion of units disturbs. */
const DIGITS = 10;

function formulaOrWord(word: string, names: Names): string {
  return names === 'formula' ? formulaWords(word) : word;
}
