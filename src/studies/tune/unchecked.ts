/** Why a file leaves it open whether something that must be kept is: what it has nothing of cannot be kept. */
import { clearanceOf } from '../../clearance/clearance.ts';
import type { LimitKey } from '../../definition/definition.ts';
import type { Kept, KeptWord } from '../../definition/tune.ts';
import { isGiven } from '../../forces/friction/missing.ts';
import type { Study } from '../../findings/study.ts';
import { listed } from '../../findings/words.ts';

/** A sentence part without a full stop; undefined where it can be checked, and of lines of `require`, which say so themselves. */
export function whyUnchecked(study: Study, kept: Kept): string | undefined {
  switch (kept.kind) {
    case 'limit':
      return ofLimit(study, kept.key);
    case 'word':
      return ofWord(study, kept.word);
    case 'requirement':
      return undefined;
  }
}

function ofLimit(study: Study, key: LimitKey): string | undefined {
  const { mechanism } = study.travel;
  const has = (column: string): boolean => mechanism.joints.some(({ name }) => study.columns.has(`${name}.${column}`));
  switch (key) {
    case 'transmission':
    case 'drive':
      return has(key) ? undefined : `no joint of the file has a ${key} angle`;
    case 'misalignment': {
      const rods = mechanism.joints.filter(({ kind }) => kind === 'rod');
      if (rods.length === 0) return 'the file has no rods';
      const open = rods.filter((joint) => joint.kind === 'rod' && joint.source.ends === undefined);
      return open.length === 0 ? undefined : `tilt of the ends of ${listed(open.map(({ name }) => name))}, for want of \`ends\``;
    }
    case 'lead':
      return has('lead') ? undefined : 'the file has no cable with a housing end';
    case 'step':
      return mechanism.levers.filter(({ plates, group }) => plates.length > 0 && group >= 0).length > 1
        ? undefined
        : 'the file has no second shaft with plates';
    case 'closing_margin':
      return whyClosing(study) ?? (isGiven(mechanism.friction) ? undefined : 'the file gives no friction');
  }
}

function ofWord(study: Study, word: KeptWord): string | undefined {
  const { keepOuts, parts } = clearanceOf(study.travel);
  switch (word) {
    case 'full_opening':
      return study.definition.plates.length === 0 ? 'the file has no plates' : undefined;
    case 'clearance':
      return keepOuts.length > 0 || parts.length > 0
        ? undefined
        : 'the file gives nothing with a width, a diameter or an outline that could touch';
    case 'closing_torque':
      return whyClosing(study);
  }
}

/** Why it is not known what closes a lever. */
function whyClosing({ travel, columns }: Study): string | undefined {
  const closing = [...columns.values()].filter(({ key }) => key === 'closing');
  if (closing.length === 0) return 'the file has no springs';
  const unknown = closing.find((column) => Number.isNaN(column.read(travel.build, travel.poseAt(0))));
  return unknown && `${unknown.name} is not known`;
}
