/* What the editor puts into a page of its own before the page's script: theme, state, and the way to itself. */
({ colours, classes, state }) => {
  const window = globalThis;
  const { document } = window;
  for (const [name, colour] of Object.entries(colours)) document.documentElement.style.setProperty(`--vscode-${name}`, colour);
  document.body.classList.add(...classes.map((name) => (name.startsWith('vscode-') ? name : `vscode-${name}`)));
  if (classes.includes('high-contrast-light')) document.body.classList.add('vscode-high-contrast');
  document.body.setAttribute('role', 'document');
  window.keptState = state;
  window.timesKept = 0;
  window.postedRequests = 0;
  const keep = (kept) => {
    window.keptState = kept;
    window.timesKept += 1;
  };
  window.revived = (value) => {
    if (Array.isArray(value)) return value.map(window.revived);
    if (typeof value !== 'object' || value === null) return value;
    if ('figures' in value && Object.keys(value).length === 1) return Float64Array.from(value.figures, (figure) => figure ?? NaN);
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, window.revived(inner)]));
  };
  window.named = (selector, name) => {
    const nameOf = (element) => (element.getAttribute('aria-label') ?? element.textContent).trim();
    const all = [...document.querySelectorAll(selector)];
    const found = all.find((element) => nameOf(element) === name) ?? all.find((element) => nameOf(element).startsWith(name));
    if (found === undefined) throw new Error(`There is no ${selector} named ${name}`);
    return found;
  };
  window.entered = (field, value) => {
    field.focus();
    field.value = value;
    field.dispatchEvent(new window.Event('input', { bubbles: true }));
    field.dispatchEvent(new window.Event('change', { bubbles: true }));
  };
  window.acquireVsCodeApi = () => ({
    postMessage: (message) => {
      if (message.notice?.type === 'ready') window.isReady = true;
      if (message.kind === 'request') window.postedRequests += 1;
      window.toEditor(JSON.stringify(message, (_, value) => (value instanceof Uint8Array ? { bytes: Array.from(value) } : value)));
    },
    getState: () => window.keptState,
    setState: keep,
  });
};
