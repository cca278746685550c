/** Guards of the picture: not the shape alone, but that its series are of one length and that what it points at is there. */
import {
  and,
  either,
  isCount,
  isFiniteNumber,
  isFraction,
  isPair,
  isSeries,
  isText,
  isTriple,
  isTurningPoint,
  isYesOrNo,
  listOf,
  oneOf,
  optional,
  shape,
  tagged,
} from './guard.ts';
import type {
  DrawnCable,
  DrawnCoupling,
  DrawnDrum,
  DrawnGap,
  DrawnKeepOut,
  DrawnLever,
  DrawnPlates,
  DrawnRod,
  DrawnSensor,
  DrawnSlot,
  DrawnSpring,
  Handle,
  HousingEnd,
  PedalScale,
  Picture,
  PinPlace,
} from './picture.ts';
import type { PartKey } from './report.ts';
import { isPart } from './reportGuards.ts';

const isTwoParts = (value: unknown): value is readonly [PartKey, PartKey] =>
  Array.isArray(value) && value.length === 2 && value.every(isPart);

const isPin = shape<PinPlace>({ lever: isCount, at: isTurningPoint });

const isPedal = shape<PedalScale>({
  padTravel: optional(isFiniteNumber),
  padIs: oneOf('pad', 'cable'),
  lever: optional(isCount),
  pad: optional(isTurningPoint),
  lastSolved: optional(isFraction),
});

const isDrum = shape<DrawnDrum>({
  name: isText,
  form: tagged<DrawnDrum['form'], 'kind'>('kind', {
    round: shape({ radius: isFiniteNumber }),
    profile: shape({ rim: listOf(isTurningPoint) }),
  }),
  mark: isTurningPoint,
});

const isLever = shape<DrawnLever>({
  name: isText,
  pivot: isTriple,
  axis: isTriple,
  rotation: isSeries,
  sense: oneOf(1, -1),
  isDriven: isYesOrNo,
  arms: listOf(shape({ name: isText, at: isTurningPoint })),
  drums: listOf(isDrum),
  outline: listOf(isTurningPoint),
  width: optional(isFiniteNumber),
  stops: shape({ closed: optional(isFiniteNumber), open: optional(isFiniteNumber) }),
});

const isRod = shape<DrawnRod>({ name: isText, from: isPin, to: isPin, width: optional(isFiniteNumber) });

const isHousingEnd = shape<HousingEnd>({
  housing: isTriple,
  along: optional(isTriple),
  inner: tagged<HousingEnd['inner'], 'kind'>('kind', { pin: isPin, drum: shape({ lever: isCount, drum: isText, rim: isSeries }) }),
});

const isCable = shape<DrawnCable>({
  name: isText,
  leaves: optional(isHousingEnd),
  enters: isHousingEnd,
  slack: isSeries,
  stretch: isSeries,
});

const isSlot = shape<DrawnSlot>({
  name: isText,
  pin: isPin,
  fork: shape({ lever: isCount, from: isTurningPoint, to: isTurningPoint }),
});

const isCoupling = shape<DrawnCoupling>({ name: isText, from: isCount, to: isCount, ratio: isFiniteNumber });

const isPlates = shape<DrawnPlates>({
  name: isText,
  lever: isCount,
  count: isCount,
  bore: isFiniteNumber,
  shaft: isFiniteNumber,
  drawnAngle: isFiniteNumber,
  seat: isFiniteNumber,
});

const isSensor = shape<DrawnSensor>({ name: isText, lever: isCount, angle: isSeries, range: isPair });

const isStretched = shape({ from: either(isTriple, isPin), to: isPin });
const isSpring = shape<DrawnSpring>({
  name: isText,
  form: tagged<DrawnSpring['form'], 'kind'>('kind', {
    torsion: shape({ lever: isCount }),
    extension: isStretched,
    compression: isStretched,
  }),
});

const isKeepOut = shape<DrawnKeepOut>({
  name: isText,
  shape: tagged<DrawnKeepOut['shape'], 'kind'>('kind', {
    circle: shape({ centre: isTriple, radius: isFiniteNumber }),
    polygon: shape({ corners: listOf(isTriple) }),
  }),
  clearance: isFiniteNumber,
});

const isGap = shape<DrawnGap>({
  between: isTwoParts,
  from: isTriple,
  to: isTriple,
  gap: isFiniteNumber,
  text: isText,
  clearance: isFiniteNumber,
  travel: isFraction,
});

const isHandle = shape<Handle>({
  path: isText,
  label: isText,
  kind: oneOf('pivot', 'pin', 'housing', 'anchor'),
  at: either(isTriple, isPin),
  lets: listOf(isText),
});

/** A picture whose series have a figure for each station and whose indices point at levers that are there. */
export const isPicture = and(
  shape<Picture>({
    stations: isSeries,
    pedal: isPedal,
    isPlanar: isYesOrNo,
    levers: listOf(isLever),
    rods: listOf(isRod),
    cables: listOf(isCable),
    slots: listOf(isSlot),
    couplings: listOf(isCoupling),
    plates: listOf(isPlates),
    sensors: listOf(isSensor),
    springs: listOf(isSpring),
    keepOuts: listOf(isKeepOut),
    gaps: listOf(isGap),
    handles: listOf(isHandle),
  }),
  (picture) => isScale(picture.stations) && seriesOf(picture) && leversOf(picture).every((index) => index < picture.levers.length),
);

/** At least two, rising, from 0 to 1. */
function isScale(stations: Float64Array): boolean {
  const last = stations.length - 1;
  return last > 0 && stations[0] === 0 && stations[last] === 1 && stations.every((at, index) => index === 0 || at > stations[index - 1]!);
}

function seriesOf({ stations, levers, cables, sensors }: Picture): boolean {
  const ends = endsOf(cables);
  const single = [
    ...levers.map(({ rotation }) => rotation),
    ...cables.flatMap(({ slack, stretch }) => [slack, stretch]),
    ...sensors.map(({ angle }) => angle),
  ];
  return (
    single.every(({ length }) => length === stations.length) &&
    ends.every(({ inner }) => inner.kind === 'pin' || inner.rim.length === 3 * stations.length)
  );
}

function leversOf(picture: Picture): number[] {
  const { pedal, rods, cables, slots, couplings, plates, sensors, springs, handles } = picture;
  return [
    ...(pedal.lever === undefined ? [] : [pedal.lever]),
    ...rods.flatMap(({ from, to }) => [from.lever, to.lever]),
    ...endsOf(cables).map(({ inner }) => inner.lever),
    ...slots.flatMap(({ pin, fork }) => [pin.lever, fork.lever]),
    ...couplings.flatMap(({ from, to }) => [from, to]),
    ...[...plates, ...sensors].map(({ lever }) => lever),
    ...springs.flatMap(({ form }) => (form.kind === 'torsion' ? [form.lever] : [...standsOn(form.from), form.to.lever])),
    ...handles.flatMap(({ at }) => standsOn(at)),
  ];
}

const endsOf = (cables: readonly DrawnCable[]) =>
  cables.flatMap(({ leaves, enters }) => (leaves === undefined ? [enters] : [leaves, enters]));

const standsOn = (place: Handle['at']) => ('lever' in place ? [place.lever] : []);
