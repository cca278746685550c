/**
 * What a host has for a thread of its own. A web host has the first three, one that runs in Node the module; each is looked for before it is
 * used. Declared here so that nothing else of either is seen.
 */
declare const Worker:
  | (new (address: string) => {
      onmessage: ((event: { readonly data: unknown }) => void) | null;
      onerror: ((event: { readonly message?: string }) => void) | null;
      postMessage(message: unknown): void;
      terminate(): void;
    })
  | undefined;

/** A file in memory. */
interface Blob {
  readonly type: string;
}

declare const Blob: new (parts: readonly string[], options: Blob) => Blob;

declare const URL: { createObjectURL(blob: Blob): string; revokeObjectURL(address: string): void };

declare module 'node:worker_threads' {
  export class Worker {
    constructor(code: string, options: { readonly eval: true });
    on(event: 'message', listener: (message: unknown) => void): this;
    on(event: 'error', listener: (error: unknown) => void): this;
    on(event: 'exit', listener: () => void): this;
    postMessage(message: unknown): void;
    terminate(): Promise<number>;
    unref(): void;
  }
}
