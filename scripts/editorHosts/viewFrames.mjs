/** Finds the views of a mechanism in the window of an editor, each a page in a frame in a frame. */

/** The innermost pages of the views that are to be seen, from left to right. */
export async function viewFrames(page) {
  const found = [];
  for (const frame of page.frames()) {
    const isView = await frame
      .evaluate(() => globalThis.document.querySelector('script[src$="/build/webview/view.js"]') !== null)
      .catch(() => false);
    if (!isView) continue;
    const holder = await frame
      .parentFrame()
      ?.frameElement()
      .catch(() => null);
    const box = (await holder?.boundingBox()) ?? null;
    if (box !== null && box.width > 0) found.push({ frame, left: box.x });
  }
  return found.sort((a, b) => a.left - b.left).map(({ frame }) => frame);
}
