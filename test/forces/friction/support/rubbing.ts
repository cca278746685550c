/** Random linkages with springs, whose joints and bearings rub: coefficients are handed out to the text of a sprung sketch. */
import { sprungText, type SprungSketch } from '../../support/sprung.ts';

/** Coefficients and diameters, mm; of a drag N·mm. */
export interface Rubbing {
  readonly drag: number;
  readonly bearing: { readonly diameter: number; readonly friction: number };
  readonly ends: { readonly pin: number; readonly friction: number };
  readonly slot: number;
  readonly cable: { readonly bend: number; readonly friction: number };
}

export const NOTHING_RUBS: Rubbing = {
  drag: 0,
  bearing: { diameter: 8, friction: 0 },
  ends: { pin: 6, friction: 0 },
  slot: 0,
  cable: { bend: 180, friction: 0 },
};

/** A little of everything: friction circles far smaller than any arm. */
export const ALL_RUBS: Rubbing = {
  drag: 15,
  bearing: { diameter: 8, friction: 0.12 },
  ends: { pin: 6, friction: 0.1 },
  slot: 0.1,
  cable: { bend: 180, friction: 0.08 },
};

/** The sketch's text with the same friction at every place of a kind. */
export function rubbingText(sketch: SprungSketch, rubbing: Rubbing): string {
  let text = sprungText(sketch);
  const extend = (block: string, name: string, more: string): void => {
    const [before, after] = splitAt(text, `${block}:`);
    const line = new RegExp(`^( +${name}: ?\\{.*)\\}$`, 'm');
    if (!line.test(after)) throw new Error(`No line of ${name} under ${block} in\n${text}`);
    text = before + after.replace(line, `$1, ${more}}`);
  };
  const { drag, bearing, ends, slot, cable } = rubbing;
  for (const { name } of sketch.levers) {
    const line = `  ${name}:\n`;
    if (!text.includes(line)) throw new Error(`No line of ${name} in\n${text}`);
    text = text.replace(
      line,
      `${line}    friction: ${drag}\n    bearing: {diameter: ${bearing.diameter}, friction: ${bearing.friction}}\n`,
    );
  }
  for (const { kind, name } of sketch.joints) {
    if (kind === 'rod') extend('rods', name, `ends: {kind: rod_end, misalignment: 89 deg, pin: ${ends.pin}, friction: ${ends.friction}}`);
    if (kind === 'slot') extend('slots', name, `friction: ${slot}`);
    if (kind === 'cable') extend('cables', name, `bend: ${cable.bend} deg, friction: ${cable.friction}`);
  }
  return text;
}

function splitAt(text: string, mark: string): readonly [string, string] {
  const at = text.indexOf(`\n${mark}`) + 1;
  return [text.slice(0, at), text.slice(at)];
}
