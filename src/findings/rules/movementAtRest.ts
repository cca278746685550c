/**
 * A movement of the engine opens or closes the throttle with the foot off.
 *
 * Engines rock on their mounts. Where a housing end stands on the body and the shaft on the engine, or the other way round, the
 * cable is pulled by the rocking itself: the idle speed wanders, and on a hard pull the throttle opens without the pedal. Up to 0.01° is
 * taken as still: common practice, no source. So it is where a spring loses so much by it that friction then holds the shaft somewhere, which
 * it does not otherwise.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft:
 *     pivot: [100, 0]
 *     drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}
 *     stops: {closed: 0 deg, open: 80 deg}
 * pedal: {cable: main, pull: 34.51 mm}
 * cables:
 *   main: {enters: [40, 24], to: shaft.wheel, slack: 1 mm}
 * plates:
 *   bank: {lever: shaft, count: 4, bore: 45 mm, seat: 6 deg, idle: 4 deg}
 * movements:
 *   rock: {moves: [shaft], shift: [4, 0]}
 * # ^^^^ error[movement-at-rest]: opens shaft by 7.16° with the foot off
 * ```
 *
 * Cure: fix housing end and shaft to the same thing, so that they move together, or give the cable more slack.
 */
import type { Finding, Mend } from '../finding.ts';
import { movedLevers, movedStudy, openingAt, STILL, type MovedLever } from '../movedLinkage.ts';
import { restBand } from '../restBand.ts';
import { mendBy, type Study } from '../study.ts';
import { tightCable } from '../tightCable.ts';
import { degrees } from '../words.ts';

export function movementAtRest(study: Study): readonly Finding[] {
  return movedLevers(study).flatMap((each): Finding[] => {
    const { movement, lever, moved } = each;
    const rest = openingAt(moved, lever, 0) - openingAt(study.travel, lever, 0);
    const torn = Number.isNaN(rest);
    const held = torn ? undefined : heldByIt(study, each);
    if (!torn && Math.abs(rest) <= STILL && held === undefined) return [];
    return [
      {
        code: 'movement-at-rest',
        severity: 'error',
        part: movement.name,
        span: movement.nameSpan,
        message: torn
          ? `The movement ${movement.name} tears the linkage of ${lever.name} apart with the foot off`
          : restWords(each, rest, held),
        cure:
          Math.abs(rest) > STILL || torn
            ? 'Move housing end and shaft together, or give the cable more slack'
            : 'Move the springs’ anchors with the shaft, or give its springs more preload',
        ...(!torn && { worst: { value: Math.abs(rest) > STILL ? rest : (held ?? rest), dimension: 'angle' as const, travel: 0 } }),
        limit: { value: STILL, dimension: 'angle', from: 'common practice, no source' },
        related: [{ span: lever.source.nameSpan, message: lever.name }],
        ...(rest > 0 && moreSlack(study, each)),
      },
    ];
  });
}

/** How far open friction may then hold the lever, where that is farther than without the movement; rad, undefined elsewhere. */
function heldByIt(study: Study, { movement, lever }: MovedLever): number | undefined {
  const band = restBand(movedStudy(study, movement), lever);
  if (band.kind !== 'held' || !(band.most - band.least > STILL)) return undefined;
  const before = restBand(study, lever);
  return before.kind === 'held' && !(band.most - before.most > STILL) ? undefined : band.most;
}

function restWords({ movement, lever }: MovedLever, rest: number, held: number | undefined): string {
  const holds = held === undefined ? '' : `friction may hold ${lever.name} up to ${degrees(held)} open with the foot off`;
  if (Math.abs(rest) <= STILL) return `With the movement ${movement.name} ${holds}, farther than without it`;
  const moves = `The movement ${movement.name} ${rest > 0 ? 'opens' : 'closes'} ${lever.name} by ${degrees(Math.abs(rest))} with the foot off`;
  return holds === '' ? moves : `${moves}, and ${holds}`;
}

/** The slack that the movement takes from the cable which then holds the lever open, besides what it has. */
function moreSlack(study: Study, { lever, moved }: MovedLever): { readonly mend?: Mend } {
  const { mechanism, build } = study.travel;
  const lacks = tightCable(moved, lever.group);
  const cable = mechanism.cables[mechanism.groups[lever.group]?.cable ?? -1];
  if (lacks === undefined || cable === undefined) return {};
  return mendBy(study, `cables.${cable.name}.slack`, { kind: 'itself' }, build.parameters[cable.slack]! + lacks);
}
