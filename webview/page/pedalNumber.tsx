/** The pedal's travel as a number that can be typed: in percent, taken with Enter or as the focus leaves. */
import { useRef, useState } from 'preact/hooks';
import { figureText } from '../charts/figures.ts';
import { travel } from '../state.ts';
import { WORDS } from '../words.ts';
import { movedBy } from './keys.ts';
import { percentIn } from './percentIn.ts';
import { setTravel } from './play.ts';
import { useFollow } from './useFollow.ts';

/** @param onWrong told why what is typed is not taken, and undefined once that is past */
export function PedalNumber({ onWrong }: { readonly onWrong: (why: string | undefined) => void }) {
  const field = useRef<HTMLInputElement>(null);
  /** While somebody types, the pedal writes nothing over it. */
  const isTyped = useRef(false);
  const [isWrong, setWrong] = useState(false);
  const tell = (wrong: boolean) => {
    setWrong(wrong);
    onWrong(wrong ? WORDS.wrongTravel : undefined);
  };
  const write = () => {
    const text = figureText(100 * travel.value, 1);
    if (field.current === null || isTyped.current || field.current.value === text) return;
    field.current.value = text;
    // The next figure typed takes its place, whenever that is.
    if (document.activeElement === field.current) field.current.select();
  };
  useFollow(write);
  const drop = () => {
    isTyped.current = false;
    tell(false);
    write();
  };
  /** @returns whether it was taken */
  const take = (typed: string): boolean => {
    const percent = percentIn(typed);
    if (percent === undefined) return false;
    isTyped.current = false;
    tell(false);
    setTravel(percent / 100);
    write();
    return true;
  };
  return (
    <input
      ref={field}
      type="text"
      class="number pedal-number"
      inputMode="decimal"
      autocomplete="off"
      aria-label={WORDS.pedalNumber}
      aria-invalid={isWrong ? 'true' : undefined}
      aria-describedby={isWrong ? 'pedal-wrong' : undefined}
      onFocus={({ currentTarget }) => currentTarget.select()}
      onInput={() => {
        isTyped.current = true;
        tell(false);
      }}
      onKeyDown={(event) => {
        if (event.ctrlKey || event.metaKey || event.altKey) return;
        const to = AT_CARET.includes(event.key) ? undefined : movedBy(event, travel.peek());
        if (to !== undefined) {
          event.preventDefault();
          setTravel(to);
          drop();
        } else if (event.key === 'Enter' && isTyped.current) {
          if (take(event.currentTarget.value)) event.currentTarget.select();
          else tell(true);
        } else if (event.key === 'Escape' && isTyped.current) {
          // What is tried elsewhere stays.
          event.stopPropagation();
          drop();
        }
      }}
      onBlur={({ currentTarget }) => {
        if (!isTyped.current || !take(currentTarget.value)) drop();
      }}
    />
  );
}

/** Keys of the slider that move the caret in a field. */
const AT_CARET = ['ArrowLeft', 'ArrowRight', 'Home', 'End'];
