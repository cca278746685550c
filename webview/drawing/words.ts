/** Every word of the drawing that does not come from the editor; the page hands them on with its own. */
import type { DrawnSpring } from '../../src/protocol/picture.ts';
import type { ViewDirection } from '../state.ts';

const VIEWS = {
  front: { name: 'Front', title: 'Seen against z' },
  top: { name: 'Top', title: 'Seen from above, against y' },
  side: { name: 'Side', title: 'Seen from the right, against x' },
} satisfies Record<ViewDirection, { readonly name: string; readonly title: string }>;

export const DRAWING_WORDS = {
  // The sheet and its buttons
  noDrawing: 'Drawing of the linkage',
  sheet:
    'Linkage. Tab goes to its parts and to its handles; arrows move the drawing, + and − zoom, 0 shows all, e the engine side, f the chosen part, n names all',
  views: VIEWS,
  viewGroup: 'View',
  lookGroup: 'Look',
  names: 'Names',
  namesTitle: 'Names of all parts (n)',
  fit: 'Fit',
  fitTitle: 'Show all (0)',
  engine: 'Engine',
  engineTitle: 'Show the engine side: the levers with plates and what drives them (e)',
  smaller: 'Smaller',
  smallerTitle: 'Smaller (−)',
  larger: 'Larger',
  largerTitle: 'Larger (+)',
  fileTitle: 'Linkage',
  scale: (length: number) => `${length} mm`,

  // The drawing in words
  counted: {
    levers: ['lever', 'levers'],
    cables: ['cable', 'cables'],
    rods: ['rod', 'rods'],
    slots: ['slot', 'slots'],
    couplings: ['coupling', 'couplings'],
    plates: ['plate', 'plates'],
    sensors: ['sensor', 'sensors'],
    springs: ['spring', 'springs'],
    keepOuts: ['keep-out', 'keep-outs'],
  },
  toScale: (direction: ViewDirection, there: readonly string[]) =>
    `${VIEWS[direction].name} view to scale: ${there.length === 0 ? 'nothing to draw yet' : there.join(', ')}.`,
  atTravel: (travel: string, levers: readonly string[], plates: readonly string[]) =>
    `At ${travel} of pedal travel: ${levers.length === 0 ? 'nothing moves' : levers.join(', ')}${plates.length === 0 ? '' : `; ${plates.join(', ')}`}.`,
  opened: (lever: string, opening: string) => `${lever} opened ${opening}`,
  noPosition: (name: string) => `${name} has no position`,
  platesNamed: (name: string, count: number) => (count === 1 ? `plate ${name}` : `plates ${name}`),
  platesClosed: (plates: string) => `${plates} closed`,
  platesOpen: (plates: string, opening: string, full: string) => `${plates} open by ${opening} of ${full}`,
  platesFull: (plates: string, opening: string) => `${plates} fully open at ${opening}`,
  platesBelow: (plates: string, by: string) => `${plates} ${by} below closed`,
  platesCount: (count: number) => `${count} ×`,
  namesWithoutRoom: (count: number) => `${count} ${count === 1 ? 'name has' : 'names have'} no room: enlarge, or point at the part`,
  nameAndCount: (name: string, count: number) => `${name}, ${count} ×`,
  andMore: (more: number) => ` and ${more} more`,
  stands: (names: string, count: number, where: string) => `${names} ${count === 1 ? 'stands' : 'stand'} ${where}`,
  part: (kind: string, name: string) => (name === kind ? name : `${kind} ${name}`),
  gapAt: (gap: string, travel: string) => `${gap} at ${travel}`,
  dimensions: (name: string, dimensions: readonly string[]) => `${name}: ${dimensions.join(', ')}`,
  asDrawn: 'as drawn: no position at any travel',
  asAt: (travel: string) => `as at ${travel}: no position here`,

  // Handles
  move: (label: string) => `Move ${label}`,
  holding: (label: string) => `Holding ${label}: arrows move it, Enter writes it, Escape lets go`,
  holdingHint: 'Arrows move it, Enter writes it, Escape lets go',
  takeHint: 'Drag it, or press Enter and move it with the arrows',
  placedAt: (label: string, place: string) => `${label} at ${place}`,
  follows: (lets: readonly string[]) => `Follows from ${lets.join(', ')}`,
  whatChanges: (label: string) => `${label}: what is to change?`,
  change: 'Change',
  leave: 'Leave as it was',

  // What is schematic
  noteOf: (part: string, note: string) => `${part}: ${note}`,
  housingNote: 'The run of the housing is schematic.',
  couplingNote: 'How the two shafts are coupled is not drawn.',
  slotNote: 'The breadth of the slot is schematic.',
  sensorNote: 'The arc is schematic: the middle of the electrical range is drawn upwards.',
  torsionNote: 'A torsion spring; its turns and size are schematic.',
  springNote: (kind: Exclude<DrawnSpring['form']['kind'], 'torsion'>) =>
    `${kind === 'extension' ? 'An extension' : 'A compression'} spring, as long as drawn; its turns and breadth are schematic.`,
  platesNote: (count: number) =>
    `${count === 1 ? 'One bore' : `One of ${count} bores`}, in section and drawn upright: the file does not say which way the bores point.`,
} as const;
