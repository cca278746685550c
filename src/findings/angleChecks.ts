/** The two angles at which a joint meets its arms, each with its limit. */
import type { AngleCheck } from './angleBeyondLimit.ts';
import { limitOf, type Study } from './study.ts';

/** At the driven arm. */
export function transmissionCheck(study: Study): AngleCheck {
  return {
    code: 'transmission-angle',
    angle: 'transmission',
    limit: limitOf(study, 'transmission'),
    way: 1,
    what: 'a transmission angle',
    cure: 'Turn the driven arm nearer to square with it there',
  };
}

/** At the driving arm. */
export function driveCheck(study: Study): AngleCheck {
  return {
    code: 'drive-angle',
    angle: 'drive',
    limit: limitOf(study, 'drive'),
    way: 1,
    what: 'a drive angle',
    cure: 'Turn the driving arm nearer to square with it there',
  };
}
