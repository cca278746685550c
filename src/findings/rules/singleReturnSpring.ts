/**
 * Only one spring that counts as return closes the plates of a shaft.
 *
 * Springs break, mostly at a hook, and their anchors come off. With one spring that is a throttle that stays where it is. Two are
 * common practice, and student-formula rules ask for them: two or more return springs, located at the throttle body, of which a
 * position sensor's spring is none (Formula SAE Rules 2024, IC.3.3.2), at least two springs (Formula Student Rules, CV1.5.2). Both
 * were read in a copy of those rules. A spring that is slack, opens or passes its dead centre anywhere in the travel is no second one:
 * left alone there it closes nothing. Nor is one that acts only across free play. Where the second turns a lever that carries a sensor
 * and no plates, it is a note: that may be the sensor's own. Whether each of two closes it alone against friction is told by `closing-margin`.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft: {pivot: [100, 0], drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}, stops: {open: 80 deg}}
 * pedal: {cable: main, pull: 34.5 mm}
 * cables: {main: {enters: [40, 24], to: shaft.wheel, slack: 1 mm}}
 * plates:
 *   bank: {lever: shaft, count: 4, bore: 40 mm, seat: 6 deg, idle: 1.5 deg}
 * springs:
 *   winder: {lever: shaft, rate: 3 N*mm/deg, preload: 400 N*mm}
 * # ^^^^^^ warning[single-return-spring]: winder is the only return spring that closes shaft
 *   in_sensor: {lever: shaft, rate: 0.2 N*mm/deg, preload: 10 N*mm, counts_as_return: false}
 * ```
 *
 * Cure: put a second return spring on the shaft, so that either of them closes it alone. No figure is offered: what is missing is a spring.
 */
import { leastOf } from '../../travel/extremes.ts';
import type { Finding } from '../finding.ts';
import { closingOf, platesBodies, unreadOfClosing, type PlatesBody } from '../platesClosing.ts';
import { returnSprings, type NoSecond } from '../returnSprings.ts';
import { NO_TORQUE } from '../springActions.ts';
import type { Study } from '../study.ts';
import { listed } from '../words.ts';

export function singleReturnSpring(study: Study): readonly Finding[] {
  if (unreadOfClosing(study) !== undefined) return [];
  return platesBodies(study).flatMap((body) => springFinding(study, body) ?? []);
}

function springFinding(study: Study, body: PlatesBody): Finding | undefined {
  const counting = body.springs.filter(({ source }) => source.countsAsReturn);
  const { closing, others } = returnSprings(study, body);
  const [spring = counting[0], second] = closing;
  // Without any that counts at all, another rule tells it; so it is where they all fail at one place.
  if (spring === undefined || second !== undefined || (counting.length > 1 && closing.length === 0 && isLost(study, body)))
    return undefined;
  const names = listed(body.levers.map(({ name }) => name));
  const uncounted = body.springs.filter(({ source }) => !source.countsAsReturn);
  return {
    code: 'single-return-spring',
    severity: closing.length === 1 && others.some(({ inSensor }) => inSensor) ? 'note' : 'warning',
    part: spring.name,
    span: spring.source.nameSpan,
    message: closing.length === 0 ? noneWords(names, others) : onlyWords(spring.name, names, others),
    cure: `Put a second return spring on ${body.levers[0]?.name ?? names}, so that either closes it alone`,
    limit: { value: LEAST_SPRINGS, dimension: 'number', from: FROM },
    related: [
      ...others.filter((each) => each.spring !== spring).map((each) => ({ span: each.spring.source.nameSpan, message: told(each) })),
      ...uncounted.map((each) => ({ span: each.source.nameSpan, message: `${each.name} reaches it, but does not count as return` })),
    ],
  };
}

function isLost(study: Study, { levers: [lever], springs }: PlatesBody): boolean {
  const closing = lever && closingOf(study, lever, springs);
  const least = closing && leastOf(closing.torque, closing.samples);
  return least !== undefined && least.value <= NO_TORQUE;
}

function onlyWords(spring: string, names: string, others: readonly NoSecond[]): string {
  const failing = others.filter((each) => each.across === undefined && each.inSensor === undefined);
  const inSensor = others.filter((each) => each.inSensor);
  const across = others.filter((each) => each.across !== undefined);
  const only = `${spring} is the only return spring that closes ${names}`;
  if (others.length === 0) return `${only}: where it breaks, nothing does`;
  const [play] = across;
  const beyond =
    play === undefined
      ? []
      : [
          `${listed(across.map((each) => each.spring.name))} ${across.length === 1 ? 'acts' : 'act'} only across the free play of ${play.across ?? ''}`,
        ];
  if (failing.length + across.length === 0)
    return `${spring} closes ${names}, and else only ${inSensor.map((each) => `${each.spring.name}, which ${each.why}`).join('; ')}`;
  const way = failing.length > 0 ? ' over the whole travel' : ' directly';
  return `${only}${way}: ${[...[...failing, ...inSensor].map(told), ...beyond].join('; ')}`;
}

function noneWords(names: string, others: readonly NoSecond[]): string {
  return `No return spring closes ${names} over the whole travel by itself: ${others.map(told).join('; ')}`;
}

function told({ spring, why }: NoSecond): string {
  return `${spring.name} ${why}`;
}

const LEAST_SPRINGS = 2;
const FROM =
  'two or more return springs at the throttle body, a position sensor’s not among them: Formula SAE Rules 2024 IC.3.3.2 and Formula Student Rules CV1.5.2, both read; elsewhere common practice';
