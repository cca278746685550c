/** What is saved from the view: by its buttons and the editor's own dialog, into files that are then read. */
import { workspace } from 'vscode';
import type { Suite } from '../suite.ts';
import { chooseFile, doInWindow, exactly } from '../support/acts.ts';
import { inWorkspace } from '../support/editor.ts';
import { expectEqual, expectTrue } from '../support/expect.ts';
import { expectSeen, seen } from '../support/page.ts';
import { FOUR_BARREL, openView, READY } from '../support/views.ts';
import { sizeOfPng, textIn, untilWritten } from '../support/written.ts';

/** Charts that the example has, by what stands in the names of their files. */
const CHARTS = ['progression', 'ratio', 'angles', 'signal', 'torques', 'effort'];

export const viewSaving: Suite = {
  about: 'view, saving',
  tests: {
    'offers a name beside the file, writes nothing where the person thinks better of it, and else the drawing': async () => {
      await openView(FOUR_BARREL);
      await expectSeen('views', [READY]);
      const before = await filesOfFolder();
      const offer = exactly(pathOf('four-barrel-drawing.svg'));
      await doInWindow(
        ['press', 'Names'],
        ['press', 'Drawing as SVG'],
        ['chooseNoFile', offer],
        ['press', 'Drawing as SVG'],
        chooseFile(offer, inWorkspace('drawing.svg')),
      );
      const { text, size } = await savedSvg('drawing.svg');
      for (const name of ['Four barrels, one shaft', 'bellcrank']) expectTrue(text.includes(name), `${name} stands in the drawing`);
      expectEqual(
        (await filesOfFolder()).filter((name) => !before.includes(name)),
        ['drawing.svg'],
        'files that were written',
      );
      await doInWindow(['press', 'Drawing as PNG'], chooseFile(exactly(pathOf('four-barrel-drawing.png')), inWorkspace('drawing.png')));
      expectTwice(sizeOfPng(await untilWritten(inWorkspace('drawing.png'))), size);
    },

    'writes every chart as a drawing and as pixels': async () => {
      await openView(FOUR_BARREL);
      await expectSeen('views', [READY]);
      const titles = (await seen('viewButtons')).flatMap((name) => /^Save (.*) as SVG$/.exec(name)?.[1] ?? []);
      const ids: string[] = [];
      for (const [index, title] of titles.entries()) {
        const [svg, png] = ['svg', 'png'].map((kind) => `chart-${index}.${kind}`) as [string, string];
        const [offered = ''] = await doInWindow(
          ['press', `Save ${title} as SVG`],
          chooseFile(`${exactly(pathOf('four-barrel-'))}\\w+\\.svg`, inWorkspace(svg)),
        );
        const id = /-(\w+)\.svg$/.exec(offered)?.[1] ?? '';
        await doInWindow(['press', `Save ${title} as PNG`], chooseFile(exactly(pathOf(`four-barrel-${id}.png`)), inWorkspace(png)));
        ids.push(id);
        const { text, size } = await savedSvg(svg);
        expectTrue(text.includes(`<title>${title}</title>`), `${svg} says what it shows`);
        expectTrue(/<path [^>]*d="M[^"]{200,}"/.test(text), `${svg} has a curve`);
        expectTwice(sizeOfPng(await untilWritten(inWorkspace(png))), size);
      }
      expectEqual(
        CHARTS.filter((id) => !ids.includes(id)),
        [],
        `charts that were not saved, beside ${ids.join(', ')}`,
      );
      expectEqual(await seen('viewTroubles'), [], 'what went wrong in the page');
    },

    'writes the whole table, and that of one chart, with the figures of the text': async () => {
      await openView(FOUR_BARREL);
      await expectSeen('views', [READY]);
      await doInWindow(['press', 'All columns as CSV'], chooseFile(exactly(pathOf('four-barrel-table.csv')), inWorkspace('table.csv')));
      const whole = await savedTable('table.csv');
      expectEqual(whole.columns.length, 101, 'stations');
      // As the text has them: the pedal's travel, and what the stop and the two sensor lines say of the shaft.
      expectEqual([whole.at(0, 'pedal.travel'), whole.at(-1, 'pedal.travel')], [0, 100], 'the pedal at its ends');
      expectTrue(Math.abs(whole.at(-1, 'shaft.opening') - 82) < 0.001, `open by ${String(whole.at(-1, 'shaft.opening'))}°`);
      await doInWindow(
        ['press', 'Sensor signal as a table'],
        ['press', 'Save Sensor signal as CSV'],
        chooseFile(exactly(pathOf('four-barrel-signal.csv')), inWorkspace('signal.csv')),
      );
      const signal = await savedTable('signal.csv');
      // 0.5 V at 0° to 4.5 V at 110° of the sensor, which stands at 12° where the shaft is closed, and turns with it.
      const volts = (opening: number): number => 0.5 + (4 * (12 + opening)) / 110;
      for (const [station, opening] of [
        [0, 0],
        [-1, 82],
      ] as const) {
        const found = signal.at(station, 'position.signal');
        expectTrue(Math.abs(found - volts(opening)) < 0.002, `${String(found)} V at ${opening}°`);
      }
    },
  },
};

const pathOf = (name: string): string => inWorkspace(name).path;

async function filesOfFolder(): Promise<readonly string[]> {
  return (await workspace.fs.readDirectory(inWorkspace(''))).map(([name]) => name);
}

/** An SVG file by itself: with its own colours, and nothing that would be fetched or run. */
async function savedSvg(name: string): Promise<{ readonly text: string; readonly size: readonly [number, number] }> {
  const text = textIn(await untilWritten(inWorkspace(name)))
    .replace(/^<\?xml version="1.0" encoding="UTF-8"\?>/, '')
    .trim();
  expectTrue(/^<svg [^>]*xmlns="http:\/\/www\.w3\.org\/2000\/svg"/.test(text) && text.endsWith('</svg>'), `${name} is one SVG`);
  expectTrue(!/<script|\son\w+=|var\(|\sclass=|(?:href|src)="(?!#)/.test(text), `${name} leans on nothing outside it`);
  const [, width, height] = /^<svg [^>]*viewBox="\S+ \S+ (\S+) (\S+)"/.exec(text) ?? [];
  return { text, size: [Number(width), Number(height)] };
}

/** So that it is sharp on a dense screen; up to what rounding the size of a drawing to whole pixels may take. */
function expectTwice(pixels: readonly number[], size: readonly number[]): void {
  const isTwice = pixels.every((length, index) => Math.abs(length - 2 * (size[index] ?? NaN)) <= 2);
  expectTrue(isTwice, `a drawing of ${size.join(' by ')} has ${pixels.join(' by ')} pixels`);
}

interface Table {
  readonly columns: readonly string[];
  /** In the first column whose name begins so. Stations before 0 are counted from the last. */
  at(station: number, column: string): number;
}

async function savedTable(name: string): Promise<Table> {
  const [head = '', ...rows] = textIn(await untilWritten(inWorkspace(name)))
    .trimEnd()
    .split('\r\n');
  const names = head.split(',');
  expectTrue(
    rows.every((row) => row.split(',').length === names.length),
    `every row of ${name} has ${names.length} fields`,
  );
  return {
    columns: rows,
    at(station, column) {
      const index = names.findIndex((each) => each.startsWith(column));
      if (index < 0) throw new Error(`${name} has no ${column}: ${head}`);
      return Number(rows.at(station)?.split(',')[index]);
    },
  };
}
