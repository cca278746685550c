/** Which friction is left out of effort, release and margins for want of figures, and what was taken where none is given. */
import { USUAL_VACUUM } from '../forces/friction/plateLoad.ts';
import { missingFriction } from '../forces/friction/missing.ts';
import { fixed } from '../travel/words.ts';
import type { NotChecked } from './finding.ts';
import type { Study } from './study.ts';
import { listed } from './words.ts';

/** One line for each part of which anything is left out, in load-path order. */
export function frictionNotChecked({ travel: { mechanism } }: Study): readonly NotChecked[] {
  const { levers, friction, attached } = mechanism;
  const missing = missingFriction(mechanism);
  const lines = missing
    .filter(({ source }, i) => missing.findIndex((each) => each.source === source) === i)
    .map(({ source }): NotChecked => {
      const own = missing.filter((each) => each.source === source);
      const what = listed(own.map((each) => each.what));
      const keys = listed(own.flatMap((each) => each.keys).map((key) => `\`${key}\``));
      return told(source, `Not checked: friction of ${what}, for want of ${keys}`);
    });
  const taken = attached.plates.flatMap(({ source, lever }, i): readonly NotChecked[] => {
    const isLoaded = levers[lever]!.group >= 0 && friction.levers[lever]!.bearing !== undefined;
    if (!isLoaded || friction.vacuum[i] !== undefined) return [];
    const usual = `${fixed(USUAL_VACUUM / 1e3, 0)} kPa`;
    return [told(source, `Not checked: what vacuum presses on its shaft, for want of \`vacuum\`; ${usual} are taken`)];
  });
  return [...lines, ...taken];
}

function told({ name, nameSpan }: NotCheckedSource, message: string): NotChecked {
  return { part: name, span: nameSpan, message };
}

interface NotCheckedSource {
  readonly name: string;
  readonly nameSpan: NotChecked['span'];
}
