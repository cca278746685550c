/** A number that is typed. While the focus is on it, what is typed stays as it is typed. */
import { useLayoutEffect, useRef } from 'preact/hooks';

interface Props {
  readonly name: string;
  readonly value: number;
  readonly step: number;
  /** Only with what is a number. */
  readonly onNumber: (value: number) => void;
}

export function NumberField({ name, value, step, onNumber }: Props) {
  const field = useRef<HTMLInputElement>(null);
  const write = () => {
    if (field.current !== null) field.current.value = String(value);
  };
  useLayoutEffect(() => {
    if (document.activeElement !== field.current) write();
  });
  return (
    <input
      ref={field}
      type="number"
      aria-label={name}
      step={step}
      onInput={({ currentTarget }) => {
        if (Number.isFinite(currentTarget.valueAsNumber)) onNumber(currentTarget.valueAsNumber);
      }}
      onBlur={write}
    />
  );
}
