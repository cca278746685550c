/** What the format says of a key or a value's form, as Markdown; the words are those of the reader's own tables. */
import { PLACE_UNIT } from '../definition/dimensions.ts';
import { describeDimension } from '../definition/formula/kind.ts';
import type { About, KeyAbout } from '../definition/schema/shape.ts';
import { code, message } from './markdown.ts';

/** Meaning, form, what holds where it is left out, and an example. */
export function keyDoc({ shape, required, doc, fallback, example }: KeyAbout): string {
  const form = formWords(shape);
  const choices = shape.kind === 'choice' ? Object.entries(shape.choices).map(([word, means]) => `- ${code(word)}: ${message(means)}`) : [];
  const notes = [
    ...(form === '' ? [] : [`${form}.`]),
    ...(required ? ['Required.'] : fallback === undefined ? [] : [`Where left out: ${message(fallback)}.`]),
    ...(example === undefined ? [] : [`Example: ${code(example)}`]),
  ];
  return [message(doc), choices.join('\n'), notes.join(' ')].filter((part) => part !== '').join('\n\n');
}

/** E.g. `A length; a bare number is in mm`; empty where the doc says it all. */
export function formWords(shape: About): string {
  switch (shape.kind) {
    case 'quantity': {
      const unit = PLACE_UNIT[shape.dimension];
      return `${capital(describeDimension(shape.dimension))}${unit === '' ? '' : `; a bare number is in ${message(unit)}`}`;
    }
    case 'reference':
      return `The name of ${shape.to === 'plates' ? 'a set of plates' : `a ${shape.to}`}`;
    case 'part':
      return shape.parts.includes('drum') ? 'A pin or a drum, `lever.part`' : 'A pin, `lever.part`';
    case 'place':
      return shape.named ? '`[x, y]`, `[x, y, z]` or a name from `points`' : '`[x, y]` or `[x, y, z]`';
    case 'direction':
      return '`[x, y]` or `[x, y, z]`, plain numbers';
    case 'either':
      return [...new Set(shape.forms.map(formWords).filter((form) => form !== ''))].join(', or ');
    case 'flag':
      return '`true` or `false`';
    case 'column':
      return 'A column of the table, `owner.column`';
    default:
      return '';
  }
}

/** The same without Markdown, short, for one line beside a completion. */
export function formDetail(shape: About): string {
  switch (shape.kind) {
    case 'quantity': {
      const unit = PLACE_UNIT[shape.dimension];
      return unit === '' ? 'number' : `${shape.dimension.replace('-', ' ')}, ${unit}`;
    }
    case 'reference':
      return shape.to;
    case 'part':
      return shape.parts.includes('drum') ? 'pin or drum' : 'pin';
    case 'place':
      return 'place';
    case 'choice':
      return Object.keys(shape.choices).join(' | ');
    case 'flag':
      return 'true | false';
    case 'map':
      return `${shape.what} by name`;
    case 'record':
      return 'block';
    case 'either':
      return [...new Set(shape.forms.map(formDetail))].join(' or ');
    case 'pair':
      return 'two values';
    case 'constant':
      return String(shape.value);
    case 'kept':
      return 'limit, word or requirement';
    case 'fit':
      return 'dimension';
    case 'column':
    case 'figure':
    case 'direction':
    case 'list':
    case 'text':
      return shape.kind;
  }
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
