/** Stand-in for the test view: items as they stand, and for each run what was told of it in order. */
import { CancellationTokenSource } from './events.ts';
import type { Location, Range, Uri } from './places.ts';

export class TestItemCollection {
  private readonly items = new Map<string, TestItem>();
  private readonly owner: TestItem | undefined;
  constructor(owner?: TestItem) {
    this.owner = owner;
  }
  get size(): number {
    return this.items.size;
  }
  get(id: string): TestItem | undefined {
    return this.items.get(id);
  }
  add(item: TestItem): void {
    item.parent = this.owner;
    this.items.set(item.id, item);
  }
  delete(id: string): void {
    this.items.delete(id);
  }
  replace(items: readonly TestItem[]): void {
    if (new Set(items.map(({ id }) => id)).size < items.length) throw new Error('two items of one id');
    this.items.clear();
    items.forEach((item) => this.add(item));
  }
  [Symbol.iterator](): IterableIterator<[string, TestItem]> {
    return this.items.entries();
  }
}

export class TestItem {
  parent: TestItem | undefined;
  canResolveChildren = false;
  range?: Range;
  error?: string;
  description?: string;
  sortText?: string;
  readonly children = new TestItemCollection(this);
  readonly id: string;
  label: string;
  readonly uri: Uri | undefined;
  constructor(id: string, label: string, uri?: Uri) {
    this.id = id;
    this.label = label;
    this.uri = uri;
  }
}

export class TestMessage {
  expectedOutput?: string;
  actualOutput?: string;
  location?: Location;
  readonly message: string;
  constructor(message: string) {
    this.message = message;
  }
  static diff(message: string, expected: string, actual: string): TestMessage {
    const made = new TestMessage(message);
    made.expectedOutput = expected;
    made.actualOutput = actual;
    return made;
  }
}

export class TestRunRequest {
  readonly include: readonly TestItem[] | undefined;
  readonly exclude: readonly TestItem[] | undefined;
  readonly profile: TestRunProfile | undefined;
  readonly continuous: boolean | undefined;
  constructor(include?: readonly TestItem[], exclude?: readonly TestItem[], profile?: TestRunProfile, continuous?: boolean) {
    this.include = include;
    this.exclude = exclude;
    this.profile = profile;
    this.continuous = continuous;
  }
}

export const TestRunProfileKind = { Run: 1 } as const;

export interface TestRunProfile {
  readonly label: string;
  readonly isDefault: boolean;
  readonly supportsContinuousRun: boolean;
  readonly runHandler: (request: TestRunRequest, token: CancellationTokenSource['token']) => Promise<void>;
}

/** A run: `told` holds each word and the label of what it was about, `enqueued opens fully`; the last one is `end`. */
export interface TestRun {
  readonly request: TestRunRequest;
  readonly source: CancellationTokenSource;
  readonly told: string[];
  readonly output: string[];
  readonly messages: Map<string, TestMessage>;
}

/** All runs, in order. */
export const testRuns: TestRun[] = [];

export interface TestController {
  readonly id: string;
  readonly items: TestItemCollection;
  readonly profiles: TestRunProfile[];
  resolveHandler?: (item?: TestItem) => Promise<void>;
  refreshHandler?: (token: CancellationTokenSource['token']) => Promise<void>;
}

/** Those that live, by id. */
export const testControllers = new Map<string, TestController>();

export const tests = {
  createTestController(id: string): TestController {
    if (testControllers.has(id)) throw new Error(`${id} was created twice`);
    const profiles: TestRunProfile[] = [];
    const controller = {
      id,
      items: new TestItemCollection(),
      profiles,
      createTestItem: (itemId: string, label: string, uri?: Uri) => new TestItem(itemId, label, uri),
      createRunProfile(
        label: string,
        _kind: number,
        runHandler: TestRunProfile['runHandler'],
        isDefault = false,
        _tag?: unknown,
        supportsContinuousRun = false,
      ) {
        profiles.push({ label, isDefault, runHandler, supportsContinuousRun });
      },
      createTestRun: startRun,
      dispose: () => testControllers.delete(id),
    };
    testControllers.set(id, controller);
    return controller;
  },
};

function startRun(request: TestRunRequest) {
  const source = new CancellationTokenSource();
  const told: string[] = [];
  const output: string[] = [];
  const messages = new Map<string, TestMessage>();
  testRuns.push({ request, source, told, output, messages });
  const tell = (word: string) => (item: TestItem, message?: unknown) => {
    if (told.includes('end')) throw new Error(`${word} after the end`);
    told.push(`${word} ${item.label}`);
    if (message instanceof TestMessage) messages.set(item.label, message);
  };
  return {
    token: source.token,
    enqueued: tell('enqueued'),
    started: tell('started'),
    skipped: tell('skipped'),
    passed: tell('passed'),
    failed: tell('failed'),
    errored: tell('errored'),
    appendOutput: (text: string) => output.push(text),
    end: () => told.push('end'),
  };
}

/** Runs what the view would run, and gives the run that came of it. */
export async function runInView(
  controller: TestController,
  request: TestRunRequest,
  source = new CancellationTokenSource(),
): Promise<TestRun> {
  const before = testRuns.length;
  await controller.profiles[0]?.runHandler(request, source.token);
  const run = testRuns[before];
  if (run === undefined) throw new Error('nothing was run');
  return run;
}
