/** The closed list of finding codes. A code is stable: documented, tested, linked, and never given another meaning. */
export const FINDING_CODES = [
  'not-assembled',
  'side-undecided',
  'toggle-opening',
  'toggle-returning',
  'transmission-angle',
  'drive-angle',
  'rod-end-tilt',
  'cable-lead',
  'opening-missed',
  'opening-early',
  'held-open',
  'closed-stop-passed',
  'plate-below-seat',
  'slack-used-up',
  'opens-otherwise',
  'turns-back',
  'change-point',
  'profile-left',
  'groove-left',
  'slot-run-out',
  'rod-out-of-adjustment',
  'off-plane',
  'movement-at-rest',
  'movement-at-full',
] as const;

export type FindingCode = (typeof FINDING_CODES)[number];
