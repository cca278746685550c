/**
 * A cable is tight with the foot off and holds the throttle open.
 *
 * Where the closed stop lies below the drawn position, or a rod of another length lets the linkage close further than it is drawn,
 * the driven end of the cable comes back by more than the cable has slack. The cable then takes the load that the stop should take,
 * and the engine will not come down to idle. As the cable wears in or the engine rocks, it only gets worse.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft:
 *     pivot: [100, 0]
 *     drums: {wheel: {radius: 20 mm, wraps: counterclockwise}}
 *     stops: {closed: -4 deg, open: 60 deg}
 * pedal: {cable: main, pull: 20 mm}
 * cables:
 *   main: {enters: [40, 20], to: shaft.wheel, slack: 1 mm}
 * #                                                  ^^^^ error[slack-used-up]: tight at rest by 0.4 mm and holds shaft open
 * ```
 *
 * Cure: give the cable more slack, or let the stop close the throttle where it is drawn.
 */
import type { Finding } from '../finding.ts';
import { LENGTH_MARGIN } from '../margin.ts';
import { mendBy, type Study } from '../study.ts';
import { tightCable } from '../tightCable.ts';
import { millimetres } from '../words.ts';

export function slackUsedUp(study: Study): readonly Finding[] {
  const { mechanism, build } = study.travel;
  return mechanism.groups.flatMap((group): Finding[] => {
    const excess = tightCable(study.travel, group.index);
    if (excess === undefined || group.cable === undefined) return [];
    const cable = mechanism.cables[group.cable]!;
    const lever = mechanism.levers[group.root]!.name;
    return [
      {
        code: 'slack-used-up',
        severity: 'error',
        part: cable.name,
        span: cable.source.slack?.span ?? cable.source.nameSpan,
        message: `The cable ${cable.name} is tight at rest by ${millimetres(excess)} and holds ${lever} open`,
        cure: `Give it ${millimetres(build.parameters[cable.slack]! + excess)} of slack or more`,
        worst: { value: excess, dimension: 'length', travel: 0 },
        ...mendBy(study, `cables.${cable.name}.slack`, { kind: 'itself' }, build.parameters[cable.slack]! + excess + LENGTH_MARGIN),
      },
    ];
  });
}
