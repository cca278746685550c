/** Stand-in for web pages in the editor: panels that the test looks into, hides, shows, moves and closes. */
import { Disposable, EventEmitter, listening } from './events.ts';
import { Uri } from './places.ts';

export const ViewColumn = { Beside: -2, Active: -1, One: 1, Two: 2, Three: 3 } as const;

export interface PageOptions {
  readonly enableScripts?: boolean;
  readonly enableCommandUris?: boolean;
  readonly localResourceRoots?: readonly Uri[];
}

/** What stands between a panel and its page. */
export class Webview {
  options: PageOptions = {};
  readonly cspSource = 'https://page.example';
  /** All that was sent to the page, in order, as it arrives: plain data. */
  readonly sent: unknown[] = [];
  /** How many listened for the page when its text was set. */
  listenersAtHtml = 0;
  /** The page that listens, if there is one. */
  arriving: ((message: unknown) => void) | undefined;
  private text = '';
  private isDisposed = false;
  private readonly received = new EventEmitter<unknown>();
  private count = 0;
  readonly onDidReceiveMessage = (listener: (message: unknown) => void): Disposable => {
    this.count++;
    const subscription = this.received.event(listener);
    return new Disposable(() => {
      this.count--;
      subscription.dispose();
    });
  };
  get html(): string {
    return this.text;
  }
  set html(text: string) {
    this.text = text;
    this.listenersAtHtml = this.count;
  }
  asWebviewUri(uri: Uri): Uri {
    return Uri.parse(`https://page.example${uri.path}`);
  }
  postMessage(message: unknown): Promise<boolean> {
    if (this.isDisposed) throw new Error('Webview is disposed');
    this.sent.push(structuredClone(message));
    this.arriving?.(structuredClone(message));
    return Promise.resolve(true);
  }
  /** As the page says it. */
  say(message: unknown): void {
    this.received.fire(structuredClone(message));
  }
  end(): void {
    this.isDisposed = true;
    this.received.dispose();
  }
}

export class WebviewPanel {
  title: string;
  iconPath?: unknown;
  visible = true;
  active = false;
  viewColumn: number;
  readonly viewType: string;
  readonly webview = new Webview();
  private readonly disposed = new EventEmitter<void>();
  private readonly changed = new EventEmitter<unknown>();
  readonly onDidDispose = this.disposed.event;
  readonly onDidChangeViewState = this.changed.event;
  constructor(viewType: string, title: string, viewColumn: number, options: PageOptions) {
    this.viewType = viewType;
    this.title = title;
    this.viewColumn = viewColumn;
    this.webview.options = options;
    panels.push(this);
  }
  reveal(): void {
    this.turn({ visible: true });
  }
  /** Hides, shows, focuses or moves it. */
  turn(state: { readonly visible?: boolean; readonly active?: boolean; readonly viewColumn?: number }): void {
    Object.assign(this, state);
    this.changed.fire({ webviewPanel: this });
  }
  dispose(): void {
    const at = panels.indexOf(this);
    if (at < 0) return;
    panels.splice(at, 1);
    this.webview.end();
    this.disposed.fire();
    this.disposed.dispose();
    this.changed.dispose();
  }
}

/** Those that are open. */
export const panels: WebviewPanel[] = [];

export interface Serializer {
  deserializeWebviewPanel(panel: WebviewPanel, state: unknown): Promise<void>;
}

/** By the kind of panel. */
export const serializers = new Map<string, Serializer>();

export const webviews = {
  createWebviewPanel: (
    viewType: string,
    title: string,
    where: number | { readonly viewColumn: number },
    options: PageOptions = {},
  ): WebviewPanel => {
    const column = typeof where === 'number' ? where : where.viewColumn;
    return new WebviewPanel(viewType, title, column === ViewColumn.Beside ? ViewColumn.Two : column, options);
  },
  registerWebviewPanelSerializer(viewType: string, serializer: Serializer): Disposable {
    serializers.set(viewType, serializer);
    listening.count++;
    return new Disposable(() => {
      if (serializers.delete(viewType)) listening.count--;
    });
  },
};
