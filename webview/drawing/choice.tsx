/** The `let` values behind a place that was moved: which one is to give way. Nothing is written before one is chosen. */
import { withCode } from '../panels/withCode.tsx';
import { DRAWING_WORDS as WORDS } from '../words/drawing.ts';

export interface ChoiceProps {
  /** px, in the drawing. */
  readonly x: number;
  readonly y: number;
  readonly label: string;
  readonly lets: readonly string[];
  readonly onPreview: (name: string) => void;
  readonly onChoose: (name: string) => void;
  readonly onDrop: () => void;
}

export function Choice({ x, y, label, lets, onPreview, onChoose, onDrop }: ChoiceProps) {
  const place = (element: HTMLElement | null) => {
    if (element === null) return;
    const room = element.parentElement!;
    element.style.left = `${Math.max(4, Math.min(x + 12, room.clientWidth - element.offsetWidth - 4))}px`;
    element.style.top = `${Math.max(4, Math.min(y + 12, room.clientHeight - element.offsetHeight - 4))}px`;
    if (!element.contains(document.activeElement)) element.querySelector('button')?.focus();
  };
  const keys = (event: KeyboardEvent) => {
    if (event.key === 'Escape') onDrop();
    else if (event.key === 'ArrowDown' || event.key === 'ArrowUp')
      focusNext(event.currentTarget as Element, event.key === 'ArrowDown' ? 1 : -1);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const left = (event: FocusEvent) => {
    const to = event.relatedTarget;
    if (!(to instanceof Node) || !(event.currentTarget as Element).contains(to)) onDrop();
  };
  return (
    <div class="choice" role="group" aria-label={WORDS.whatChanges(label)} ref={place} onKeyDown={keys} onFocusOut={left}>
      {lets.map((name) => (
        <button
          type="button"
          key={name}
          onFocus={() => onPreview(name)}
          onPointerEnter={() => onPreview(name)}
          onClick={() => onChoose(name)}
        >
          {withCode(WORDS.change(name))}
        </button>
      ))}
      <button type="button" onClick={onDrop}>
        {WORDS.leave}
      </button>
    </div>
  );
}

function focusNext(within: Element, way: number): void {
  const buttons = [...within.querySelectorAll('button')];
  const at = buttons.findIndex((button) => button === document.activeElement);
  buttons[(at + way + buttons.length) % buttons.length]?.focus();
}
