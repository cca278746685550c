/** Words of the solved fixes: what is changed, what for, and what comes of it. */
import type { FindingCode } from '../findings/codes.ts';
import type { Finding, Outcome } from '../findings/finding.ts';
import { frictionUnits, unitMargin } from '../findings/frictionUnits.ts';
import type { Study } from '../findings/study.ts';
import { figureText, travelText } from '../outputs/figure.ts';
import type { Answers } from '../solve.ts';
import { outcomeOf } from '../studies/solveFor.ts';
import { leastOf } from '../travel/extremes.ts';

/** How a figure of the file is spoken of. */
export interface FigureWords {
  /** E.g. `the length of link_a`. */
  readonly figure: string;
  /** E.g. `Lengthen link_a`; the figure follows after `to`. */
  readonly up: string;
  readonly down: string;
}

/** @param path as in `Value.path` */
export function wordsOf(path: string): FigureWords {
  const [block = '', name = '', kind = '', part = ''] = path.split('.');
  const key = path.slice(path.lastIndexOf('.') + 1);
  const set = (figure: string, up = `Set ${figure}`, down = up): FigureWords => ({ figure, up, down });
  const whole = `${name}.${part}`;
  switch (`${block}.${key}`) {
    case 'rods.length':
      return set(`the length of ${name}`, `Lengthen ${name}`, `Shorten ${name}`);
    case 'levers.radius':
      return kind === 'drums'
        ? set(`the radius of the drum ${whole}`, `Enlarge the drum ${whole}`, `Reduce the drum ${whole}`)
        : set(`the radius of ${whole}`, `Lengthen the arm ${whole}`, `Shorten the arm ${whole}`);
    case 'levers.width':
    case 'rods.width':
      return set(`the width of ${name}`, `Widen ${name}`, `Narrow ${name}`);
    case 'levers.angle':
      return set(`the angle of ${whole}`, `Clock ${whole}`);
    case 'levers.offset':
    case 'levers.groove':
      return set(`the ${key} of ${whole}`);
    case 'levers.open':
    case 'levers.closed':
      return set(`the ${key} stop of ${name}`);
    case 'sensors.at_closed':
      return set(`\`at_closed\` of ${name}`, `Turn ${name} on its spindle`);
    case 'springs.preload':
    case 'cables.slack':
      return set(`the ${key} of ${name}`, `Raise the ${key} of ${name}`, `Lower the ${key} of ${name}`);
    case 'pedal.travel':
    case 'pedal.pull':
      return set(`the pedal's ${key}`, `Lengthen the pedal's ${key}`, `Shorten the pedal's ${key}`);
    default:
      if (block === 'let') return set(`\`${name}\``);
      if (block === 'cables' && kind.endsWith('_along')) return set(`\`${kind}\` of ${name}`);
      return set(`the ${(/^\d+$/.test(key) ? (path.split('.').at(-2) ?? key) : key).replaceAll('_', ' ')} of ${name}`);
  }
}

/** What a fix is for, after `so that`. @param writes path of the figure that it writes */
export function goalOf(code: FindingCode, part: string, outcome: Outcome, writes: string): string {
  switch (code) {
    case 'plate-past-square':
      return `the plates ${part} stand square at most`;
    case 'opening-missed':
      return outcome.kind === 'itself' && !writes.startsWith('rods.')
        ? `the plates on ${part} stand square at most`
        : `${part} opens fully`;
    case 'opening-early':
      return outcome.kind === 'itself'
        ? `the plates on ${part} stand square at most`
        : 'the pedal lands before it stretches or bends anything';
    case 'held-open':
      return `${part} closes`;
    case 'out-of-step':
      return 'both shafts rest in step';
    case 'transmission-angle':
    case 'toggle-opening':
      return `${part} keeps its transmission angle`;
    case 'drive-angle':
    case 'toggle-returning':
      return `${part} keeps its drive angle`;
    case 'rod-end-tilt':
      return `the ends of ${part} tilt no further than they can`;
    case 'sensor-past-range':
      return `${part} stays within its range`;
    case 'sensor-past-stop':
      return `${part} stays off its stops`;
    case 'signal-in-fault-band':
      return `the signal of ${part} is never taken for a fault`;
    case 'slack-used-up':
      return `${part} is loose at rest`;
    case 'closing-lost':
      return `the springs close ${part}`;
    case 'closing-margin':
    case 'friction-lock': {
      const off = outcome.kind === 'itself' || outcome.kind === 'at' ? undefined : outcome.without;
      return `${part} closes against friction${off === undefined ? '' : ` with ${off} off`}`;
    }
    case 'touches-keep-out':
    case 'keep-out-clearance':
      return `${part} keeps clear`;
    case 'rod-out-of-adjustment':
      return `${part} is within its adjuster`;
    case 'turns-back':
      return `the pedal ends before ${part} turns back`;
    case 'groove-left':
      return 'the cable stays in its groove';
    case 'slot-run-out':
      return 'the pin stays in its fork';
    case 'movement-at-rest':
      return `the movement ${part} leaves the throttle closed`;
    case 'not-assembled':
      return `${part} reaches`;
    case 'change-point':
      return `the pedal ends before the change point of ${part}`;
    case 'closed-stop-passed':
      return `${part} does not come back below its closed stop`;
    case 'plate-below-seat':
      return `the plates ${part} stay off their seat`;
    case 'closing-dips':
      return `${part} closes nearly as hard everywhere as at rest`;
    case 'spring-dead-centre':
      return `${part} stays on one side of the pivot`;
    case 'cable-lead':
      return `${part} runs straight out of its housing`;
    case 'spring-opens':
      return `${part} closes`;
    case 'spring-slack':
      return `${part} is never slack`;
    default:
      return `\`${code}\` is gone`;
  }
}

/** What came of it, from the linkage solved anew, e.g. `shaft opens 82°`; undefined where there is no figure to tell. */
export function resultOf(answers: Answers, part: string, outcome: Outcome, finding: Finding): string | undefined {
  const told = outcome.kind === 'itself' ? itselfOutcome(part, finding) : outcome;
  const { study, columns } = answers;
  if (told !== undefined && told.kind !== 'itself' && told.column === `${part}.margin`) return study && marginText(study, part);
  if (told === undefined || told.kind === 'itself' || study === undefined) return undefined;
  const value = outcomeOf(study.travel, columns, told);
  if (told.kind === 'at' && told.travel === 0 && isOpening(told.column) && value <= SHUT) return `${ownerOf(told.column)} closes`;
  const column = columns.find(({ name }) => name === told.column);
  return column === undefined || !Number.isFinite(value)
    ? undefined
    : outcomeText(told, figureText({ value, dimension: column.dimension }));
}

/** What closes a part over friction at the weakest place, with all springs and with each return spring off. */
function marginText(study: Study, part: string): string | undefined {
  const unit = frictionUnits(study).find(({ lever }) => lever.name === part);
  if (unit === undefined) return undefined;
  const returning = unit.springs.filter(({ source }) => source.countsAsReturn).map(({ name }) => name);
  const least = (without?: string): number => leastOf(unitMargin(study, unit, without), study.travel.samples)?.value ?? Infinity;
  const off = returning.map(least);
  const weakest = Math.min(least(), ...off);
  if (!Number.isFinite(weakest)) return undefined;
  const alone = off.filter(Number.isFinite).length > 1 ? ` with ${returning.length === 2 ? 'either' : 'any one'} spring off` : '';
  return `${part} closes with ${figureText({ value: weakest, dimension: 'number' })} times the friction or more${alone}`;
}

/** rad; what the finding takes for closed. */
const SHUT = 0.001 * (Math.PI / 180);

/** A column's figure in words, e.g. `shaft opens 82°`, `least drive of link 20°`. */
export function outcomeText(outcome: Exclude<Outcome, { readonly kind: 'itself' }>, figure: string): string {
  const part = ownerOf(outcome.column);
  const key = outcome.column.slice(part.length + 1);
  if (key === 'opening')
    return outcome.kind === 'at' ? `${part} stands ${figure} open${outcome.travel === 0 ? ' at rest' : ''}` : `${part} opens ${figure}`;
  if (key === 'margin') {
    const off = outcome.kind === 'at' ? undefined : outcome.without;
    return `${part} closes with ${figure} times the friction${off === undefined ? '' : ` with ${off} off`}`;
  }
  if (key === 'closing') return `${part} closes with ${figure} or more`;
  if (key === 'stretch') return `${part} stretches by ${figure}`;
  if (key === 'signal')
    return `${part} gives ${figure}${outcome.kind !== 'at' ? '' : ` ${outcome.travel === 0 ? 'at rest' : travelText(outcome.travel)}`}`;
  if (key === 'angle')
    return `${part} turns to ${figure}${outcome.kind === 'at' ? '' : ` at ${outcome.kind === 'least' ? 'least' : 'most'}`}`;
  const words = COLUMN_WORDS[key] ?? key;
  return `${words} of ${part} ${outcome.kind === 'at' ? figure : `${figure} at ${outcome.kind === 'least' ? 'least' : 'most'}`}`;
}

function isOpening(column: string): boolean {
  return column.endsWith('.opening');
}

function ownerOf(column: string): string {
  return column.slice(0, Math.max(0, column.lastIndexOf('.')));
}

const COLUMN_WORDS: Readonly<Record<string, string>> = {
  transmission: 'transmission angle',
  drive: 'drive angle',
  misalignment: 'end tilt',
};

/** The column by which a figure that is its own outcome is best told. */
function itselfOutcome(part: string, finding: Finding): Outcome | undefined {
  const { worst, limit } = finding;
  switch (finding.code) {
    case 'opening-missed':
    case 'opening-early':
      return { kind: 'greatest', column: `${part}.opening` };
    case 'held-open':
      return { kind: 'at', column: `${part}.opening`, travel: 0 };
    case 'closing-lost':
    case 'closing-dips':
      return { kind: 'least', column: `${part}.closing` };
    case 'sensor-past-range':
    case 'sensor-past-stop':
      return { kind: (worst?.value ?? 0) < (limit?.value ?? 0) ? 'least' : 'greatest', column: `${part}.angle` };
    case 'signal-in-fault-band':
      return { kind: 'at', column: `${part}.signal`, travel: worst?.travel ?? 0 };
    default:
      return undefined;
  }
}
