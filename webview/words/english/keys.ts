/** The list of keys: what each is called where it is, and what it does. */
export const KEYS = {
  keysButton: 'Keys',
  keysTitle: 'Keys',
  keyNames: {
    space: 'Space',
    pageUp: 'Page Up',
    pageDown: 'Page Down',
    home: 'Home',
    end: 'End',
    escape: 'Esc',
    enter: 'Enter',
  },
  keyActs: {
    play: 'play one stroke, or pause',
    small: 'pedal by 1 %; with Shift by 0.1 %',
    large: 'pedal by 10 %, with the focus on the drawing or the slider',
    ends: 'foot off, full pedal, with the focus on the drawing or the slider',
    worst: 'previous and next finding, at its worst place',
    escape: 'end the snap-back; drop what is tried',
    zoom: 'closer, further, with the focus on the drawing',
    fit: 'show all, the engine side, the chosen part, with the focus on the drawing',
    move: 'move the drawing; with the focus on a part or a handle, go to the next',
    hold: 'take hold of a handle, to move it with the arrows, and write it; let it go',
    names: 'names of all parts, with the focus on the drawing',
    list: 'this list',
  },
} as const;
