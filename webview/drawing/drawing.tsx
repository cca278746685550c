/**
 * The mechanism, drawn. Preact renders the frame; what stands in it is kept by `stage.ts`, which follows the pedal without rendering. What a
 * person does to the mechanism leaves by the callbacks.
 */
import { computed, effect, signal, untracked, useSignalEffect } from '@preact/signals';
import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import type { Trial } from '../../src/protocol/messages.ts';
import type { PartKey, ReportedPart } from '../../src/protocol/report.ts';
import {
  areNamesShown,
  compared,
  direction,
  gone,
  hovered,
  isPlaying,
  lit,
  missing,
  selected,
  shown,
  shownTrial,
  snapBack,
  snapTime,
  travel,
  trial,
} from '../state.ts';
import { endSnapBack } from '../page/snapBack.ts';
import { Choice } from './choice.tsx';
import { describePicture, describePose } from './describe.ts';
import { placeText, spotOfHandle } from './drag.ts';
import { engineSide } from './engineSide.ts';
import { standaloneSvg } from './exportSvg.ts';
import { holdHandles } from './holding.ts';
import type { Fit } from './looks.ts';
import { createMover, type Held } from './moving.ts';
import { lookByKey, pointAt } from './pointing.ts';
import { linesOf, tipAt, walkParts } from './reading.ts';
import { sceneOf } from './scene.ts';
import { createSeeing, type Seeing } from './seeing.ts';
import { keyOfPart } from './sheet.ts';
import { createStage, type Stage } from './stage.ts';
import { TipNote, type Tip } from './tip.tsx';
import { Tools } from './tools.tsx';
import { isPinPlace } from './turning.ts';
import type { Size } from './viewport.ts';
import { DRAWING_WORDS as WORDS } from '../words/drawing.ts';

const drawn = computed(() => shown.value?.picture);
const NO_PARTS: readonly ReportedPart[] = [];
const reported = computed(() => shown.value?.report.parts ?? NO_PARTS);

export interface DrawingProps {
  /** Figures to be tried; an empty list drops those that are. */
  readonly onTry: (trial: Trial) => void;
  /** Figures to be written into the text, as one step. */
  readonly onWrite: (trial: Trial) => void;
  /** A part whose text is wanted. */
  readonly onReveal: (part: PartKey) => void;
}

export function Drawing(props: DrawingProps) {
  const svg = useRef<SVGSVGElement>(null);
  const callbacks = useRef(props);
  callbacks.current = props;
  const bench = useMemo(createBench, []);
  useLayoutEffect(() => bench.mount(svg.current!, callbacks), [bench]);
  useSignalEffect(() => describeAtRest(bench.summary));
  const { value: held } = bench.held;
  const { value: tip } = bench.tip;
  const { width, height } = bench.size.value;
  const picture = shown.value?.picture;
  const label = picture === undefined ? WORDS.noDrawing : describePicture(picture, direction.value);
  const at = held && bench.onScreen(held);
  return (
    <div class={missing.value === undefined && gone.value === undefined ? 'drawing' : 'drawing dimmed'}>
      <svg ref={svg} class="sheet" role="group" tabIndex={0} aria-label={WORDS.sheet}>
        <defs>
          <pattern id="keep-out-hatch" patternUnits="userSpaceOnUse" width="7" height="7">
            <path class="hatching" d="M0 0V7" />
          </pattern>
        </defs>
        <g class="paper" role="img" aria-label={label} />
        <g class="overlay" aria-hidden="true" />
        <g class="grips" />
        <g class="handles" />
      </svg>
      <Tools
        isPlanar={picture?.isPlanar ?? true}
        hasEngineSide={picture !== undefined && engineSide(picture).size > 0}
        onZoom={(factor) => bench.zoom(factor)}
        onFit={(to) => bench.fit(to)}
      />
      <TipNote tip={held?.isOffered === true ? undefined : tip} width={width} height={height} />
      {held?.isOffered === true && at !== undefined && (
        <Choice
          x={at.x}
          y={at.y}
          label={held.handle.label}
          lets={held.handle.lets}
          onPreview={(name) => bench.mover.preview(name)}
          onChoose={(name) => bench.putDown(() => bench.mover.choose(name))}
          onDrop={() => bench.putDown(() => bench.mover.drop())}
        />
      )}
      <p class="unseen" role="status">
        {held === undefined ? bench.summary.value : spokenOf(held)}
      </p>
    </div>
  );
}

const spokenOf = ({ handle, to }: Held): string =>
  to === undefined ? WORDS.holding(handle.label) : WORDS.placedAt(handle.label, placeText(to));

/** The drawing as it is shown, as the text of an SVG file; undefined while there is none. */
export const drawingSvg = (): string | undefined => exported?.();

let exported: (() => string | undefined) | undefined;

/** Words change when the pedal has come to rest, not on its way. */
function describeAtRest(summary: { value: string }): (() => void) | undefined {
  const picture = shown.value?.picture;
  const at = travel.value;
  if (picture === undefined || isPlaying.value || snapBack.value !== undefined) return undefined;
  const timer = setTimeout(() => (summary.value = describePose(picture, at)), REST_MS);
  return () => clearTimeout(timer);
}

const REST_MS = 400;

/** All that one drawing holds besides its elements. */
function createBench() {
  const size = signal<Size>({ width: 0, height: 0 });
  const tip = signal<Tip | undefined>(undefined);
  const held = signal<Held | undefined>(undefined);
  const summary = signal('');
  let stage: Stage | undefined;
  let callbacks: { readonly current: DrawingProps };
  let seeing: Seeing | undefined;

  const mover = createMover({
    trial: () => trial.value,
    onTry: (next) => callbacks.current.onTry(next),
    onWrite: (next) => callbacks.current.onWrite(next),
    changed: () => {
      held.value = mover.held();
      stage?.hold(held.value?.handle.path, held.value?.spot);
      tip.value = held.value && tipOfHeld(held.value);
    },
  });

  const onScreen = ({ spot }: Held) => {
    const { scale, x, y } = stage?.viewport() ?? { scale: 1, x: 0, y: 0 };
    return { x: scale * spot.x + x, y: scale * spot.y + y };
  };

  const tipOfHeld = (hand: Held): Tip => ({
    ...onScreen(hand),
    title: hand.handle.label,
    lines: linesOf(hand.handle, hand.to),
    note: WORDS.holdingHint,
  });

  /** Ends a move by a choice; the focus goes back to where it came from, unless it has gone elsewhere. */
  const putDown = (end: () => void) => {
    const path = mover.held()?.handle.path;
    const isHere = document.activeElement?.closest('.choice') !== null;
    end();
    if (path !== undefined && isHere) stage?.handles.focus(path);
  };

  function mount(svg: SVGSVGElement, given: { readonly current: DrawingProps }): () => void {
    callbacks = given;
    const made = createStage(svg);
    stage = made;
    const sees = createSeeing(svg, made, size);
    seeing = sees;
    exported = () => {
      const title = shown.value?.report.title ?? shown.value?.fileName;
      return made.scene() === undefined ? undefined : standaloneSvg(svg, title ?? WORDS.fileTitle, 1 / made.viewport().scale);
    };
    const resize = new ResizeObserver(() => sees.resize());
    resize.observe(svg);
    // Other buttons take other room.
    const tools = svg.parentElement?.querySelector('.tools');
    if (tools) resize.observe(tools);

    const choose = (part: PartKey | undefined) => {
      selected.value = part;
      if (part !== undefined) callbacks.current.onReveal(part);
    };
    const fitPart = (part: PartKey | undefined) => part !== undefined && sees.fitPart(part);
    const holding = holdHandles(svg, made, mover, () => {
      isPlaying.value = false;
      endSnapBack();
    });
    const ends = [
      holding.end,
      pointAt(
        svg,
        sees.surface,
        (target) => choose(made.symbolAt(target)?.part),
        (target) => fitPart(made.symbolAt(target)?.part),
      ),
      tipAt(svg, made, { tip, onScreen: (x, y) => onScreen({ spot: { x, y } } as Held), isHolding: () => mover.held() !== undefined }),
      effect(() => {
        // What follows a picture leaves it as it is.
        const [picture, parts] = [drawn.value, reported.value];
        if (picture === undefined) return;
        made.show(sceneOf(picture, direction.value, compared.value?.other?.picture), parts);
        untracked(() => {
          sees.restore();
          tellMover(made);
        });
      }),
      effect(() => {
        const motion = snapBack.value?.trace;
        if (motion === undefined) made.poseTo(travel.value);
        else made.poseIn(motion, snapTime.value);
      }),
      effect(() => {
        const [picture, lost] = [shown.value?.picture, snapBack.value?.lost];
        made.lose(picture && lost && keyOfPart(picture, lost));
      }),
      effect(() => {
        const picture = shown.value?.picture;
        const [bright, chosen] = [lit.value, selected.value];
        made.light(picture && bright && keyOfPart(picture, bright));
        made.handles.tabTo(picture && chosen && keyOfPart(picture, chosen));
      }),
      effect(() => made.nameAll(areNamesShown.value)),
    ];
    const key = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey) return;
      if (!(holding.key(event) || actOn(event, svg, made, sees, choose))) return;
      event.preventDefault();
      event.stopPropagation();
    };
    svg.addEventListener('keydown', key);
    return () => {
      svg.removeEventListener('keydown', key);
      resize.disconnect();
      for (const end of ends) end();
      hovered.value = undefined;
      exported = undefined;
    };
  }

  /** What is in the hand stands where the picture of it has it. */
  function tellMover(made: Stage): void {
    const path = mover.held()?.handle.path;
    const [sheet, pose] = [made.scene()?.sheet, made.pose()];
    const handle = sheet?.picture.handles.find((each) => each.path === path);
    if (sheet === undefined || pose === undefined || handle === undefined) return;
    const rotation = isPinPlace(handle.at) ? pose.rotation[handle.at.lever]! : 0;
    mover.drawnAt(shownTrial.value, spotOfHandle(sheet.view, handle, rotation), rotation);
  }

  function actOn(
    event: KeyboardEvent,
    svg: SVGSVGElement,
    made: Stage,
    sees: Seeing,
    choose: (part: PartKey | undefined) => void,
  ): boolean {
    const symbol = made.symbolAt(event.target);
    switch (event.key) {
      case 'n':
        areNamesShown.value = !areNamesShown.value;
        return true;
      case 'f':
        if (selected.value !== undefined) sees.fitPart(selected.value);
        return true;
      case 'Enter':
      case ' ':
        if (symbol?.part === undefined) return false;
        choose(symbol.part);
        return true;
      case 'Escape':
        if (snapBack.value !== undefined) return false;
        if (event.target === svg && selected.value === undefined) return false;
        selected.value = undefined;
        svg.focus();
        return true;
    }
    if (symbol !== undefined && walkParts(event.key, event.target, made)) return true;
    return !event.altKey && lookByKey(event.key, sees.surface);
  }

  return {
    mount,
    size,
    tip,
    held,
    summary,
    mover,
    zoom: (factor: number) => seeing?.zoom(factor),
    fit: (to: Fit) => seeing?.fit(to),
    putDown,
    onScreen,
  };
}
