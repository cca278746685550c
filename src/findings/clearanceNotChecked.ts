/** What of clearance is not checked, and why. */
import type { Body, LeverBody, RodBody, Shapeless } from '../clearance/bodies.ts';
import { clearanceOf, type Gap } from '../clearance/clearance.ts';
import { FOUND } from '../clearance/leastGap.ts';
import type { Runless } from '../clearance/runs.ts';
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
  const all: NotChecked[] = [...withoutShape(study)];
  for (const each of bodies.shapeless) {
    const against = metBy(study, each);
    if (against !== undefined) all.push(told(each, whyShapeless(each, against)));
  }
  for (const part of [...bodies.levers, ...bodies.rods, ...bodies.runs]) {
    const missed = (why: (typeof apart)[number]['why']): readonly string[] =>
      apart.filter((each) => each.why === why && each.one === part).map(({ other }) => other.name);
    const [layers, extents] = [missed('between-layers'), missed('no-extent')];
    if (layers.length > 0)
      all.push(
        told(part, `whether it touches ${listed(layers)}, since a ${part.kind} has no layer and the levers that it joins stand on two`),
      );
    const how = part.kind === 'lever' ? 'it' : 'a lever on it';
    if (extents.length > 0)
      all.push(
        told(
          part,
          `whether it clears ${listed(extents)}: ${how} does not turn about z, and without \`from\` and \`to\` ${extents.length === 1 ? 'that' : 'those'} may stand anywhere along it`,
        ),
      );
    if (part.inSpace && (part.kind === 'lever' || part.kind === 'rod') && hasOthers(study, part))
      all.push(told(part, `whether it touches other parts, since ${how} does not turn about z`));
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

/** All that has no shape here and might meet a keep-out, by name, in one line a keep-out. */
function withoutShape({ travel, definition }: Study): readonly NotChecked[] {
  const { keepOuts, runless } = clearanceOf(travel).bodies;
  const named = (which: readonly Runless[], one: string, more: string, why = ''): readonly string[] => {
    const names = [...new Set(which.map(({ name }) => name))];
    return names.length === 0 ? [] : [`the ${names.length === 1 ? one : more} ${listed(names)}${why}`];
  };
  const of = (kind: Runless['kind'], want: Runless['want']): readonly Runless[] =>
    runless.filter((each) => each.kind === kind && each.want === want);
  const plates = definition.plates.map(({ name }): Runless => ({ name, kind: 'spring', want: undefined }));
  const parts = [
    ...named(of('housing', undefined), 'housing of', 'housings of'),
    ...named(of('inner', 'diameter'), 'inner of', 'inners of', ' for want of `diameter`'),
    ...named(of('inner', undefined), 'inner of', 'inners of', ' where it comes onto a drum'),
    ...named(of('spring', 'wire'), 'spring', 'springs', ' for want of `wire`'),
    ...named(of('spring', undefined), 'spring', 'springs', ' wound about an axis'),
    ...named(plates, 'plates', 'plates'),
  ];
  if (parts.length === 0) return [];
  const message = `Not checked: whether these clear it: ${parts.join('; ')}`;
  return keepOuts.map(({ name, source }) => ({ part: name, span: source.nameSpan, message }));
}

/** Whether there are other levers or rods with a shape that it could meet. */
function hasOthers(study: Study, part: LeverBody | RodBody): boolean {
  const { levers, rods } = clearanceOf(study.travel).bodies;
  const isJoined = (lever: LeverBody | RodBody, rod: LeverBody | RodBody): boolean =>
    rod.kind === 'rod' && [rod.source.from.lever, rod.source.to.lever].includes(lever.name);
  return [...levers, ...rods].some((other) => other !== part && isShaped(other) && !isJoined(other, part) && !isJoined(part, other));
}

/** What something without a shape could meet; undefined where there is nothing on its layer. */
function metBy(study: Study, { kind, layer, source, name }: Shapeless): 'keep-outs' | 'parts' | undefined {
  if (kind === 'keep-out') return 'parts';
  const { bodies } = clearanceOf(study.travel);
  const isOn = (other: { readonly layer: number | undefined }): boolean =>
    other.layer === undefined || layer === undefined || other.layer === layer;
  const isThere = study.definition.keepOuts.some((each) => isOn({ layer: each.layer?.nominal }));
  if (isThere) return 'keep-outs';
  const others: readonly (LeverBody | RodBody)[] = [...bodies.levers, ...bodies.rods];
  const isJoined = (other: Body): boolean => other.kind === 'rod' && [other.source.from.lever, other.source.to.lever].includes(name);
  return others.some((other) => other.source !== source && isShaped(other) && isOn(other) && !isJoined(other)) ? 'parts' : undefined;
}

/** Whether somebody has given it a breadth or an outline: a drum has a radius anyway. */
function isShaped({ source }: LeverBody | RodBody): boolean {
  return source.width !== undefined || 'outline' in source;
}

function whyShapeless({ kind, why, piece, name, source }: Shapeless, against: 'keep-outs' | 'parts'): string {
  const what =
    kind === 'keep-out' ? 'clearance' : against === 'keep-outs' ? 'whether it clears the keep-outs' : 'whether it touches other parts';
  switch (why) {
    case 'no-width':
      return `${what}, for want of \`width\`${kind === 'lever' ? ' or `outline`' : ''}`;
    case 'turned-drum':
      return `${what} with its drum ${name}.${piece ?? ''}, which does not turn about z, and of which the file does not say how thick it is`;
    case 'turned-outline':
      return `${what} with its outline, which does not turn about z, and of which the file does not say how thick it is`;
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
