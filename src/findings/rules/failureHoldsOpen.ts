/**
 * With one part lost, plates stay open that closed with it.
 *
 * Each spring, rod, cable, slot pin and coupling is taken away in turn, wherever in the travel that happens, and what is left is asked whether
 * it closes from there against friction. What a lost rod drove has only its own springs; where all of them hang on a lever before the rod,
 * the shaft is loose. 49 CFR 571.124 S5.2 asks that a throttle returns when any one component is disconnected (read as the agency quotes it
 * in part, in its letter nht75-2.28 of 18 July 1975), and so do
 * Formula SAE Rules 2024, IC.3.3.3 (read). A lost spring is an error: springs are what breaks. A rod, cable, slot pin or coupling is a
 * warning: a nut that is locked does not come off. Told once typing rests, by `pedal-to-plate check` and `return`. A spring that is the
 * only one, or leaves too little over friction, is told by `single-return-spring` and `closing-margin` alone; a throttle that does not
 * close with all its parts, by what keeps it open. A cable that seizes holds what it opens on every throttle, and is no finding.
 *
 * ```yaml
 * format: 1
 * levers:
 *   crank: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: 60 deg}}, drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}}
 *   shaft: {pivot: [100, 0], arms: {arm: {radius: 40 mm, angle: 60 deg}}, stops: {open: 76 deg}}
 * pedal: {cable: main, pull: 32.83 mm}
 * cables: {main: {enters: [-60, 24], to: crank.wheel, slack: 1 mm}}
 * rods:
 *   link: {from: crank.out, to: shaft.arm}
 * # ^^^^ warning[failure-holds-open]: Without link, shaft stays open: nothing brings shaft back
 * plates: {bank: {lever: shaft, count: 4, bore: 45 mm, seat: 6 deg, idle: 1.5 deg}}
 * springs:
 *   first: {lever: crank, rate: 2 N*mm/deg, preload: 250 N*mm}
 *   second: {lever: crank, rate: 2 N*mm/deg, preload: 250 N*mm}
 * ```
 *
 * Cure: put a return spring on the shaft of the plates itself.
 */
import type { Failure, PlatesLeft } from '../../failures/failure.ts';
import { failureTable } from '../../failures/failureTable.ts';
import type { Finding } from '../finding.ts';
import type { Study } from '../study.ts';
import { listed } from '../words.ts';
import { closingMargin } from './closingMargin.ts';
import { singleReturnSpring } from './singleReturnSpring.ts';

export function failureHoldsOpen(study: Study): readonly Finding[] {
  const { whole, rows } = failureTable(study.travel);
  const openAnyway = new Set(whole.plates.flatMap(({ levers, outcome }) => (outcome === 'stays-open' ? levers : [])));
  return rows.flatMap(({ failure, plates }): readonly Finding[] => {
    if (failure === undefined || failure.kind === 'cable-seized') return [];
    const open = plates.filter(({ levers, outcome }) => outcome === 'stays-open' && !levers.some((lever) => openAnyway.has(lever)));
    const untold = failure.kind === 'spring-lost' ? open.filter((left) => !isTold(study, failure, left)) : open;
    return untold.length === 0 ? [] : [findingOf(study, failure, untold)];
  });
}

function findingOf(study: Study, { kind, part, span }: Failure, open: readonly PlatesLeft[]): Finding {
  const shafts = open.flatMap(({ levers }) => levers);
  const [first] = open;
  const isSpring = kind === 'spring-lost';
  return {
    code: 'failure-holds-open',
    severity: isSpring ? 'error' : 'warning',
    part,
    span,
    message: `Without ${part}, ${listed(shafts)} ${shafts.length === 1 ? 'stays' : 'stay'} open: ${first?.why ?? ''}`,
    cure: isSpring ? `Let what is left close ${listed(shafts)} without ${part}` : `Put a return spring on ${listed(shafts)} itself`,
    related: study.travel.mechanism.levers
      .filter(({ name }) => shafts.includes(name))
      .map(({ name, source }) => ({ span: source.nameSpan, message: `${name} is what stays open` })),
  };
}

/** Whether another rule says of a spring that the others leave the plates open without it. */
function isTold(study: Study, { span }: Failure, { levers, weakest }: PlatesLeft): boolean {
  const names = [...levers, weakest?.lever];
  const only = singleReturnSpring(study).some((finding) =>
    [finding, ...(finding.related ?? [])].some((each) => each.span.start === span.start),
  );
  return only || closingMargin(study).some(({ part, worst }) => names.includes(part) && worst !== undefined && worst.value <= 1);
}
