/** Buttons at the drawing's corner: which view, how large. */
import { areNamesShown, direction, type ViewDirection } from '../state.ts';
import { ZOOM_STEP } from './viewport.ts';

export interface ToolsProps {
  /** Whether the front view says it all: there is no other then. */
  readonly isPlanar: boolean;
  readonly onZoom: (factor: number) => void;
  readonly onFit: () => void;
}

const VIEWS: readonly (readonly [ViewDirection, string, string])[] = [
  ['front', 'Front', 'Seen against z'],
  ['top', 'Top', 'Seen from above, against y'],
  ['side', 'Side', 'Seen from the right, against x'],
];

export function Tools({ isPlanar, onZoom, onFit }: ToolsProps) {
  return (
    <div class="tools">
      {!isPlanar && (
        <div role="group" aria-label="View">
          {VIEWS.map(([view, label, title]) => (
            <button type="button" key={view} title={title} aria-pressed={direction.value === view} onClick={() => (direction.value = view)}>
              {label}
            </button>
          ))}
        </div>
      )}
      <div role="group" aria-label="Look">
        <button
          type="button"
          title="Names of all parts (n)"
          aria-pressed={areNamesShown.value}
          onClick={() => (areNamesShown.value = !areNamesShown.value)}
        >
          Names
        </button>
        <button type="button" title="Show all (0)" onClick={onFit}>
          Fit
        </button>
        <button type="button" title="Smaller (−)" aria-label="Smaller" onClick={() => onZoom(1 / ZOOM_STEP)}>
          −
        </button>
        <button type="button" title="Larger (+)" aria-label="Larger" onClick={() => onZoom(ZOOM_STEP)}>
          +
        </button>
      </div>
    </div>
  );
}
