/** Starts the page: what was kept, the line to the editor, and what is shown. */
import { render } from 'preact';
import { isFiniteNumber, isFraction, isText, listOf, oneOf, optional } from '../src/protocol/guard.ts';
import { isPart } from '../src/protocol/reportGuards.ts';
import { watchType } from './charts/textWidth.ts';
import { areLooks, looks } from './drawing/looks.ts';
import { bringIntoView } from './page/bringIntoView.ts';
import { listenToKeys } from './page/keys.ts';
import { Page } from './page/page.tsx';
import { SPEEDS } from './page/pedalSlider.tsx';
import { followPlaying } from './page/play.ts';
import { keepRemembered, remember } from './page/remembered.ts';
import { keepScrolled } from './page/scrolled.ts';
import { followSnapBack } from './page/snapBack.ts';
import { watchSurroundings } from './page/surroundings.ts';
import { followFollowing } from './page/follows.ts';
import { followShown } from './page/told.ts';
import { receive } from './receive.ts';
import { connect } from './send.ts';
import { areNamesShown, direction, isStepping, openLists, openTables, scrolled, selected, speed, travel } from './state.ts';

/** What the editor gives a page of its own, once. */
declare function acquireVsCodeApi(): {
  readonly postMessage: (message: unknown) => void;
  readonly getState: () => unknown;
  readonly setState: (state: unknown) => unknown;
};

const editor = acquireVsCodeApi();

remember('travel', travel, isFraction);
remember('speed', speed, oneOf<number>(...SPEEDS));
remember('direction', direction, oneOf('front', 'top', 'side'));
remember('looks', looks, areLooks);
remember('names', areNamesShown, oneOf(true, false));
remember('selected', selected, optional(isPart));
remember('stepping', isStepping, oneOf(true, false));
remember('tables', openTables, listOf(isText));
remember('lists', openLists, listOf(isText));
remember('scrolled', scrolled, isFiniteNumber);
keepRemembered(editor);

watchSurroundings();
watchType();
followPlaying();
followShown();
followFollowing();
followSnapBack();
listenToKeys();
bringIntoView();
keepScrolled();

const place = document.getElementById('view') ?? document.body.appendChild(document.createElement('div'));
render(<Page />, place);

connect(
  {
    post: editor.postMessage,
    listen: (heard) => {
      const listener = ({ data }: MessageEvent<unknown>) => heard(data);
      window.addEventListener('message', listener);
      return () => window.removeEventListener('message', listener);
    },
  },
  receive,
  // Where somebody looks for what went wrong: the editor's developer tools show the page's elements.
  (why) => (place.dataset[`ignored${why.replace(/\W/g, '')}`] = String(1 + Number(place.dataset[`ignored${why.replace(/\W/g, '')}`] ?? 0))),
);
