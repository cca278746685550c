/** What the pointer or the focus is on, in a small note beside it: name, dimensions as written, and what about its drawing is schematic. */
export interface Tip {
  /** px, in the drawing. */
  readonly x: number;
  readonly y: number;
  readonly title: string;
  readonly lines: readonly string[];
  readonly note: string | undefined;
}

/** Turned towards the middle of the drawing, so that it stays inside. */
export function TipNote({ tip, width, height }: { readonly tip: Tip | undefined; readonly width: number; readonly height: number }) {
  if (tip === undefined) return null;
  const place = (element: HTMLElement | null) => {
    if (element === null) return;
    const { style, offsetWidth, offsetHeight } = element;
    const beside = (at: number, room: number, needed: number) =>
      Math.max(4, Math.min(at > room / 2 ? at - needed - GAP_PX : at + GAP_PX, room - needed - 4));
    style.left = `${beside(tip.x, width, offsetWidth)}px`;
    style.top = `${beside(tip.y, height, offsetHeight)}px`;
  };
  return (
    <div class="tip" role="tooltip" id="drawing-tip" ref={place}>
      <strong>{tip.title}</strong>
      {tip.lines.map((line) => (
        <div key={line}>{line}</div>
      ))}
      {tip.note !== undefined && <div class="note">{tip.note}</div>}
    </div>
  );
}

const GAP_PX = 14;
