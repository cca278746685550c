/**
 * A cable is tight with the foot off and holds the throttle open.
 *
 * Where the closed stop lies below the drawn position, or a rod of another length lets the linkage close further than it is drawn,
 * the driven end of the cable comes back by more than the cable has slack. The cable then takes the load that the stop should take,
 * and the engine will not come down to idle. As the cable wears in or the engine rocks, it only gets worse. Where the cable has slack left
 * with a rod as long as drawn, that rod is the cause and is told, at its length.
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
 * Cure: give the rod the length that it has as drawn; else give the cable more slack, or let the stop close the throttle where it is drawn.
 */
import { roundFigure } from '../../definition/quantity/roundFigures.ts';
import type { CableJoint, Group, RodJoint } from '../../kinematics/model.ts';
import type { Finding } from '../finding.ts';
import { LENGTH_MARGIN } from '../margin.ts';
import { restedWith } from '../restingLength.ts';
import { drawnLength, isOffDrawn, lengthToSet, lengthWords, offDrawnWords } from '../rodsBefore.ts';
import { mendBy, writeBy, type Study } from '../study.ts';
import { pulledPastSlack, TIGHT, tightCable } from '../tightCable.ts';
import { millimetres, quantityWords } from '../words.ts';

export function slackUsedUp(study: Study): readonly Finding[] {
  const { mechanism, build } = study.travel;
  return mechanism.groups.flatMap((group): Finding[] => {
    const excess = tightCable(study.travel, group.index);
    if (excess === undefined || group.cable === undefined) return [];
    const cable = mechanism.cables[group.cable]!;
    const lever = mechanism.levers[group.root]!.name;
    const tight = `tight at rest by ${millimetres(excess)} and holds ${lever} open`;
    const slack = enoughSlack(cable, build.parameters[cable.slack]! + excess);
    const enough = `${quantityWords(slack, 'length', cable.source.slack?.unit)} of slack or more`;
    const found = {
      code: 'slack-used-up',
      severity: 'error',
      part: cable.name,
      worst: { value: excess, dimension: 'length', travel: 0 },
    } as const;
    const place = cable.source.slack?.span ?? cable.source.nameSpan;
    const rod = rodToBlame(study, group);
    if (rod === undefined) {
      return [
        {
          ...found,
          span: place,
          message: `The cable ${cable.name} is ${tight}`,
          cure: `Give it ${enough}`,
          ...mendBy(study, `cables.${cable.name}.slack`, { kind: 'itself' }, slack),
        },
      ];
    }
    const drawn = lengthToSet(rod, drawnLength(study, rod), (length) => isLooseWith(study, group, rod, length));
    return [
      {
        ...found,
        span: rod.source.length?.span ?? rod.source.nameSpan,
        message: `The rod ${rod.name} is ${offDrawnWords(study, rod)}: the cable ${cable.name} is ${tight}`,
        cure: `Set ${rod.name} to ${lengthWords(study, rod, drawn)}, its length as drawn, or give ${cable.name} ${enough}`,
        ...writeBy(rod.source.length, drawn),
        related: [{ span: place, message: `${cable.name} has ${millimetres(build.parameters[cable.slack]!)} of slack` }],
      },
    ];
  });
}

/** The rod of a group with which, were it as long as drawn, its cable would not be tight; undefined where there is none. */
function rodToBlame(study: Study, group: Group): RodJoint | undefined {
  const { mechanism } = study.travel;
  const rods = group.joints.flatMap((index) => {
    const joint = mechanism.joints[index]!;
    return joint.kind === 'rod' ? [joint] : [];
  });
  return rods.find((rod) => {
    if (!isOffDrawn(study, rod)) return false;
    return isLooseWith(study, group, rod, drawnLength(study, rod));
  });
}

function isLooseWith({ travel }: Study, group: Group, rod: RodJoint, length: number): boolean {
  return pulledPastSlack(travel, group.index, restedWith(travel.build, rod, length)) <= TIGHT;
}

/** The roundest slack that is not less than what it takes, m. */
function enoughSlack({ source }: CableJoint, least: number): number {
  return roundFigure(least + LENGTH_MARGIN, 'length', source.slack?.unit ?? '', (slack) => slack >= least);
}
