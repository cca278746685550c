/** A name, wherever it stands: what it is, what it does over the travel, and what was found about it. */
import type { Arm, Definition, Drum, Place } from '../../definition/definition.ts';
import { factText } from '../../outputs/factText.ts';
import { figureText } from '../../outputs/figure.ts';
import { notCheckedText } from '../../outputs/marks.ts';
import { answerText, OUTCOMES } from '../../outputs/requirementText.ts';
import type { Answers } from '../../solve.ts';
import type { HoverLines } from '../hover.ts';
import { code, message, plain } from '../markdown.ts';
import { heading } from './heading.ts';
import type { DeclaredName, NamePlace } from '../names.ts';
import { NOTHING_SOLVED, partLines } from './parts.ts';
import { figureLines } from './values.ts';

export function nameHover(answers: Answers, { span, declared }: NamePlace): HoverLines | undefined {
  const lines = linesOf(answers, declared);
  return lines.length === 0 ? undefined : { span, lines };
}

function linesOf(answers: Answers, declared: DeclaredName): readonly string[] {
  const { name, kind } = declared;
  const { definition } = answers;
  switch (kind) {
    case 'let': {
      const figure = figureLines(answers, `let.${name}`);
      return figure.length === 0 ? [] : [heading(name, 'a named value'), ...figure];
    }
    case 'point': {
      const point = definition?.points.find((each) => each.name === name);
      return point === undefined ? [] : [heading(name, 'a place'), plain(placeText(point.place))];
    }
    case 'arm':
    case 'drum':
      return definition === undefined ? [] : leverPartLines(definition, declared);
    case 'requirement':
      return answers.requirements
        .filter(({ requirement }) => requirement.name === name)
        .map((answer) => `**${OUTCOMES[answer.outcome].word}** ${plain(answerText(answer))}`.trim());
    case 'obstacle':
    case 'movement':
      return [
        heading(name, kind === 'obstacle' ? 'an obstacle' : 'a movement of the engine'),
        ...factLines(answers, name),
        ...findingLines(answers, name),
      ];
    default:
      return [...partLines(answers, kind, name), ...findingLines(answers, kind === 'drive' ? 'pedal' : name)];
  }
}

/** How near the linkage comes to an obstacle and what a movement does, or that it was not checked. */
function factLines({ facts, notChecked, study }: Answers, name: string): readonly string[] {
  if (study === undefined) return [NOTHING_SOLVED];
  const told = facts.filter(({ part }) => part === name);
  const unknown = notChecked.filter(({ part }) => part === name);
  const lines = [
    ...told.slice(0, MOST_FACTS).map((fact) => plain(`${fact.label}: ${factText(fact)}`)),
    ...(told.length > MOST_FACTS ? [`and ${told.length - MOST_FACTS} more`] : []),
    ...unknown.slice(0, MOST_FACTS).map(({ message: what }) => message(`not checked: ${notCheckedText(what)}`)),
  ];
  return lines.length === 0 ? [] : [lines.map((line) => `- ${line}`).join('\n')];
}

/** More are in the report. */
const MOST_FACTS = 3;

function findingLines({ findings }: Answers, name: string): readonly string[] {
  const found = findings.filter(({ part }) => part === name);
  if (found.length === 0) return [];
  const shown = found.slice(0, MOST_FINDINGS).map((finding) => `- **${finding.severity}** ${message(finding.message)}`);
  return [[...shown, ...(found.length > MOST_FINDINGS ? [`- and ${found.length - MOST_FINDINGS} more`] : [])].join('\n')];
}

/** More are counted: the list of problems has them all. */
const MOST_FINDINGS = 6;

function leverPartLines(definition: Definition, { name, kind, lever = '' }: DeclaredName): readonly string[] {
  const owner = definition.levers.find((each) => each.name === lever);
  const found = kind === 'arm' ? owner?.arms.find((each) => each.name === name) : owner?.drums.find((each) => each.name === name);
  if (found === undefined) return [];
  const carried = carriedBy(definition, lever, name);
  return [
    heading(`${lever}.${name}`, kind === 'arm' ? 'an arm' : 'a drum'),
    plain('position' in found ? armText(found) : drumText(found)),
    ...(carried.length === 0
      ? ['Nothing hangs on it.']
      : [`Carries ${carried.map(([what, part]) => `${what} ${code(part)}`).join(', ')}.`]),
  ];
}

function armText({ position }: Arm): string {
  if (position.kind === 'place') return `Pin drawn at ${placeText(position.place)}`;
  const { radius, angle, offset } = position;
  const along =
    offset === undefined || offset.nominal === 0 ? '' : `, ${figureText({ value: offset.nominal, dimension: 'length' })} along the axis`;
  return `Pin at ${figureText({ value: radius.nominal, dimension: 'length' })}, drawn at ${figureText({ value: angle.nominal, dimension: 'angle' })}${along}`;
}

function drumText({ form, wraps }: Drum): string {
  const length = (value: number): string => figureText({ value, dimension: 'length' });
  if (form.kind === 'round') return `Radius ${length(form.radius.nominal)}, ${wraps}`;
  const radii = form.points.map(({ radius }) => radius.nominal);
  return `Radius from ${length(Math.min(...radii))} to ${length(Math.max(...radii))} by its profile, ${wraps}`;
}

function placeText({ x, y, z }: Place): string {
  const figures = [x, y, ...(z === undefined ? [] : [z])].map(({ nominal }) => figureText({ value: nominal, dimension: 'length' }));
  return `[${figures.join(', ')}]`;
}

function carriedBy({ rods, cables, slots, springs }: Definition, lever: string, part: string): readonly (readonly [string, string])[] {
  const isIt = (end: { readonly lever: string; readonly part: string } | undefined): boolean => end?.lever === lever && end.part === part;
  return [
    ...rods.filter(({ from, to }) => isIt(from) || isIt(to)).map(({ name }) => ['rod', name] as const),
    ...cables.filter(({ from, to }) => isIt(from) || isIt(to)).map(({ name }) => ['cable', name] as const),
    ...slots.filter(({ pin }) => isIt(pin)).map(({ name }) => ['slot', name] as const),
    ...springs
      .filter((spring) => spring.kind !== 'torsion' && (isIt(spring.to) || (spring.from.kind === 'pin' && isIt(spring.from.pin))))
      .map(({ name }) => ['spring', name] as const),
  ];
}
