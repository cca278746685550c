/**
 * Reading of blocks that are of use with a piece missing: each piece that cannot be read is noted with its place, and the rest stands.
 */
import type { Unread } from '../definition.ts';
import type { Span } from '../span.ts';
import type { SourceNode } from '../source/tree.ts';
import { nearestWord } from '../names.ts';
import type { RecordSource } from './record.ts';
import { itemSite, problem, reportShape, type About, type Reading, type Shape, type Site } from './shape.ts';

/** A value that another key of its block must be known for: its place and what the format says of it. */
export interface Deferred {
  readonly node: SourceNode;
  readonly site: Site;
}

/** A value that is read when its block is whole. */
export function deferred(about: About): Shape<Deferred> {
  return { about, read: (node, site) => ({ node, site }) };
}

/** The same, with a note where it cannot be read. */
export function noted<T>(shape: Shape<T>): Shape<T> {
  return {
    about: shape.about,
    read(node, site, reading) {
      const value = shape.read(node, site, reading);
      if (value === undefined) reading.unread(site.path, site.span);
      return value;
    },
  };
}

/** Any number of values; those that cannot be read are left out and noted. */
export function eachOf<T>(shape: Shape<T>, what: string, least: number): Shape<{ readonly span: Span; readonly items: readonly T[] }> {
  const one = noted(shape);
  return {
    about: { kind: 'list', of: shape.about, least },
    read(node, site, reading) {
      if (node.kind !== 'list') return reportShape(node, site, reading, `a list of ${what}`, `Write ${what} in brackets, \`[…, …]\``);
      if (node.items.length < least) {
        if (!node.damaged) {
          reading.report(
            problem('wrong-shape', node.span, `\`${site.name}\` needs ${least} ${what} or more, not ${node.items.length}`, {
              cure: `Write more ${what}`,
            }),
          );
        }
        return undefined;
      }
      if (node.damaged) reading.unread(site.path, site.span);
      const items = node.items.map((item, index) => one.read(item, itemSite(site, index, item), reading));
      return { span: node.span, items: items.filter((item) => item !== undefined) };
    },
  };
}

/** A block with its own list of what could not be read in it, which then does not count against the linkage. */
export function withOwnNotes<T extends object>(shape: Shape<T>): Shape<T & { readonly unread: readonly Unread[] }> {
  return {
    about: shape.about,
    read(node, site, reading) {
      const unread: Unread[] = [];
      const value = shape.read(node, site, { ...reading, unread: (path, span) => unread.push({ path, span }) });
      return value === undefined ? undefined : { ...value, unread };
    },
  };
}

/** Reports a key that should be there, unless it is only misspelt or a reported mistake may have cut it off. */
export function reportAbsent({ node, site, has }: RecordSource, key: string, cure: string, reading: Reading): void {
  if (has(key) || node.damaged || node.entries.some((entry) => nearestWord(entry.key, [key]) !== undefined)) return;
  reading.report(problem('missing-key', site.nameSpan, `\`${site.name}\` has no \`${key}\``, { cure }));
}
