/**
 * Parts that are read as they were before: from one version of a text to the next nearly all of them stay letter by letter.
 *
 * What a part is hangs on its letters, the names of the file that it uses, the values of `let` where it has a formula, and the points that it names.
 * What it asked for is kept beside it, and where all of that is what it was, so is the part: nothing but the time that reading takes tells of
 * it. A part of which anything was told is read anew.
 */
import type { Place } from '../definition.ts';
import { distanceBetween, movedPart } from '../movedParts.ts';
import { forgetOrigin, originOf } from '../source/moved.ts';
import type { SourceNode } from '../source/tree.ts';
import { namesApart, type FileNames } from './sameNames.ts';
import type { Reading, Shape } from './shape.ts';

/** The same shape; what it answered last of each piece of the text is kept. */
export function keptPart<Part extends object>(shape: Shape<Part>): Shape<Part> {
  const known = new WeakMap<SourceNode, Kept<Part>>();
  const keep = (node: SourceNode, kept: Kept<Part>): void => {
    known.set(node, kept);
    forgetOrigin(node);
  };
  return {
    about: shape.about,
    read(node, site, reading) {
      const here = known.get(node);
      const origin = here === undefined ? originOf(node) : undefined;
      const before = here ?? (origin && known.get(origin.node));
      // What an alias repeats has another name there.
      if (before?.path === site.path && holds(before, node, reading)) {
        if (here !== undefined && areSame(before.points, reading)) {
          here.names = reading.names;
          return before.part;
        }
        const part = movedPart(before.part, origin?.by ?? 0, reading.points);
        keep(node, { ...before, names: reading.names, part, points: placesNow(before.points, reading) });
        return part;
      }
      const asked: Asked = { isSound: true, usesLets: false, points: new Map() };
      const part = shape.read(node, site, noting(reading, asked));
      // Of a tolerance that strains several parts only the first tells.
      if (part !== undefined && asked.isSound && reading.strained.size === 0) {
        const lets = asked.usesLets ? reading.lets() : undefined;
        keep(node, { part, path: site.path, names: reading.names, lets, points: asked.points });
      }
      return part;
    },
  };
}

/** A part, and what it hangs on besides its letters. */
interface Kept<Part> {
  readonly part: Part;
  readonly path: string;
  names: FileNames;
  /** Undefined where it asked for none. */
  readonly lets: object | undefined;
  /** Those that it names, as they were. */
  readonly points: ReadonlyMap<string, Place>;
}

/** What a part asks for while it is read. */
interface Asked {
  /** Whether nothing was told of it. */
  isSound: boolean;
  usesLets: boolean;
  readonly points: Map<string, Place>;
}

function noting(reading: Reading, asked: Asked): Reading {
  const { report, unread, points, scope } = reading;
  return {
    ...reading,
    report(found) {
      asked.isSound = false;
      report(found);
    },
    unread(path, span) {
      asked.isSound = false;
      unread(path, span);
    },
    get scope() {
      asked.usesLets = true;
      return scope;
    },
    points: {
      get(name) {
        const place = points.get(name);
        if (place === undefined) asked.isSound = false;
        else asked.points.set(name, place);
        return place;
      },
    },
  };
}

function holds({ names, lets, points }: Kept<object>, node: SourceNode, reading: Reading): boolean {
  if (lets !== undefined && lets !== reading.lets()) return false;
  if (names !== reading.names && !areApart(names, reading.names, node)) return false;
  for (const [name, place] of points) {
    const now = reading.points.get(name);
    if (now === undefined || distanceBetween(place, now) === undefined) return false;
  }
  return true;
}

/** Whether none of the names that are others now can be meant by any word of a part. */
function areApart(one: FileNames, other: FileNames, node: SourceNode): boolean {
  const names = namesApart(one, other);
  return names !== undefined && (names.length === 0 || !hasWord(node, names));
}

/** Whether any of its texts holds one of these, be it within a longer word. */
function hasWord(node: SourceNode, names: readonly string[]): boolean {
  switch (node.kind) {
    case 'empty':
      return false;
    case 'scalar':
      return names.some((name) => node.text.includes(name));
    case 'list':
      return node.items.some((item) => hasWord(item, names));
    case 'map':
      return node.entries.some(({ value }) => hasWord(value, names));
  }
}

function areSame(points: ReadonlyMap<string, Place>, reading: Reading): boolean {
  for (const [name, place] of points) if (reading.points.get(name) !== place) return false;
  return true;
}

function placesNow(points: ReadonlyMap<string, Place>, reading: Reading): ReadonlyMap<string, Place> {
  if (points.size === 0) return points;
  const now = new Map<string, Place>();
  for (const name of points.keys()) now.set(name, reading.points.get(name)!);
  return now;
}
