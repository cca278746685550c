/**
 * Shapes of several figures: places, directions, ranges and lists.
 */
import type { Direction, Place, Value } from '../definition.ts';
import { nearestWord } from '../names.ts';
import type { Span } from '../span.ts';
import type { SourceNode } from '../source/tree.ts';
import { hasCount } from './figureList.ts';
import { wordList } from './record.ts';
import { firstOf, quantity } from './scalars.ts';
import { itemSite, problem, reportShape, type About, type Reading, type Shape, type Site } from './shape.ts';
import { shortened } from '../source/shortened.ts';

/** `[x, y]` or `[x, y, z]`, or a name from `points`. */
export function place(): Shape<Place> {
  return {
    about: { kind: 'place', named: true },
    read(node, site, reading) {
      if (node.kind === 'scalar') return placeByName(node.text, node.span, reading);
      return readCoordinates(node, site, reading, 'a place', 'Write `[x, y]`, `[x, y, z]` or a name from `points`');
    },
  };
}

/** `[x, y]` or `[x, y, z]`, lengths: a place of its own or a displacement. */
export function coordinates(what: string): Shape<Place> {
  return {
    about: { kind: 'place', named: false },
    read: (node, site, reading) => readCoordinates(node, site, reading, what, 'Write `[x, y]` or `[x, y, z]`'),
  };
}

/** `[x, y]` or `[x, y, z]`, plain numbers of which not all are 0. */
export function direction(): Shape<Direction> {
  const number = quantity('number');
  return {
    about: { kind: 'direction' },
    read(node, site, reading) {
      const read = readFigures(node, site, reading, number, 'a direction', 'Write `[x, y]` or `[x, y, z]`, plain numbers');
      if (read === undefined) return undefined;
      const { x, y, z } = read;
      if (x.nominal !== 0 || y.nominal !== 0 || (z?.nominal ?? 0) !== 0) return read;
      reading.report(
        problem('out-of-range', node.span, `\`${site.name}\` is a direction and cannot be all zeros`, {
          cure: 'Write the way it points, such as `[1, 0]`',
        }),
      );
      return undefined;
    },
  };
}

/** A list of exactly two values. */
export function pair<A, B>(first: Shape<A>, second: Shape<B>): Shape<{ readonly span: Span; readonly first: A; readonly second: B }> {
  return {
    about: { kind: 'pair', first: first.about, second: second.about },
    read(node, site, reading) {
      const cure = 'Write two values in brackets, `[…, …]`';
      if (node.kind !== 'list') return reportShape(node, site, reading, 'a list of two values', cure);
      if (!hasCount(node, site, reading, [2], 'two values', cure)) return undefined;
      const [one, two] = node.items;
      const a = one === undefined ? undefined : first.read(one, itemSite(site, 0, one), reading);
      const b = two === undefined ? undefined : second.read(two, itemSite(site, 1, two), reading);
      return a === undefined || b === undefined || node.items.length !== 2 ? undefined : { span: node.span, first: a, second: b };
    },
  };
}

/** How the two ends of a pair must lie to each other. */
export type RangeOrder = 'rising' | 'not falling' | 'different';

/** A pair of figures of one dimension, in the order that the place needs. */
export function range(figure: Shape<Value>, order: RangeOrder): Shape<{ readonly span: Span; readonly from: Value; readonly to: Value }> {
  const both = pair(figure, figure);
  return {
    about: both.about,
    read(node, site, reading) {
      const read = both.read(node, site, reading);
      if (read === undefined) return undefined;
      const { span, first: from, second: to } = read;
      if (inOrder(from, to, order)) return { span, from, to };
      reading.report(
        problem(
          'out-of-range',
          span,
          from.nominal === to.nominal
            ? `\`${site.name}\` has the same value twice`
            : `\`${site.name}\` runs from the greater to the smaller value`,
          {
            cure:
              from.nominal !== to.nominal
                ? 'Write the smaller value first'
                : order === 'rising'
                  ? 'Write two different values, the smaller first'
                  : 'Write two different values',
          },
        ),
      );
      return undefined;
    },
  };
}

/** Any number of values of one shape. */
export function listOf<T>(shape: Shape<T>, what: string, least: number): Shape<{ readonly span: Span; readonly items: readonly T[] }> {
  return {
    about: { kind: 'list', of: shape.about, least },
    read(node, site, reading) {
      if (node.kind !== 'list') return reportShape(node, site, reading, `a list of ${what}`, `Write ${what} in brackets, \`[…, …]\``);
      const items = node.items.map((item, index) => shape.read(item, itemSite(site, index, item), reading));
      if (items.length < least) {
        if (!node.damaged) {
          reading.report(
            problem('wrong-shape', node.span, `\`${site.name}\` needs ${least} ${what} or more, not ${items.length}`, {
              cure: `Write more ${what}`,
            }),
          );
        }
        return undefined;
      }
      const whole = items.filter((item) => item !== undefined);
      return whole.length === items.length && !node.damaged ? { span: node.span, items: whole } : undefined;
    },
  };
}

/** One of several shapes, told apart by the form of the node; the last stands for all that no other claims. */
export function either<T>(
  forms: readonly { readonly when: (node: SourceNode) => boolean; readonly shape: Shape<T> }[],
  otherwise: Shape<T>,
): Shape<T> {
  const about: About = { kind: 'either', forms: [...forms.map((form) => form.shape.about), otherwise.about] };
  return {
    about,
    read: (node, site, reading) => (forms.find((form) => form.when(node))?.shape ?? otherwise).read(node, site, reading),
  };
}

/** The same shape with its value put into another form. */
export function shaped<A, B>(shape: Shape<A>, make: (value: A, node: SourceNode, site: Site, reading: Reading) => B | undefined): Shape<B> {
  return {
    about: shape.about,
    read(node, site, reading) {
      const value = shape.read(node, site, reading);
      return value === undefined ? undefined : make(value, node, site, reading);
    },
  };
}

const length = quantity('length');

function readCoordinates(node: SourceNode, site: Site, reading: Reading, what: string, cure: string): Place | undefined {
  return readFigures(node, site, reading, length, what, cure);
}

function readFigures(
  node: SourceNode,
  site: Site,
  reading: Reading,
  figure: Shape<Value>,
  what: string,
  cure: string,
): { readonly span: Span; readonly x: Value; readonly y: Value; readonly z?: Value } | undefined {
  if (node.kind !== 'list') return reportShape(node, site, reading, what, cure);
  if (!hasCount(node, site, reading, [2, 3], 'two or three figures', cure)) return undefined;
  const figures = node.items.map((item, index) => figure.read(item, itemSite(site, index, item), reading));
  const [x, y, z] = figures;
  if (x === undefined || y === undefined || figures.length > 3) return undefined;
  if (figures.length === 2) return { span: node.span, x, y };
  return z === undefined ? undefined : { span: node.span, x, y, z };
}

const POINTS_SHOWN = 6;

function placeByName(name: string, span: Span, reading: Reading): Place | undefined {
  const point = reading.points.get(name);
  if (point !== undefined) return { ...point, span, point: { name, span } };
  // A point that is there and could not be read has been told at its own place.
  if (reading.declared.points.has(name)) return undefined;
  const known = firstOf(reading.declared.points.keys(), POINTS_SHOWN);
  const nearest = nearestWord(name, reading.declared.points.keys());
  reading.report(
    problem('unknown-name', span, `There is no point \`${shortened(name)}\``, {
      cure:
        nearest !== undefined
          ? `Did you mean \`${nearest}\`?`
          : known.length === 0
            ? 'Write `[x, y]`, or give the point in `points`'
            : `Write \`[x, y]\`, or one of ${wordList(known, 'or')}`,
      replacements: nearest === undefined ? undefined : [{ span, text: nearest }],
    }),
  );
  return undefined;
}

function inOrder(from: Value, to: Value, order: RangeOrder): boolean {
  switch (order) {
    case 'rising':
      return from.nominal < to.nominal;
    case 'not falling':
      return from.nominal <= to.nominal;
    case 'different':
      return from.nominal !== to.nominal;
  }
}
