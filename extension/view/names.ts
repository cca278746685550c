/** By what the view goes in the manifest; the door and what lies behind it both know these. */

export const VIEW_TYPE = 'pedalToPlate.view';

/** Without the prefix of all commands. */
export const VIEW_COMMANDS = [
  'openView',
  'nextPart',
  'previousPart',
  'compareWithHead',
  'compareWithRevision',
  'compareWithFile',
  'stopComparing',
  'findDimensions',
  'showTolerances',
  'fitMeasurements',
  'solveFigure',
] as const;

export type ViewCommand = (typeof VIEW_COMMANDS)[number];
