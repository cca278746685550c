/**
 * A definition as a flat list of parts, each with its fields: what two files are compared by. Spans and the trees of formulas are left
 * out, and so is the order of parts, which means nothing. A part's fields do not speak its own name, so that a renamed part can be
 * told from another one.
 */
import type { Definition, Lever, Moved, PartReference, Place, Value } from '../../definition/definition.ts';
import type { Block } from './comparison.ts';
import { studyParts } from './studyParts.ts';

export interface ComparedPart {
  readonly block: Block;
  /** Of an arm or a drum `lever.name`. */
  readonly name: string;
  /** Keys of its place in the file, joined by dots. */
  readonly path: string;
  /** By place within the part, in the order of the definition. */
  readonly fields: ReadonlyMap<string, Field>;
  /** Arms and drums of a lever. */
  readonly inner: readonly ComparedPart[];
}

export type Field =
  /** `by`: the part's own figure, that of a point which it names, or one that stands elsewhere and is repeated here. */
  | { readonly kind: 'value'; readonly value: Value; readonly by: 'itself' | 'point' | 'alias' }
  /** `refersTo`: in whose names the word is, where it names something of the file. */
  | { readonly kind: 'word'; readonly word: string; readonly refersTo?: Names };

/** The kinds of names that a word can be in: those used once in the file, points, arms of the pedal's lever, formulas, and what `keep` holds. */
export type Names = 'parts' | 'points' | 'pad' | 'formula' | 'kept';

/** Block by block in the order in which parts refer to earlier ones. */
export function partsOf(definition: Definition): readonly ComparedPart[] {
  const { title, pedal } = definition;
  const titleField: readonly [string, Field][] = title === undefined ? [] : [['title', { kind: 'word', word: title }]];
  return [
    { block: 'file', name: '', path: '', fields: new Map(titleField), inner: [] },
    ...definition.lets.map(({ name, value }) => part('let', name, { value })),
    ...definition.points.map(({ name, place }) => part('points', name, place)),
    ...definition.levers.map(leverPart),
    ...definition.cables.map((each) => part('cables', each.name, each)),
    ...definition.rods.map((each) => part('rods', each.name, each)),
    ...definition.slots.map((each) => part('slots', each.name, each)),
    ...definition.couplings.map((each) => part('couplings', each.name, each)),
    ...(pedal === undefined ? [] : [part('pedal', 'pedal', pedal, 'pedal')]),
    ...definition.plates.map((each) => part('plates', each.name, each)),
    ...definition.sensors.map((each) => part('sensors', each.name, each)),
    ...definition.springs.map((each) => part('springs', each.name, each)),
    ...definition.keepOuts.map((each) => part('keep_out', each.name, each)),
    ...definition.movements.map(({ moves, ...each }) => part('movements', each.name, { ...each, moves: movedWords(moves) })),
    ...definition.limits.map(({ key, warning, error }) => part('limits', key, { warning, error })),
    ...definition.requirements.map(({ name, text }): ComparedPart => {
      const fields = new Map<string, Field>([['', { kind: 'word', word: text, refersTo: 'formula' }]]);
      return { block: 'require', name, path: `require.${name}`, fields, inner: [] };
    }),
    ...studyParts(definition, part),
  ];
}

function leverPart({ arms, drums, ...lever }: Lever): ComparedPart {
  const path = `levers.${lever.name}`;
  return {
    ...part('levers', lever.name, lever, path),
    inner: [
      ...arms.map((arm) => part('arms', `${lever.name}.${arm.name}`, arm, `${path}.arms.${arm.name}`)),
      ...drums.map((drum) => part('drums', `${lever.name}.${drum.name}`, drum, `${path}.drums.${drum.name}`)),
    ],
  };
}

function part(block: Block, name: string, source: object, path = `${block}.${name}`): ComparedPart {
  const fields = new Map<string, Field>();
  collect(source, '', path, fields);
  return { block, name, path, fields, inner: [] };
}

const LEFT_OUT = new Set(['name', 'nameSpan', 'span']);

function collect(source: object, at: string, base: string, fields: Map<string, Field>): void {
  // Whether a place was given by a point's name is known before its figures are looked at.
  const entries = Object.entries(source) as [string, unknown][];
  for (const [key, inner] of [...entries.filter(([name]) => name === 'point'), ...entries.filter(([name]) => name !== 'point')]) {
    if (at === '' && LEFT_OUT.has(key)) continue;
    const place = at === '' ? key : `${at}.${key}`;
    if (typeof inner === 'string' || typeof inner === 'boolean' || typeof inner === 'number') {
      if (key !== 'span') fields.set(place, { kind: 'word', word: String(inner) });
    } else if (typeof inner === 'object' && inner !== null && key !== 'span') collectOne(inner, place, base, fields);
  }
}

function collectOne(inner: object, place: string, base: string, fields: Map<string, Field>): void {
  if (isValue(inner)) {
    const own = inner.path === base || inner.path.startsWith(`${base}.`);
    const parent = place.slice(0, Math.max(0, place.lastIndexOf('.')));
    fields.set(place, { kind: 'value', value: inner, by: own ? 'itself' : fields.has(`${parent}.point`) ? 'point' : 'alias' });
  } else if (isPartReference(inner)) {
    fields.set(place, { kind: 'word', word: `${inner.lever}.${inner.part}`, refersTo: 'parts' });
  } else if (isWords(inner)) {
    fields.set(place, { kind: 'word', word: inner.words.join(', '), refersTo: inner.kept === true ? 'kept' : 'parts' });
  } else if (isReference(inner)) {
    fields.set(place, { kind: 'word', word: inner.name, ...refersTo(place) });
  } else collect(inner, place, base, fields);
}

function refersTo(place: string): { readonly refersTo?: Names } {
  const key = place.slice(place.lastIndexOf('.') + 1);
  if (key === 'material') return {};
  return { refersTo: key === 'point' ? 'points' : key === 'pad' ? 'pad' : 'parts' };
}

interface Words {
  readonly words: readonly string[];
  readonly kept?: true;
}

/** Their order means nothing. */
function movedWords(moves: readonly Moved[]): Words {
  return { words: moves.map(movedWord).sort() };
}

function movedWord(moved: Moved): string {
  switch (moved.kind) {
    case 'lever':
      return moved.lever;
    case 'cable-end':
      return `${moved.cable}.${moved.end}`;
    case 'spring-anchor':
      return `${moved.spring}.from`;
  }
}

function isValue(inner: object): inner is Value {
  return 'nominal' in inner && 'path' in inner && 'dimension' in inner;
}

function isPartReference(inner: object): inner is PartReference {
  return 'lever' in inner && 'part' in inner && typeof inner.lever === 'string' && typeof inner.part === 'string';
}

function isReference(inner: object): inner is NonNullable<Place['point']> {
  return 'name' in inner && typeof inner.name === 'string' && Object.keys(inner).length === 2;
}

function isWords(inner: object): inner is Words {
  return 'words' in inner;
}
