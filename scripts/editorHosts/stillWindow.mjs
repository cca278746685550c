/** The editor's window without motion of its own, which takes a machine without a graphics card more work than all that is looked at. */

/**
 * Ends every animation and transition of the window as it begins, also after the window is loaded anew. What waits for their end still hears of
 * it. The pages of views are left as they are.
 *
 * @param {import('playwright-core').Page} page
 */
export function stillWindow(page) {
  return page.addInitScript((rules) => {
    const { document, window } = globalThis;
    if (window !== window.top) return;
    const add = () => {
      const style = document.createElement('style');
      style.textContent = rules;
      document.head.append(style);
    };
    if (document.head === null) document.addEventListener('DOMContentLoaded', add, { once: true });
    else add();
  }, RULES);
}

const RULES = `*, ::before, ::after {
  animation-delay: 0s !important;
  animation-duration: 0s !important;
  animation-iteration-count: 1 !important;
  transition-delay: 0s !important;
  transition-duration: 0s !important;
}`;
