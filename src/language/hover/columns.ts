/** A column of the table: what it means and between what it lies. */
import { PLACE_UNIT } from '../../definition/dimensions.ts';
import { figureText, percentText } from '../../outputs/figure.ts';
import type { Answers } from '../../solve.ts';
import { looseColumns } from '../cursor/looseNames.ts';
import type { LooseTree } from '../cursor/looseTree.ts';
import { code, message, plain } from '../markdown.ts';
import { extremesOf } from './travelled.ts';

/** Its meaning, then its least and greatest over the travel and where; empty for one that there is not. */
export function columnLines(answers: Answers | undefined, tree: LooseTree, owner: string, key: string): readonly string[] {
  const study = answers?.study;
  const columns = looseColumns(tree, owner);
  const column = Object.hasOwn(columns, key) ? columns[key] : undefined;
  if (column === undefined) return [];
  const unit = column.percent === true ? '%' : PLACE_UNIT[column.dimension];
  const name = `${owner}.${key}`;
  const solved = study?.columns.get(name);
  const found = study && solved && extremesOf(study, name);
  const text = (value: number): string =>
    solved?.unit === '%' ? percentText(value) : figureText({ value, dimension: solved?.dimension ?? column.dimension });
  return [
    `${code(name)}${unit === '' ? '' : ` in ${plain(unit)}`}: ${message(column.doc)}`,
    ...(found === undefined
      ? []
      : [
          plain(
            `Least ${text(found.least.value)} at ${percentText(found.least.travel)} of pedal travel, greatest ${text(found.greatest.value)} at ${percentText(found.greatest.travel)}`,
          ),
        ]),
  ];
}
