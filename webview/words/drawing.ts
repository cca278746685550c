/** Words of the drawing, with what is put together from them. */
import type { DrawnSpring } from '../../src/protocol/picture.ts';
import type { PartKind } from '../../src/protocol/report.ts';
import type { ViewDirection } from '../state.ts';
import { DRAWING } from './english/drawing.ts';
import { REPORT } from './english/report.ts';
import { spoken, withPhrases } from './say.ts';

const TEXTS = spoken(DRAWING);
const KINDS = spoken(REPORT.kind);

type Counted = keyof typeof TEXTS.one;

export const DRAWING_WORDS = withPhrases(TEXTS, {
  scale: (length: number) => `${length} mm`,
  counted: (things: Counted, count: number) => (count === 1 ? TEXTS.one : TEXTS.many)[things](count),
  toScale: (direction: ViewDirection, there: readonly string[]) =>
    TEXTS.views[direction].toScale(there.length === 0 ? TEXTS.nothingToDraw : there.join(', ')),
  atTravel: (travel: string, levers: readonly string[], plates: readonly string[]) => {
    const moved = levers.length === 0 ? TEXTS.nothingMoves : levers.join(', ');
    return TEXTS.positions(travel, [moved, ...(plates.length === 0 ? [] : [plates.join(', ')])].join('; '));
  },
  platesNamed: (name: string, count: number) => (count === 1 ? TEXTS.onePlateNamed(name) : TEXTS.platesAreNamed(name)),
  platesCount: (count: number) => `${count} ×`,
  namesWithoutRoom: (count: number) => (count === 1 ? TEXTS.oneNameWithoutRoom(count) : TEXTS.manyNamesWithoutRoom(count)),
  nameAndCount: (name: string, count: number) => `${name}, ${count} ×`,
  /** @param more how many there are beside those that are named */
  standing: (names: readonly string[], more: number, where: string) => {
    const named = names.join(', ');
    if (names.length + more === 1) return TEXTS.stands(named, where);
    return TEXTS.stand(more === 0 ? named : TEXTS.namesAndMore(named, more), where);
  },
  part: (kind: PartKind, name: string) => (name === kind ? KINDS[kind] : `${KINDS[kind]} ${name}`),
  dimensions: (name: string, dimensions: readonly string[]) => `${name}: ${dimensions.join(', ')}`,
  follows: (lets: readonly string[]) => TEXTS.followsFrom(lets.join(', ')),
  noteOf: (part: string, note: string) => `${part}: ${note}`,
  springNote: (kind: Exclude<DrawnSpring['form']['kind'], 'torsion'>) =>
    kind === 'extension' ? TEXTS.extensionNote : TEXTS.compressionNote,
  platesNote: (count: number) => (count === 1 ? TEXTS.oneBoreNote : TEXTS.boresNote(count)),
});
