/** A number that is typed. While the focus is on it, what is typed stays as it is typed. */
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { WORDS } from '../words.ts';
import { numberIn } from './numberText.ts';

interface Props {
  readonly name: string;
  /** Stands behind the field, and may be typed too; empty for a bare number. */
  readonly unit: string;
  readonly value: number;
  /** For the arrow keys. */
  readonly step: number;
  /** With what is a number; with the one from before the typing where what is typed is none, so that half of it is not taken. */
  readonly onNumber: (value: number) => void;
}

/**
 * A field of text: one of numbers would leave out what it does not take while it is typed, make 35 of `3,5` and 1.5 of `1.5 inch`, and say
 * nothing.
 */
export function NumberField({ name, unit, value, step, onNumber }: Props) {
  const field = useRef<HTMLInputElement>(null);
  const before = useRef(value);
  const [wrong, setWrong] = useState<string>();
  const write = () => {
    if (field.current !== null) field.current.value = String(value);
    setWrong(undefined);
  };
  useLayoutEffect(() => {
    if (document.activeElement !== field.current) write();
  });
  return (
    <>
      <span class="dial-number">
        <input
          ref={field}
          type="text"
          class="number"
          inputMode="decimal"
          autocomplete="off"
          aria-label={name}
          aria-invalid={wrong === undefined ? undefined : 'true'}
          onFocus={() => (before.current = value)}
          onInput={({ currentTarget }) => {
            const typed = numberIn(currentTarget.value, unit);
            if (typed !== undefined) onNumber('number' in typed ? typed.number : before.current);
            setWrong(typed === undefined || 'number' in typed ? undefined : WORDS.wrongNumber(typed, unit));
          }}
          onKeyDown={(event) => {
            const way = { ArrowUp: 1, ArrowDown: -1 }[event.key];
            if (way === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
            event.preventDefault();
            const next = Number((value + way * step).toPrecision(12));
            event.currentTarget.value = String(next);
            setWrong(undefined);
            onNumber(next);
          }}
          onBlur={write}
        />
        <span class="unit">{unit}</span>
      </span>
      <span class="number-wrong" role="alert">
        {wrong}
      </span>
    </>
  );
}
