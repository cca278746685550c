/** What tests in a browser use of a page; Playwright's own types are fetched with it, and stand in no package here. */
export interface Page {
  goto(url: string): Promise<unknown>;
  evaluate<Result>(run: string): Promise<Result>;
  route(url: string, answer: (route: Route) => Promise<void>): Promise<void>;
  exposeFunction(name: string, call: (text: string) => void): Promise<void>;
  on(event: 'pageerror', heard: (error: Error) => void): void;
  on(event: 'console', heard: (message: { type(): string; text(): string }) => void): void;
  setViewportSize(size: Size): Promise<void>;
  emulateMedia(media: { readonly reducedMotion?: 'reduce' | 'no-preference' }): Promise<void>;
  screenshot(options: { readonly path?: string; readonly fullPage?: boolean }): Promise<Uint8Array>;
  bringToFront(): Promise<void>;
  context(): { newCDPSession(page: Page): Promise<DevTools> };
  readonly keyboard: {
    press(key: string): Promise<void>;
    type(text: string): Promise<void>;
    down(key: string): Promise<void>;
    up(key: string): Promise<void>;
  };
  readonly mouse: {
    move(x: number, y: number, options?: { readonly steps?: number }): Promise<void>;
    down(): Promise<void>;
    up(): Promise<void>;
    click(x: number, y: number): Promise<void>;
    wheel(deltaX: number, deltaY: number): Promise<void>;
  };
}

/** Chromium's protocol for developer tools: https://chromedevtools.github.io/devtools-protocol/ */
export interface DevTools {
  send(method: string, given?: object): Promise<unknown>;
  on<Event>(event: string, heard: (event: Event) => void): void;
  off<Event>(event: string, heard: (event: Event) => void): void;
  once<Event>(event: string, heard: (event: Event) => void): void;
}

export interface Route {
  request(): { url(): string };
  fulfill(answer: { readonly status?: number; readonly contentType?: string; readonly body?: string }): Promise<void>;
}

interface Size {
  readonly width: number;
  readonly height: number;
}

export function requireChromium(): string;

export function openPage(size?: Size): Promise<{ readonly page: Page; readonly close: () => Promise<void> }>;
