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
    for (const listener of [...this.listeners]) if (this.listeners.has(listener)) listener(event);
  };
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
