/** Stand-ins for events, disposables and cancellation. */

export class Disposable {
  readonly dispose: () => void;
  constructor(dispose: () => void) {
    this.dispose = dispose;
  }
  static from(...parts: { dispose(): void }[]): Disposable {
    return new Disposable(() => parts.forEach((part) => part.dispose()));
  }
}

/** How many listeners there are, of all emitters together: what is disposed of leaves none. */
export const listening = { count: 0 };

/** What listeners threw, which the editor logs; set by a test that expects some. Else what is thrown fails the test. */
export const editorLog: { errors: unknown[] | undefined } = { errors: undefined };

export class EventEmitter<T> {
  private readonly listeners = new Set<(event: T) => void>();
  readonly event = (listener: (event: T) => void): Disposable => {
    // The same function may listen twice.
    const own = (event: T): void => listener(event);
    this.listeners.add(own);
    listening.count++;
    return new Disposable(() => {
      if (this.listeners.delete(own)) listening.count--;
    });
  };
  readonly fire = (event: T): void => {
    for (const listener of [...this.listeners]) if (this.listeners.has(listener)) this.tell(listener, event);
  };
  private tell(listener: (event: T) => void, event: T): void {
    if (editorLog.errors === undefined) return listener(event);
    try {
      listener(event);
    } catch (error) {
      editorLog.errors.push(error);
    }
  }
  readonly dispose = (): void => {
    listening.count -= this.listeners.size;
    this.listeners.clear();
  };
}

export class CancellationTokenSource {
  private readonly emitter = new EventEmitter<void>();
  readonly token = { isCancellationRequested: false, onCancellationRequested: this.emitter.event };
  cancel(): void {
    this.token.isCancellationRequested = true;
    this.emitter.fire();
  }
  dispose(): void {
    this.emitter.dispose();
  }
}
