/**
 * A place of the drawn position moved to another: a pivot, a pin, a housing's end, a spring's anchor, a named point.
 *
 * A place by coordinates is written by them, a pin by radius and angle by these: from e₁ of its lever's frame, and along the axis where the
 * text has an offset; without one the pin stays in its lever's plane. Where figures follow from formulas, one `let` is solved for.
 */
import type { Arm, Definition, Lever, Let, Place, Value } from '../definition/definition.ts';
import { addItem } from '../definition/edit.ts';
import type { Replacement } from '../definition/problem.ts';
import { letsBehind } from '../language/letBehind.ts';
import type { Change } from '../protocol/messages.ts';
import type { Triple } from '../protocol/picture.ts';
import type { Edited } from './edited.ts';
import { leverFrame, placeOf } from './leverFrame.ts';
import { placedAt } from './placedAt.ts';
import { figureText, writeFigure, type Component } from './component.ts';
import { solveLet } from './solveLet.ts';
import { dot, minus, plus, times } from './triples.ts';

type PlaceChange = Extract<Change, { kind: 'place' }>;

export function placeEdits(text: string, definition: Definition, change: PlaceChange): Edited {
  const found = placedAt(definition, change.path);
  if (found === undefined) return { why: `There is no place \`${change.path}\` in the text any more` };
  if (!change.to.every(Number.isFinite)) return { why: `\`${change.path}\` cannot be moved there` };
  return found.kind === 'place' ? coordinateEdits(text, definition, change, found.place) : polarEdits(text, definition, change, found);
}

/** What a place is rounded to, m. */
const STEP = 1e-4;
const FINE_STEP = 1e-5;
/** How far from there a pin may land for the sake of short figures, as a share of the step. */
const LANDING = 0.05;
/** What is less is no wish to move, m: neither a rod's play nor a picture's. */
const STILL = 1e-9;

/** How far a figure alone may move the place: of three that do, all together stay within the landing. */
function shareOf({ fine }: PlaceChange): number {
  return ((fine ? FINE_STEP : STEP) * LANDING) / Math.sqrt(3);
}

/** On the grid, where it is another than the present one. */
function rounded(to: number, present: number, { fine }: PlaceChange): number {
  if (Math.abs(to - present) <= STILL) return present;
  const step = fine ? FINE_STEP : STEP;
  return Math.round(to / step) * step;
}

function roundedPlace(change: PlaceChange, present: Triple): Triple {
  const [x, y, z] = change.to;
  return [rounded(x, present[0], change), rounded(y, present[1], change), rounded(z, present[2], change)];
}

function coordinateEdits(text: string, definition: Definition, change: PlaceChange, place: Place): Edited {
  const [x, y, z] = roundedPlace(change, placeOf(place));
  const length = { metres: 1 };
  const components: Component[] = [
    { ...length, value: place.x, target: x },
    { ...length, value: place.y, target: y },
    ...(place.z === undefined ? [] : [{ ...length, value: place.z, target: z }]),
  ];
  const edited = componentEdits(text, definition, change, components, []);
  if ('why' in edited || place.z !== undefined || Math.abs(z) <= shareOf(change)) return edited;
  const added = addItem(text, place.y.path.slice(0, place.y.path.lastIndexOf('.')), figureText(z, 'mm', shareOf(change)));
  if (added === undefined) return { why: `\`${change.path}\` is written in a way in which z can only be added in the text` };
  return { edits: [...edited.edits, added] };
}

function polarEdits(
  text: string,
  definition: Definition,
  change: PlaceChange,
  { lever, position }: { readonly lever: Lever; readonly position: Extract<Arm['position'], { kind: 'polar' }> },
): Edited {
  const frame = leverFrame(lever);
  if (frame === undefined) return { why: `The axis of \`${lever.name}\` has no direction` };
  const { radius, angle, offset } = position;
  const along = times(frame.axis, offset?.nominal ?? 0);
  const [cosine, sine] = [Math.cos(angle.nominal) * radius.nominal, Math.sin(angle.nominal) * radius.nominal];
  const present = plus(plus(frame.pivot, along), plus(times(frame.first, cosine), times(frame.second, sine)));
  const from = minus(roundedPlace(change, present), frame.pivot);
  const [across, up] = [dot(from, frame.first), dot(from, frame.second)];
  const reach = Math.hypot(across, up);
  if (reach <= LEAST_RADIUS) return { why: `The pin would stand on the axis of \`${lever.name}\`` };
  const components: Component[] = [
    { value: radius, target: reach, metres: 1 },
    { value: angle, target: nearestTurn(Math.atan2(up, across), angle.nominal), metres: reach },
    ...(offset === undefined ? [] : [{ value: offset, target: dot(from, frame.axis), metres: 1 }]),
  ];
  return componentEdits(text, definition, change, components, frameValues(lever));
}

/** A pin nearer to its axis has no angle that could be told, m. */
const LEAST_RADIUS = 1e-6;

/** The same direction, counted as the present one is. */
function nearestTurn(angle: number, present: number): number {
  const turns = Math.round((present - angle) / TURN);
  return angle + turns * TURN;
}

const TURN = 2 * Math.PI;

/** @param carriers figures that the whole frame stands on, in which the targets are counted */
function componentEdits(
  text: string,
  definition: Definition,
  change: PlaceChange,
  components: readonly Component[],
  carriers: readonly Value[],
): Edited {
  const share = shareOf(change);
  const moving = components.filter(({ value, target, metres }) => Math.abs(target - value.nominal) * metres > share);
  const following = moving.filter(({ value }) => value.formula !== undefined);
  const plain = moving.filter(({ value }) => value.formula === undefined);
  const edits = plain.map((component) => writeFigure(text, component.value, component.target, share / component.metres));
  if (following.length > 0) {
    const chosen = chosenLet(definition, change, components, carriers);
    if ('why' in chosen) return chosen;
    const solved = solveLet(definition, components, chosen.entry, share);
    if (typeof solved === 'string') return { why: solved };
    if (solved !== undefined) edits.push(solved.write(text));
  }
  const written = edits.filter((edit) => edit !== undefined);
  if (written.length < edits.length) return { why: `\`${change.path}\` is written in a way in which it can only be changed in the text` };
  if (isWrittenTwice(written)) return { why: `One figure of \`${change.path}\` stands for several: change it in the text` };
  return { edits: written };
}

/** As by an alias of YAML. */
function isWrittenTwice(edits: readonly Replacement[]): boolean {
  return new Set(edits.map(({ span }) => span.start)).size < edits.length;
}

function chosenLet(
  definition: Definition,
  { path, through }: PlaceChange,
  components: readonly Component[],
  carriers: readonly Value[],
): { readonly entry: Let } | { readonly why: string } {
  const isBehind = new Set(components.flatMap(({ value }) => letsBehind(definition, value)));
  const behind = definition.lets.filter((entry) => isBehind.has(entry));
  const names = listed(behind.map(({ name }) => `\`${name}\``));
  if (behind.length === 0) return { why: `\`${path}\` follows from a formula of figures alone: change it in the text` };
  if (through === undefined) return { why: `\`${path}\` follows from ${names}: choose which to write` };
  const entry = behind.find(({ name }) => name === through);
  if (entry === undefined) return { why: `\`${path}\` does not follow from \`${through}\`, but from ${names}` };
  if (carriers.some((value) => letsBehind(definition, value).includes(entry)))
    return { why: `\`${through}\` moves the lever of \`${path}\` too: change it in the text` };
  return { entry };
}

/** E.g. `a`, `a or b`, `a, b or c`. */
function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} or ${last}`;
}

/** Every figure that a lever's pivot, axis and reference are made of. */
function frameValues({ pivot, axis, reference }: Lever): readonly Value[] {
  const triples = [
    pivot,
    ...(axis === undefined ? [] : [axis.kind === 'direction' ? axis.direction : axis.place]),
    ...(reference === undefined ? [] : [reference]),
  ];
  return triples.flatMap(({ x, y, z }) => [x, y, ...(z === undefined ? [] : [z])]);
}
