/** What the pointer or the focus is on, in a small note beside it: name, dimensions as written, and what about its drawing is schematic. */
export interface Tip {
  /** px, in the drawing. */
  readonly x: number;
  readonly y: number;
  readonly title: string;
  readonly lines: readonly string[];
  readonly note: string | undefined;
}

/** On the side of its place that has more room, and no broader than that: nothing is measured, because it follows a hand. */
export function TipNote({ tip, width, height }: { readonly tip: Tip | undefined; readonly width: number; readonly height: number }) {
  if (tip === undefined) return null;
  const place = (element: HTMLElement | null) => {
    if (element === null) return;
    const { style } = element;
    const isRight = tip.x > width / 2;
    const isLow = tip.y > height / 2;
    style.left = isRight ? 'auto' : `${tip.x + GAP_PX}px`;
    style.right = isRight ? `${width - tip.x + GAP_PX}px` : 'auto';
    style.top = isLow ? 'auto' : `${tip.y + GAP_PX}px`;
    style.bottom = isLow ? `${height - tip.y + GAP_PX}px` : 'auto';
    style.maxWidth = `min(32em, ${Math.round((isRight ? tip.x : width - tip.x) - GAP_PX - 4)}px)`;
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
