/** What can be saved of the whole: the drawing as it is seen, and the table. */
import { saveTable } from '../charts/saveTable.ts';
import { drawingSvg } from '../drawing/drawing.tsx';
import { saveDrawing } from '../page/saveDrawn.ts';
import { WORDS } from '../words.ts';

export function Save() {
  const save = (kind: 'svg' | 'png') => {
    const text = drawingSvg();
    if (text !== undefined) void saveDrawing(text, kind);
  };
  return (
    <section aria-labelledby="save-title">
      <h2 id="save-title">{WORDS.save}</h2>
      <p class="tools">
        <button type="button" class="quiet" onClick={() => save('svg')}>
          {WORDS.drawingAs('SVG')}
        </button>
        <button type="button" class="quiet" onClick={() => save('png')}>
          {WORDS.drawingAs('PNG')}
        </button>
        <button type="button" class="quiet" onClick={() => void saveTable()}>
          {WORDS.saveWholeTable}
        </button>
      </p>
    </section>
  );
}
