/**
 * Plates turn past 90° and close their bore again.
 *
 * A plate along the bore, 90° from square to it, is as open as it gets. Turned on, it leaves less air past again, and the pedal's last
 * stretch takes power instead of giving it. As long as the shaft hides the plate nothing is lost, and it is a note; where the open area
 * falls by more than 0.1 % of its greatest it is a warning. Up to 0.1° past 90° is taken as 90°. Both: common practice, no source.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft:
 *     pivot: [100, 0]
 *     drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}
 *     stops: {closed: 0 deg, open: 90 deg}
 * #                                ^^^^^^ warning[plate-past-square]: the open area of each falls by up to 13.1 % of its greatest
 * pedal: {cable: main, pull: 38.69 mm}
 * cables:
 *   main: {enters: [40, 24], to: shaft.wheel, slack: 1 mm}
 * plates:
 *   bank: {lever: shaft, count: 4, bore: 45 mm, seat: 6 deg, idle: 1.5 deg}
 * ```
 *
 * Cure: set the open stop at 90° less seat and idle, and give the pedal no more travel than reaches it. Where seat and idle alone come to
 * 90°, they were measured from the bore's axis: seat counts from square to the bore, and idle from the seat.
 */
import { roundFigure } from '../../definition/quantity/roundFigures.ts';
import type { Span } from '../../definition/span.ts';
import type { PlatesModel } from '../../kinematics/attached.ts';
import type { LeverModel } from '../../kinematics/model.ts';
import { greatestOpenArea } from '../../plates/openArea.ts';
import { areaSamples, plateAngle, plateShape } from '../../plates/platesAt.ts';
import { greatestOf, leastOf, rangesBelow, type Along } from '../../travel/extremes.ts';
import type { Finding } from '../finding.ts';
import { along, writeBy, type Study } from '../study.ts';
import { openingLevers } from '../wayOfOpening.ts';
import { degrees, percent, quantityWords, rangeWords } from '../words.ts';

const SQUARE = Math.PI / 2;
/** rad (0.1°). Common practice, no source. */
const PAST = 0.1 * (Math.PI / 180);
/** Of the greatest open area. Common practice, no source. */
const LOST = 1e-3;

export function platePastSquare(study: Study): readonly Finding[] {
  const { plates } = study.travel.mechanism.attached;
  return openingLevers(study).flatMap((lever) =>
    plates.filter((each) => each.lever === lever.index).flatMap((each) => pastFinding(study, lever, each) ?? []),
  );
}

function pastFinding(study: Study, lever: LeverModel, plates: PlatesModel): Finding | undefined {
  const { build } = study.travel;
  const samples = areaSamples(study.travel, plates);
  const angle = plateAngle(study.travel, plates);
  const worst = greatestOf(angle, samples);
  if (worst === undefined || !(worst.value > SQUARE + PAST)) return undefined;
  const past: Along = (at) => SQUARE + SAME - angle(at);
  const area = along(study, `${plates.name}.area`);
  const greatest = greatestOpenArea(plateShape(build, plates));
  // Only what is lost past 90°: before that every plate is less open.
  const left: Along = (at) => (past(at) < 0 ? area(at) / greatest : 1);
  const least = leastOf(left, samples);
  const lost = least === undefined ? 0 : 1 - least.value;
  const falls = rangesBelow((at) => left(at) - (1 - LOST), samples);
  const [from] = falls;
  const warned = lost > LOST && from !== undefined;
  const turned = `The plates ${plates.name} turn up to ${degrees(worst.value - SQUARE)} past 90°, at ${percent(worst.travel)} of pedal travel`;
  const [square] = squareOpenings(study, lever);
  const unit = lever.source.stops?.open?.unit ?? '';
  const stop = square === undefined ? undefined : roundFigure(square, 'angle', unit, (opening) => opening <= square + SAME);
  const seated = openingToSquare(study, plates) > SAME ? undefined : seatedCure(study, plates);
  return {
    code: 'plate-past-square',
    severity: warned ? 'warning' : 'note',
    part: plates.name,
    span: seated?.span ?? lever.openStop?.span ?? plates.source.nameSpan,
    message: warned
      ? `${turned}: the open area of each falls by up to ${percent(lost)} of its greatest, ${rangeWords(falls)}`
      : `${turned}: the shaft still hides them there, and the open area stays as it is`,
    ...(stop !== undefined && {
      cure: `${lever.openStop ? 'Set the open stop' : 'Give it an open stop'} at ${quantityWords(stop, 'angle', unit)}, where they stand at 90°, and the pedal no more travel than reaches it`,
    }),
    ...(seated && { cure: seated.cure }),
    ranges: warned ? falls : rangesBelow(past, samples),
    worst: { ...worst, dimension: 'angle' },
    limit: { value: SQUARE, dimension: 'angle', from: 'a plate along the bore' },
    ...(stop !== undefined && seated === undefined && writeBy(lever.source.stops?.open, stop)),
  };
}

/** rad; less is rounding. */
const SAME = 1e-9;

/** The openings at which a lever's plates stand at 90°, rad, the least first; without those that stand past it from the start. */
function squareOpenings(study: Study, { index }: LeverModel): readonly number[] {
  const own = study.travel.mechanism.attached.plates.filter(({ lever }) => lever === index);
  return own
    .map((each) => openingToSquare(study, each))
    .filter((opening) => opening > SAME)
    .sort((a, b) => a - b);
}

/** rad; not above 0 where they stand at 90° as drawn. */
function openingToSquare({ travel: { build } }: Study, { seat, idle }: PlatesModel): number {
  return SQUARE - build.parameters[seat]! - build.parameters[idle]!;
}

/** What to do about plates that are along their bore before they open, at the greater of the two angles that say so. */
function seatedCure({ travel: { build } }: Study, { source, ...plates }: PlatesModel): { readonly span: Span; readonly cure: string } {
  const [seat, idle] = [build.parameters[plates.seat]!, build.parameters[plates.idle]!];
  const [from, cure] =
    seat < idle
      ? (['idle', 'Count `idle` from the seat: the few degrees by which the idle stop holds the plates off it'] as const)
      : ([
          'seat',
          `Count \`seat\` from square to the bore: ${degrees(seat, 2)} from the bore's axis are ${degrees(SQUARE - seat, 2)}`,
        ] as const);
  return {
    span: source[from]?.span ?? source.nameSpan,
    cure: `${cure}. With ${degrees(seat, 2)} of seat and ${degrees(idle, 2)} of idle the plates stand at ${degrees(seat + idle, 2)} before they open`,
  };
}
