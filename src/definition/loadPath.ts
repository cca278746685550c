/**
 * The load path: the tree from the pedal to everything that it moves.
 *
 * Levers are its nodes; rods, cables, slots and couplings its branches, each from the lever that drives to the
 * lever that is driven. A lever has one driver. The order is that of a walk from the pedal: each joint is followed
 * by the lever it drives and by all that hangs on that lever, and where a lever drives several things they come in
 * file order.
 */
import type { Definition, Lever } from './definition.ts';
import type { Problem } from './problem.ts';
import type { Span } from './span.ts';

/** What joins two levers. */
export type JointKind = 'rod' | 'cable' | 'slot' | 'coupling';

/** One joint of the path and the lever that it drives. */
export interface LoadStep {
  readonly joint: { readonly kind: JointKind; readonly name: string };
  /** Undefined where the pedal itself is the cable. */
  readonly from: string | undefined;
  readonly to: string;
}

/** The tree of all that the pedal moves, in the order of a walk. */
export interface LoadPath {
  readonly root: { readonly kind: 'lever'; readonly lever: string } | { readonly kind: 'cable'; readonly cable: string };
  /** Each lever that moves stands once as `to`, after the step that drives its `from`. */
  readonly steps: readonly LoadStep[];
}

/** Levers that a joint which could not be read may drive; `any` where its driven end is not known. */
export type Suspects = ReadonlySet<string> | 'any';

/** The path as far as it stands, and what is wrong with it. */
export interface LoadPathReading {
  /** Undefined where there is no pedal. */
  readonly path: LoadPath | undefined;
  readonly problems: readonly Problem[];
  /** Levers of which it is told that nothing drives them, and those behind them. */
  readonly undriven: readonly string[];
}

/** @param suspects of these it is not said that nothing drives them. */
export function findLoadPath(definition: Definition, suspects: Suspects = new Set()): LoadPathReading {
  const problems: Problem[] = [];
  const joints = jointsOf(definition);
  const outgoing = groupBy(joints, (joint) => joint.from);
  const drivers = new Map<string, Joint>();
  const steps: LoadStep[] = [];
  const spare: { readonly joint: Joint; readonly loops: boolean }[] = [];
  const root = rootOf(definition);

  const place = (joint: Joint): void => {
    drivers.set(joint.to, joint);
    steps.push({ joint: { kind: joint.kind, name: joint.name }, from: joint.from, to: joint.to });
  };

  /** A walk in depth without recursion: a file may chain thousands of levers. */
  const walk = (start: string): void => {
    const open = new Set([start]);
    const frames = [{ lever: start, next: 0 }];
    for (let frame = frames.at(-1); frame !== undefined; frame = frames.at(-1)) {
      const joint = outgoing.get(frame.lever)?.[frame.next++];
      if (joint === undefined) {
        open.delete(frame.lever);
        frames.pop();
      } else if (open.has(joint.to) || drivers.has(joint.to)) {
        spare.push({ joint, loops: open.has(joint.to) });
      } else {
        place(joint);
        open.add(joint.to);
        frames.push({ lever: joint.to, next: 0 });
      }
    }
  };

  const first = root?.kind === 'cable' ? joints.find((joint) => joint.kind === 'cable' && joint.name === root.cable) : undefined;
  if (first !== undefined) {
    place(first);
    walk(first.to);
  }
  if (root?.kind === 'lever') walk(root.lever);
  const moving = new Set(drivers.keys());
  if (root?.kind === 'lever') moving.add(root.lever);

  for (const { joint, loops } of spare)
    problems.push(loops ? loopProblem(cycleThrough(joint, drivers)) : twiceProblem(joint, drivers, definition));
  problems.push(...standingProblems(definition, joints, drivers, moving));
  const heads = root === undefined || suspects === 'any' ? [] : headsOf(definition, joints, drivers, moving, suspects);
  problems.push(...heads.map((head) => notDriven(head, platesOn(definition, behind([head], outgoing, moving)))));
  return { path: root === undefined ? undefined : { root, steps }, problems, undriven: [...behind(heads, outgoing, moving)] };
}

interface Joint {
  readonly kind: JointKind;
  readonly name: string;
  readonly from: string | undefined;
  readonly to: string;
  readonly span: Span;
  /** Where the driven end is named. */
  readonly toSpan: Span;
  /** How to let the driven end drive, where the file's words for it are known. */
  readonly reversal?: { readonly text: string; readonly replacements: Problem['replacements'] };
}

function jointsOf({ rods, cables, slots, couplings }: Definition): readonly Joint[] {
  const joints: Joint[] = [];
  for (const { name, span, from, to } of cables)
    joints.push({ kind: 'cable', name, from: from?.lever, to: to.lever, span, toSpan: to.span });
  for (const { name, span, from, to } of rods) {
    const text = `Exchange \`from\` and \`to\` of \`${name}\``;
    const replacements = [
      { span: from.span, text: `${to.lever}.${to.part}` },
      { span: to.span, text: `${from.lever}.${from.part}` },
    ];
    joints.push({ kind: 'rod', name, from: from.lever, to: to.lever, span, toSpan: to.span, reversal: { text, replacements } });
  }
  for (const { name, span, pin, fork, drives } of slots) {
    const reversal = { text: `Write \`drives: ${drives === 'fork' ? 'pin' : 'fork'}\` in \`${name}\``, replacements: undefined };
    if (drives === 'fork') joints.push({ kind: 'slot', name, from: pin.lever, to: fork.name, span, toSpan: fork.span, reversal });
    else joints.push({ kind: 'slot', name, from: fork.name, to: pin.lever, span, toSpan: pin.span, reversal });
  }
  for (const { name, span, from, to } of couplings)
    joints.push({ kind: 'coupling', name, from: from.name, to: to.name, span, toSpan: to.span });
  return joints.sort((a, b) => a.span.start - b.span.start);
}

function rootOf({ pedal }: Definition): LoadPath['root'] | undefined {
  if (pedal === undefined) return undefined;
  return pedal.kind === 'lever' ? { kind: 'lever', lever: pedal.lever.name } : { kind: 'cable', cable: pedal.cable.name };
}

/** Loops and second drivers among what the pedal does not reach, whose joints are put among the drivers. */
function standingProblems(
  definition: Definition,
  joints: readonly Joint[],
  drivers: Map<string, Joint>,
  moving: ReadonlySet<string>,
): Problem[] {
  const problems: Problem[] = [];
  const standing = joints.filter((joint) => joint.from !== undefined && !moving.has(joint.from));
  for (const joint of standing) {
    if (!moving.has(joint.to)) {
      if (drivers.has(joint.to)) problems.push(twiceProblem(joint, drivers, definition));
      else drivers.set(joint.to, joint);
    }
  }
  for (const joint of standing) {
    if (!moving.has(joint.to)) continue;
    problems.push(twiceProblem(joint, drivers, definition, isReversible(joint, drivers)));
  }
  const settled = new Set<string>(moving);
  for (const lever of definition.levers) {
    const cycle = unsettledCycle(lever.name, drivers, settled);
    if (cycle.length > 0) problems.push(loopProblem(cycle));
  }
  return problems;
}

/** Whether a joint to a lever that moves stands at a lever that nothing drives: it is told to let its ends change places. */
function isReversible({ from }: Joint, drivers: ReadonlyMap<string, Joint>): boolean {
  return from !== undefined && !drivers.has(from);
}

/** Levers that nothing drives, in the order of the file, without those of which another problem says so. */
function headsOf(
  definition: Definition,
  joints: readonly Joint[],
  drivers: ReadonlyMap<string, Joint>,
  moving: ReadonlySet<string>,
  suspects: ReadonlySet<string>,
): readonly Lever[] {
  const reversible = new Set(
    joints.flatMap((joint) => {
      const isTold = joint.reversal !== undefined && moving.has(joint.to) && isReversible(joint, drivers);
      return isTold && joint.from !== undefined && !moving.has(joint.from) ? [joint.from] : [];
    }),
  );
  return definition.levers.filter(({ name }) => [moving, drivers, suspects, reversible].every((known) => !known.has(name)));
}

/** The levers and all that their joints drive, from lever to lever, and that stands still with them. */
function behind(
  heads: readonly Lever[],
  outgoing: ReadonlyMap<string | undefined, readonly Joint[]>,
  moving: ReadonlySet<string>,
): ReadonlySet<string> {
  const found = new Set(heads.map(({ name }) => name));
  // A set hands out what is put in on the way, too.
  for (const lever of found) for (const { to } of outgoing.get(lever) ?? []) if (!moving.has(to)) found.add(to);
  return found;
}

/** Names of the plates that some levers carry. */
function platesOn({ plates }: Definition, levers: ReadonlySet<string>): readonly string[] {
  return plates.filter(({ lever }) => levers.has(lever.name)).map(({ name }) => name);
}

/** @param plates that stand still with it: an engine without air, and so an error */
function notDriven({ name, nameSpan }: Lever, plates: readonly string[]): Problem {
  const never = plates.length === 0 ? '' : `, and the plates ${plates.map((each) => `\`${each}\``).join(', ')} never open`;
  return {
    code: 'not-driven',
    severity: plates.length === 0 ? 'warning' : 'error',
    span: nameSpan,
    message: `Nothing drives \`${name}\`, so it stands still${never}`,
    cure: 'Join it to a lever that moves, with a rod, cable, slot or coupling whose driven end it is',
  };
}

/** The loop that the drivers of a lever run into, if they do and it is not told yet; marks all that it passes as settled. */
function unsettledCycle(start: string, drivers: ReadonlyMap<string, Joint>, settled: Set<string>): Joint[] {
  const trail: Joint[] = [];
  const seen = new Map<string, number>();
  for (let lever: string | undefined = start; lever !== undefined && !settled.has(lever);) {
    const at = seen.get(lever);
    if (at !== undefined) {
      for (const name of seen.keys()) settled.add(name);
      return trail.slice(at).reverse();
    }
    seen.set(lever, trail.length);
    const driver = drivers.get(lever);
    if (driver === undefined) break;
    trail.push(driver);
    lever = driver.from;
  }
  for (const name of seen.keys()) settled.add(name);
  return [];
}

/** The joints of the loop that `joint` closes, from the lever it returns to. */
function cycleThrough(joint: Joint, drivers: ReadonlyMap<string, Joint>): Joint[] {
  const cycle = [joint];
  for (let lever = joint.from; lever !== undefined && lever !== joint.to;) {
    const driver = drivers.get(lever);
    if (driver === undefined) break;
    cycle.push(driver);
    lever = driver.from;
  }
  return cycle.reverse();
}

const LEVERS_SHOWN = 8;

function loopProblem(cycle: readonly Joint[]): Problem {
  const last = cycle.reduce((a, b) => (b.span.start > a.span.start ? b : a));
  const names = cycle.map((joint) => joint.to);
  const levers = [names.at(-1) ?? '', ...names];
  const shown = levers.length > LEVERS_SHOWN ? [...levers.slice(0, LEVERS_SHOWN - 1), '…', levers.at(-1) ?? ''] : levers;
  return {
    code: 'load-path-loop',
    severity: 'error',
    span: last.toSpan,
    message: `The load path runs in a loop: ${shown.map((lever) => (lever === '…' ? lever : `\`${lever}\``)).join(' → ')}`,
    cure: `Remove one joint of the loop, or turn one round; the path leads from the pedal to each lever once`,
    related: cycle
      .filter((joint) => joint !== last)
      .slice(0, LEVERS_SHOWN)
      .map((joint) => ({ span: joint.toSpan, message: `\`${joint.name}\` drives \`${joint.to}\`` })),
  };
}

function twiceProblem(joint: Joint, drivers: ReadonlyMap<string, Joint>, definition: Definition, mayReverse = false): Problem {
  const other = drivers.get(joint.to);
  const foot = definition.pedal?.kind === 'lever' ? definition.pedal.lever : undefined;
  const first =
    other !== undefined ? { name: `\`${other.name}\``, span: other.toSpan } : { name: 'the foot', span: foot?.span ?? joint.toSpan };
  const reversal = mayReverse ? joint.reversal : undefined;
  const cure =
    reversal === undefined
      ? 'Remove one of the two, or let one of them drive another lever'
      : `${reversal.text}, so that \`${joint.to}\` drives \`${joint.from ?? ''}\``;
  return {
    code: 'driven-twice',
    severity: 'error',
    span: joint.toSpan,
    message: `\`${joint.name}\` drives \`${joint.to}\`, which ${first.name} drives already`,
    cure,
    ...(reversal?.replacements === undefined ? {} : { replacements: reversal.replacements }),
    related: [{ span: first.span, message: `${capital(first.name)} drives it here` }],
  };
}

function capital(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}

function groupBy(joints: readonly Joint[], key: (joint: Joint) => string | undefined): ReadonlyMap<string, readonly Joint[]> {
  const groups = new Map<string, Joint[]>();
  for (const joint of joints) {
    const name = key(joint);
    if (name === undefined) continue;
    const group = groups.get(name);
    if (group === undefined) groups.set(name, [joint]);
    else group.push(joint);
  }
  return groups;
}
