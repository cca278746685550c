/**
 * What the format says of a path in a file: for completion and hover, which know where the cursor is and want to
 * know what may stand there.
 */
import { file } from './file.ts';
import type { About, KeyAbout } from './shape.ts';

/** A meaning that a path has. */
export interface Described {
  readonly shape: About;
  /** Absent for the whole file, names and items of lists. */
  readonly key?: KeyAbout;
}

/**
 * @param path keys, names and list places from the file's root
 * @returns every meaning that the path may have (a spring's `rate` has two); empty where the format has no such place
 */
export function describePath(path: readonly string[]): readonly Described[] {
  let found: readonly Described[] = [{ shape: file.about }];
  for (const step of path) found = found.flatMap((described) => formsOf(described.shape).flatMap((shape) => into(shape, step)));
  return found;
}

/** The keys that may stand in a block; of a block with several forms, those of all. */
export function keysAt(path: readonly string[]): ReadonlyMap<string, KeyAbout> {
  const keys = new Map<string, KeyAbout>();
  for (const { shape } of describePath(path)) {
    for (const form of formsOf(shape)) {
      if (form.kind !== 'record') continue;
      for (const [name, key] of Object.entries(form.keys)) if (!keys.has(name)) keys.set(name, key);
    }
  }
  return keys;
}

function formsOf(shape: About): readonly About[] {
  return shape.kind === 'either' ? shape.forms.flatMap(formsOf) : [shape];
}

function into(shape: About, step: string): readonly Described[] {
  switch (shape.kind) {
    case 'record': {
      const key = Object.hasOwn(shape.keys, step) ? shape.keys[step] : undefined;
      return key === undefined ? [] : [{ shape: key.shape, key }];
    }
    case 'map':
      return [{ shape: shape.of }];
    case 'list':
      return isPlace(step) ? [{ shape: shape.of }] : [];
    case 'pair':
      return step === '0' ? [{ shape: shape.first }] : step === '1' ? [{ shape: shape.second }] : [];
    case 'place':
      return isCoordinate(step) ? [{ shape: { kind: 'quantity', dimension: 'length', bounds: {} } }] : [];
    case 'direction':
      return isCoordinate(step) ? [{ shape: { kind: 'quantity', dimension: 'number', bounds: {} } }] : [];
    default:
      return [];
  }
}

function isPlace(step: string): boolean {
  return /^\d+$/.test(step);
}

function isCoordinate(step: string): boolean {
  return /^[012]$/.test(step);
}
