/**
 * What the page knows, as signals: what came from the editor, and what the person has chosen to see. Whoever shows a signal reads it;
 * `receive.ts` and the controls are the only ones to write it. `travel` changes with each frame while playing: what follows it changes
 * attributes in an effect and renders nothing anew.
 */
import { computed, signal } from '@preact/signals';
import type { Compared, Missing, Source, Trial } from '../src/protocol/messages.ts';
import type { Dial, PartKey } from '../src/protocol/report.ts';
import type { StudyKind, StudySpread, ToldStudy } from '../src/protocol/studies.ts';
import type { FailureKey, Returns, ReturnTrace, Tried, Working } from '../src/protocol/returns.ts';
import type { ShownInParts } from './page/follows.ts';

/** The newest picture with the text that it is of; undefined before the first. */
export const shown = signal<ShownInParts | undefined>(undefined);

/** What the text lacks where it has no picture of its own: the one above is then an older one, dimmed. Undefined where it is current. */
export const missing = signal<readonly Missing[] | undefined>(undefined);

/** Why there is nothing to show any more; undefined while the file is there. */
export const gone = signal<string | undefined>(undefined);

/** The newest text that the editor has spoken of; what `missing` says is of it. Undefined before the first and once the file is gone. */
export const newest = signal<Source | undefined>(undefined);

/** Pedal travel, a fraction from 0 to 1. */
export const travel = signal(0);
export const isPlaying = signal(false);
/** Of playing: at 1 the pedal takes two seconds out and two back. */
export const speed = signal(1);

/** The part that the cursor or a click has chosen. */
export const selected = signal<PartKey | undefined>(undefined);
/** The part under the pointer or the focus. */
export const hovered = signal<PartKey | undefined>(undefined);
/** The part that lights up. */
export const lit = computed(() => hovered.value ?? selected.value);
/** Whether the card of the selected part is open: the reviewer steps. */
export const isStepping = signal(false);

/** Figures that are tried and not written; what the sliders and the dragged place say, ahead of the picture that answers. */
export const trial = signal<Trial>([]);
/** What of it the picture shows so far. */
export const shownTrial = signal<Trial>([]);
/** The newest picture of the text as it is written, to be compared with while figures are tried. */
export const written = signal<ShownInParts | undefined>(undefined);
/** What was written last from what was tried, and the version that has it; undefined where nothing was. */
export const writtenTrial = signal<{ readonly version: number; readonly figures: Trial } | undefined>(undefined);
/** The number under the cursor, which can be tried too. */
export const dialAtCursor = signal<Dial | undefined>(undefined);

/** The state that this one is compared with. */
export const compared = signal<Compared | undefined>(undefined);

/** Every single failure as it was last worked out, and of what; undefined before the first time. It may be of an older text. */
export const returns = signal<{ readonly of: Tried; readonly table: Returns } | undefined>(undefined);
/** What they are being worked out of, and how far that is, once that is told; undefined while they are not. */
export const returnsComing = signal<{ readonly of: Tried; readonly progress: Pick<Working, 'done' | 'all'> | undefined } | undefined>(
  undefined,
);
/** Why they did not come when they were asked for last; undefined where they did. */
export const returnsRefused = signal<string | undefined>(undefined);

/** Where each study stands that was asked for, and the text that it is of; what a person has put away is not there. */
export const studies = signal<Readonly<Partial<Record<StudyKind, Pick<ToldStudy, 'source' | 'now' | 'isOutrun'>>>>>({});
/** To which the page is to lead: it was asked for elsewhere. A new object each time. */
export const studyToShow = signal<{ readonly kind: StudyKind } | undefined>(undefined);
/** The answer of a study that stands in the text, and the version that has it; undefined where none was written. */
export const writtenAnswer = signal<{ readonly kind: StudyKind; readonly block: number; readonly version: number } | undefined>(undefined);
/** How far the curves spread of the text as it is shown; undefined while that is not known, or of another text or of what is tried. */
export const spread = computed((): StudySpread | undefined => {
  const known = studies.value.tolerance;
  const of = shown.value?.source;
  if (known?.now.stage !== 'found' || shownTrial.value.length > 0 || missing.value !== undefined) return undefined;
  return known.source.uri === of?.uri && known.source.version === of.version ? known.now.found.spread : undefined;
});

/** A snap-back that the drawing follows in the place of the pedal. */
export interface ShownSnapBack {
  readonly of: Tried;
  readonly failure: FailureKey | undefined;
  /** What fails, e.g. `rod link`; empty where nothing does. */
  readonly name: string;
  /** What is gone from the drawing; undefined where nothing is. */
  readonly lost: PartKey | undefined;
  readonly trace: ReturnTrace;
}
/** Undefined while the drawing follows the pedal. */
export const snapBack = signal<ShownSnapBack | undefined>(undefined);
/** s after the foot came off. */
export const snapTime = signal(0);
export const isSnapPlaying = signal(false);
/** The row whose snap-back is on its way, as `rowKey` says, or why that of a row did not come. */
export const snapAsked = signal<{ readonly row: string; readonly why: string | undefined } | undefined>(undefined);

export type ViewDirection = 'front' | 'top' | 'side';
export const direction = signal<ViewDirection>('front');
/** All names are written beside their parts. */
export const areNamesShown = signal(false);

/** Whether motion is unwelcome: the editor's own setting or the system's. */
export const isMotionReduced = signal(false);

/** Something that a person asked for and that did not come about, in words; undefined where there is none. */
export const complaint = signal<string | undefined>(undefined);
/** What is said to a screen reader, once: at rest, and when the verdict changes. */
export const announcement = signal('');
/** The list of keys is open. */
export const areKeysShown = signal(false);
/** Lists that stand whole, by their names. */
export const openLists = signal<readonly string[]>([]);
/** How far down the page somebody has read, px. */
export const scrolled = signal(0);
/** Charts that stand as tables, by their ids. */
export const openTables = signal<readonly string[]>([]);
