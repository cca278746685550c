/** Runs in the page: how much it scrolls sideways, px, and what sticks out of it or is cut in its own place. `[0]` where all is well. */
export const OUTSIDE = `(() => {
  const isExcused = (element) => element.closest('.unseen, .table-frame, .drawing, dialog, pre, .longest') !== null;
  const right = document.documentElement.clientWidth;
  const found = [...document.querySelectorAll('main *')].filter((element) => {
    if (isExcused(element)) return false;
    const box = element.getBoundingClientRect();
    if (box.width === 0) return false;
    const cut = element.scrollWidth > element.clientWidth + 1 && getComputedStyle(element).overflowX !== 'visible';
    return box.right > right + 1 || box.left < -1 || cut;
  });
  return [document.documentElement.scrollWidth - right, ...found.map((element) => element.outerHTML.slice(0, 120))];
})()`;
