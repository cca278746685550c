/** Buttons at the drawing's corner: which view, how large. */
import { areNamesShown, direction, type ViewDirection } from '../state.ts';
import type { Fit } from './looks.ts';
import { ZOOM_STEP } from './viewport.ts';
import { DRAWING_WORDS as WORDS } from '../words/drawing.ts';

export interface ToolsProps {
  /** Whether the front view says it all: there is no other then. */
  readonly isPlanar: boolean;
  readonly onZoom: (factor: number) => void;
  /** Whether that is less than all. */
  readonly hasEngineSide: boolean;
  readonly onFit: (to: Fit) => void;
}

const VIEWS: readonly ViewDirection[] = ['front', 'top', 'side'];

export function Tools({ isPlanar, hasEngineSide, onZoom, onFit }: ToolsProps) {
  return (
    <div class="tools">
      {!isPlanar && (
        <div role="group" aria-label={WORDS.viewGroup}>
          {VIEWS.map((view) => (
            <button
              type="button"
              key={view}
              title={WORDS.views[view].title}
              aria-pressed={direction.value === view}
              onClick={() => (direction.value = view)}
            >
              {WORDS.views[view].name}
            </button>
          ))}
        </div>
      )}
      <div role="group" aria-label={WORDS.lookGroup}>
        <button
          type="button"
          title={WORDS.namesTitle}
          aria-pressed={areNamesShown.value}
          onClick={() => (areNamesShown.value = !areNamesShown.value)}
        >
          {WORDS.names}
        </button>
        <button type="button" title={WORDS.fitTitle} onClick={() => onFit('all')}>
          {WORDS.fit}
        </button>
        {hasEngineSide && (
          <button type="button" title={WORDS.engineTitle} onClick={() => onFit('engine')}>
            {WORDS.engine}
          </button>
        )}
        <button type="button" title={WORDS.smallerTitle} aria-label={WORDS.smaller} onClick={() => onZoom(1 / ZOOM_STEP)}>
          −
        </button>
        <button type="button" title={WORDS.largerTitle} aria-label={WORDS.larger} onClick={() => onZoom(ZOOM_STEP)}>
          +
        </button>
      </div>
    </div>
  );
}
