/**
 * The source tree of a file together with what the format says of each of its places: the way in for everything that
 * looks at the whole text. Works on half-written files; a node that the format has no place for is walked with no meaning.
 */
import { file } from '../definition/schema/file.ts';
import type { About } from '../definition/schema/shape.ts';
import type { SourceEntry, SourceNode, SourceScalar } from '../definition/source/tree.ts';

/** What is told of each place, in file order but for aliases, whose node is told at every place where it stands. */
export interface SourceVisitor {
  /** @param path keys and list places from the root to the value; live, to be copied where kept */
  scalar?(node: SourceScalar, path: readonly string[], forms: readonly About[]): void;
  /** A key, before its value. @param path ends with the key @param forms of the value; empty for a key that the format does not have */
  entry?(entry: SourceEntry, path: readonly string[], forms: readonly About[]): void;
}

/** Calls the visitor for every key and every text of the file. */
export function walkSource(root: SourceNode | undefined, visitor: SourceVisitor): void {
  const path: string[] = [];
  const walk = (node: SourceNode, forms: readonly About[]): void => {
    switch (node.kind) {
      case 'empty':
        return;
      case 'scalar':
        visitor.scalar?.(node, path, forms);
        return;
      case 'list':
        for (const [index, item] of node.items.entries()) {
          path.push(String(index));
          walk(item, formsOfItem(forms, index));
          path.pop();
        }
        return;
      case 'map':
        for (const entry of node.entries) {
          const inner = formsOfKey(forms, entry.key);
          path.push(entry.key);
          visitor.entry?.(entry, path, inner);
          walk(entry.value, inner);
          path.pop();
        }
    }
  };
  if (root !== undefined) walk(root, [file.about]);
}

function formsOfKey(forms: readonly About[], key: string): readonly About[] {
  return forms.flatMap((form): readonly About[] => {
    if (form.kind === 'map') return flatten(form.of);
    if (form.kind !== 'record' || !Object.hasOwn(form.keys, key)) return [];
    const about = form.keys[key];
    return about === undefined ? [] : flatten(about.shape);
  });
}

function formsOfItem(forms: readonly About[], index: number): readonly About[] {
  return forms.flatMap((form): readonly About[] => {
    switch (form.kind) {
      case 'list':
        return flatten(form.of);
      case 'pair':
        return index === 0 ? flatten(form.first) : index === 1 ? flatten(form.second) : [];
      case 'place':
        return index < 3 ? [LENGTH] : [];
      case 'direction':
        return index < 3 ? [NUMBER] : [];
      default:
        return [];
    }
  });
}

const LENGTH: About = { kind: 'quantity', dimension: 'length', bounds: {} };
const NUMBER: About = { kind: 'quantity', dimension: 'number', bounds: {} };

function flatten(form: About): readonly About[] {
  return form.kind === 'either' ? form.forms.flatMap(flatten) : [form];
}
