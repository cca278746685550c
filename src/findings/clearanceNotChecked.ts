/** What of clearance is not checked, and why. */
import type { Body, KeepOutBody, Shapeless } from '../clearance/bodies.ts';
import { clearanceOf, type Gap } from '../clearance/clearance.ts';
import { FOUND } from '../clearance/leastGap.ts';
import type { Definition } from '../definition/definition.ts';
import { MOST_CORNERS } from '../numeric/polygon.ts';
import type { NotChecked } from './finding.ts';
import { TOUCHES } from './gaps.ts';
import type { Study } from './study.ts';
import { listed } from './words.ts';

export function clearanceNotChecked(study: Study): readonly NotChecked[] {
  const { bodies, keepOuts, parts, apart } = clearanceOf(study.travel);
  const told = (about: Pick<Body, 'name' | 'source'>, what: string): NotChecked => ({
    part: about.name,
    span: about.source.nameSpan,
    message: `Not checked: ${what}`,
  });
  const all: NotChecked[] = [];
  const blocks = unlookedAt(study.definition);
  if (blocks.length > 0) for (const body of bodies.keepOuts) all.push(told(body, `whether ${listed(blocks)} clear it`));
  for (const each of bodies.shapeless) {
    const against = metBy(study, each);
    if (against !== undefined) all.push(told(each, whyShapeless(each, against)));
  }
  for (const rod of bodies.rods) {
    const missed = apart.filter(({ one, why }) => why === 'rod-between-layers' && one === rod).map(({ other }) => other.name);
    if (missed.length > 0)
      all.push(told(rod, `whether it touches ${listed(missed)}, since a rod has no layer and the levers that it joins stand on two`));
  }
  for (const { one, other, why } of apart) {
    if (why === 'one-shaft') all.push(told(one, `whether it touches ${other.name}, which turns about the same axis on the same layer`));
    if (why === 'slot') all.push(told(one, `whether it touches ${other.name} beside the slot that joins them`));
  }
  const undecided = (gap: Gap, below: number): void => {
    const { least, proved } = gap.search(below);
    if (least !== undefined || proved >= below - 2 * FOUND) return;
    const why = Number.isNaN(proved) ? ', since it cannot be assembled' : ': they stay too near along too much of the way to decide it';
    all.push(told(gap.one, `whether it ${below > TOUCHES ? 'keeps clear of' : 'touches'} ${gap.other.name}${why}`));
  };
  for (const gap of keepOuts) undecided(gap, Math.max(gap.other.source.clearance?.nominal ?? 0, TOUCHES));
  for (const gap of parts) undecided(gap, TOUCHES);
  return all;
}

/** Blocks of the file whose parts have no shape here. */
function unlookedAt({ cables, springs, plates }: Definition): readonly string[] {
  return [...(cables.length > 0 ? ['cables'] : []), ...(springs.length > 0 ? ['springs'] : []), ...(plates.length > 0 ? ['plates'] : [])];
}

/** What something without a shape could meet; undefined where there is nothing on its layer. */
function metBy(study: Study, { kind, layer, source, name }: Shapeless): 'keep-outs' | 'parts' | undefined {
  if (kind === 'keep-out') return 'parts';
  const { bodies } = clearanceOf(study.travel);
  const isOn = (other: { readonly layer: number | undefined }): boolean =>
    other.layer === undefined || layer === undefined || other.layer === layer;
  const isThere = study.definition.keepOuts.some((each) => isOn({ layer: each.layer?.nominal }));
  if (isThere) return 'keep-outs';
  const others: readonly (Body & { readonly kind: 'lever' | 'rod' })[] = [...bodies.levers, ...bodies.rods];
  const isJoined = (other: Body): boolean => other.kind === 'rod' && [other.source.from.lever, other.source.to.lever].includes(name);
  return others.some((other) => other.source !== source && isShaped(other) && isOn(other) && !isJoined(other)) ? 'parts' : undefined;
}

/** Whether somebody has given it a breadth or an outline: a drum has a radius anyway. */
function isShaped({ source }: Exclude<Body, KeepOutBody>): boolean {
  return source.width !== undefined || 'outline' in source;
}

function whyShapeless({ kind, why, piece, name, source }: Shapeless, against: 'keep-outs' | 'parts'): string {
  const what =
    kind === 'keep-out' ? 'clearance' : against === 'keep-outs' ? 'whether it clears the keep-outs' : 'whether it touches other parts';
  switch (why) {
    case 'no-width':
      return `${what}, for want of \`width\`${kind === 'lever' ? ' or `outline`' : ''}`;
    case 'turned-axis':
      return `${what}, since ${kind === 'rod' ? 'a lever on it' : 'it'} does not turn about z${against === 'keep-outs' ? ', and a keep-out does not say how far it reaches along z' : ''}`;
    case 'profiled-drum':
      return `${what} with its drum ${name}.${piece ?? ''}, which is not round, and of which no cable and profile tell the shape`;
    case 'many-corners':
      return `${what}${kind === 'lever' ? ' with its outline' : ''}, which has ${cornersOf(source)} corners: more than ${MOST_CORNERS} are not looked at`;
    case 'no-area':
      return `${what}${kind === 'lever' ? ' with its outline' : ''}, which bounds no area seen along z`;
    case 'unbounded':
      return `${what}, since its figures are beyond all measure`;
  }
}

function cornersOf(source: Shapeless['source']): number {
  if ('outline' in source) return source.outline.length;
  return 'shape' in source && source.shape.kind === 'polygon' ? source.shape.corners.length : 0;
}
