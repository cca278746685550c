/**
 * Columns of the solved table: one row per station of the pedal, one column per `owner.column`.
 *
 * Columns in percent are shown in %, and are fractions (1 = 100 %) in formulas and inside the program.
 */
import type { Dimension } from './dimensions.ts';

/** What one column of the table holds; `dimension` says in which SI unit. */
export interface Column {
  readonly dimension: Dimension;
  /** Shown in percent. */
  readonly percent?: true;
  readonly doc: string;
}

/** Kinds of part that have columns; `pedal` is the drive. */
export type ColumnOwner = 'pedal' | 'lever' | 'rod' | 'slot' | 'cable' | 'plates' | 'sensor' | 'spring';

/** The columns of each kind of part, by name. */
export const COLUMNS: Readonly<Record<ColumnOwner, Readonly<Record<string, Column>>>> = {
  pedal: {
    travel: { dimension: 'number', percent: true, doc: 'The station: how far the pedal is pressed, of its travel or pull.' },
    effort: { dimension: 'force', doc: 'Force at the pad while pressing; at the cable where the pedal is a cable without `lever_ratio`.' },
    release: { dimension: 'force', doc: 'Least force that still holds the pedal on its way back.' },
  },
  lever: {
    rotation: { dimension: 'angle', doc: 'Turn from the drawn position, about its axis.' },
    opening: { dimension: 'angle', doc: 'Rotation counted in its opening direction.' },
    ratio: { dimension: 'number', doc: "Opening per rotation of the pedal, or per mm of the pedal's cable." },
    closing: { dimension: 'torque', doc: 'Torque that closes it, friction left out.' },
    margin: {
      dimension: 'number',
      doc: 'Closing torque over the friction that it must overcome: at 1 and below it stays where it is. Only with springs and friction in the file; friction that the file leaves out is left out here.',
    },
  },
  rod: {
    transmission: { dimension: 'angle', doc: 'Angle between rod and driven arm, 90° at best.' },
    drive: { dimension: 'angle', doc: 'The same at the driving arm.' },
    misalignment: { dimension: 'angle', doc: 'Greater tilt of its two ends.' },
    twist: { dimension: 'angle', doc: 'Change since drawn of the angle between its two bolts about the rod.' },
  },
  slot: {
    reach: { dimension: 'length', doc: "The pin's distance along the fork." },
    transmission: { dimension: 'angle', doc: 'Angle at the driven lever.' },
    drive: { dimension: 'angle', doc: 'Angle at the driving lever.' },
  },
  cable: {
    pull: { dimension: 'length', doc: 'Cable taken in, slack included.' },
    stretch: { dimension: 'length', doc: 'What the cable takes up past an open stop.' },
    tension: {
      dimension: 'force',
      doc: 'Pull at its pedal end while pressing, with the friction of its housing. Only with springs in the file.',
    },
    transmission: { dimension: 'angle', doc: 'Angle at the driven pin.' },
    drive: { dimension: 'angle', doc: 'Angle at the driving pin.' },
    lead: {
      dimension: 'angle',
      doc: "Greater angle of the inner cable to its housing ends' direction; where that is not given, to the middle of the directions that the inner sweeps.",
    },
  },
  plates: {
    area: { dimension: 'area', doc: 'Open area of one plate.' },
    fraction: { dimension: 'number', percent: true, doc: 'Open area of its greatest possible.' },
  },
  sensor: {
    angle: { dimension: 'angle', doc: 'Angle of its rotor.' },
    signal: { dimension: 'voltage', doc: 'What it reports.' },
    percent: { dimension: 'number', percent: true, doc: "Its signal within the signal's own span from rest to full pedal." },
  },
  spring: {
    torque: { dimension: 'torque', doc: 'Closing torque about the lever on which it works.' },
    margin_off: {
      dimension: 'number',
      doc: '`margin` with this spring off: the least of the shafts with plates that it reaches, or of its own lever where there is none.',
    },
    effort_off: { dimension: 'force', doc: '`pedal.effort` with this spring off.' },
    release_off: { dimension: 'force', doc: '`pedal.release` with this spring off: 0 where friction then holds the pedal.' },
  },
};

/** Whether a kind of part has columns. */
export function isColumnOwner(kind: string): kind is ColumnOwner {
  return Object.hasOwn(COLUMNS, kind);
}
