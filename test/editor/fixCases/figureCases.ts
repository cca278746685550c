/**
 * A case of each fix that solves for a figure: at least one for every finding that can be mended by one, and for every kind of figure that is
 * written. The figures come from solving the same texts outside the editor; by what they are right stands in the tests of the fixes.
 */
import { figureCases, type FixCase } from './fixCase.ts';
import {
  LEVER_SHAFT,
  bank,
  banks,
  broad,
  dipping,
  fork,
  led,
  levered,
  returning,
  rocked,
  rubbing,
  rubbingTail,
  sensor,
  springs,
  tailed,
  tight,
  toggling,
  turned,
  wornOut,
  wound,
} from './linkages.ts';
import { OPENING_CASES } from './openingCases.ts';

export const FIGURE_CASES: readonly FixCase[] = [
  ...OPENING_CASES,
  ...figureCases('out-of-step', 'rear:', [
    [
      banks,
      'rods.length',
      'Solve for the length of rear_link so that both shafts rest in step',
      'Lengthen rear_link to 100 mm: front closes',
      '99.7 mm',
      '100 mm',
    ],
  ]),
  ...figureCases('plate-past-square', '', [
    [
      wound({ stops: '{open: 90 deg}', pull: '36 mm', rest: bank('1.5 deg') }),
      'levers.open',
      'Solve for the open stop of shaft so that the plates bank stand square at most',
      'Set the open stop of shaft to 82.5 deg: the plates bank stand square at most',
      '90 deg',
      '82.5 deg',
    ],
  ]),
  ...figureCases('transmission-angle', 'link:', [
    [
      levered({ travel: '90 deg' }),
      'levers.arms.angle',
      'Solve for the angle of shaft.arm so that link keeps its transmission angle',
      'Clock shaft.arm to 54.88 deg: transmission angle of link 40° at least',
      'arm: {radius: 40 mm, angle: 60 deg',
      'arm: {radius: 40 mm, angle: 54.88 deg',
    ],
    [
      levered({ lets: 'let: {clocking: 30 deg}\n', travel: '90 deg', shaft: `${LEVER_SHAFT.replace('60 deg', '2 * clocking')}}` }),
      'let',
      'Solve for `clocking` so that link keeps its transmission angle',
      'Set `clocking` to 27.44 deg: transmission angle of link 40° at least',
      '30 deg',
      '27.44 deg',
    ],
  ]),
  ...figureCases('drive-angle', 'link:', [
    [
      turned('30 deg', '40 mm', '90 deg', '40 deg'),
      'levers.arms.angle',
      'Solve for the angle of pedal.out so that link keeps its drive angle',
      'Clock pedal.out to 34.51 deg: drive angle of link 20° at least',
      '30 deg',
      '34.51 deg',
    ],
  ]),
  ...figureCases('toggle-opening', 'link:', [
    [
      toggling('66 deg'),
      'levers.arms.angle',
      'Solve for the angle of shaft.arm so that link keeps its transmission angle',
      'Clock shaft.arm to 123.63 deg: transmission angle of link 40° at least',
      '66 deg',
      '123.63 deg',
    ],
    [
      toggling('clocking', 'let: {clocking: 66 deg}\n'),
      'let',
      'Solve for `clocking` so that link keeps its transmission angle',
      'Set `clocking` to 123.63 deg: transmission angle of link 40° at least',
      '66 deg',
      '123.63 deg',
    ],
  ]),
  ...figureCases('toggle-returning', 'link:', [
    [
      turned('150 deg', '20 mm', '100 deg', '80 deg'),
      'levers.arms.angle',
      'Solve for the angle of pedal.out so that link keeps its drive angle',
      'Clock pedal.out to 97.11 deg: drive angle of link 20° at least',
      '150 deg',
      '97.11 deg',
    ],
  ]),
  ...figureCases('rod-end-tilt', 'link:', [
    [
      levered({ shaft: `${LEVER_SHAFT.replace('60 deg', '60 deg, offset: 26 mm')}}`, link: ', ends: {kind: rod_end}' }),
      'levers.arms.offset',
      'Solve for the offset of shaft.arm so that the ends of link tilt no further than they can',
      'Set the offset of shaft.arm to 21.24 mm: end tilt of link 12° at most',
      '26 mm',
      '21.24 mm',
    ],
  ]),
  ...figureCases('rod-out-of-adjustment', '', [
    [
      levered({ link: ', length: 100 mm, adjust: {min: 101 mm, max: 106 mm}' }),
      'rods.length',
      'Solve for the length of link so that link is within its adjuster',
      'Lengthen link to 101 mm: link is within its adjuster',
      '100 mm',
      '101 mm',
    ],
    [
      levered({ lets: 'let: {span: 100 mm}\n', link: ', length: span, adjust: {min: 101 mm, max: 106 mm}' }),
      'let',
      'Solve for `span` so that link is within its adjuster',
      'Set `span` to 101 mm: link is within its adjuster',
      '100 mm',
      '101 mm',
      'span, adjust',
    ],
  ]),
  ...figureCases('groove-left', '', [
    [
      wound({ drum: ', groove: 55 deg' }),
      'levers.drums.groove',
      'Solve for the groove of shaft.wheel so that the cable stays in its groove',
      'Set the groove of shaft.wheel to 80.01 deg: the cable stays in its groove',
      '55 deg',
      '80.01 deg',
    ],
  ]),
  ...figureCases('slot-run-out', '[25 mm', [
    [
      fork,
      'slots.reach',
      'Solve for the reach of pair so that the pin stays in its fork',
      'Set the reach of pair to 39.39 mm: the pin stays in its fork',
      '38 mm',
      '39.39 mm',
    ],
  ]),
  ...figureCases('sensor-past-range', '', [
    [
      sensor('30 deg'),
      'sensors.at_closed',
      'Solve for `at_closed` of tps so that tps stays within its range',
      'Turn tps on its spindle to 26.43 deg: tps turns to 110° at most',
      '30 deg',
      '26.43 deg',
    ],
    [
      sensor('place', '', 'let: {place: 30 deg}\n'),
      'let',
      'Solve for `place` so that tps stays within its range',
      'Set `place` to 26.43 deg: tps turns to 110° at most',
      '30 deg',
      '26.43 deg',
      'place, range',
    ],
  ]),
  ...figureCases('sensor-past-stop', '', [
    [
      sensor('36 deg', 'signal: [0.5 V, 4.5 V], mechanical: [-5 deg, 115 deg]'),
      'sensors.at_closed',
      'Solve for `at_closed` of tps so that tps stays off its stops',
      'Turn tps on its spindle to 26.43 deg: tps turns to 110° at most',
      '36 deg',
      '26.43 deg',
    ],
  ]),
  ...figureCases('signal-in-fault-band', '5 deg, range', [
    [
      sensor('5 deg', 'signal: [0.2 V, 4.8 V], supply: 5 V'),
      'sensors.at_closed',
      'Solve for `at_closed` of tps so that the signal of tps is never taken for a fault',
      'Turn tps on its spindle to 7.18 deg: tps gives 0.5 V at rest',
      ' 5 deg',
      ' 7.18 deg',
    ],
  ]),
  ...figureCases('slack-used-up', '1 mm}', [
    [
      tight('1 mm'),
      'cables.slack',
      'Solve for the slack of main so that main is loose at rest',
      'Raise the slack of main to 1.69 mm: main is loose at rest',
      '1 mm',
      '1.69 mm',
    ],
  ]),
  ...figureCases('slack-used-up', 'gap}', [
    [
      tight('gap', 'let: {gap: 1 mm}\n'),
      'let',
      'Solve for `gap` so that main is loose at rest',
      'Set `gap` to 1.69 mm: main is loose at rest',
      '1 mm',
      '1.69 mm',
    ],
  ]),
  ...figureCases('movement-at-rest', 'rock:', [
    [
      rocked,
      'cables.slack',
      'Solve for the slack of main so that the movement rock leaves the throttle closed',
      'Raise the slack of main to 4 mm: the movement rock leaves the throttle closed',
      'slack: 1 mm',
      'slack: 4 mm',
    ],
  ]),
  ...figureCases('closing-lost', 'shaft:', [
    [
      wornOut('0 N*mm'),
      'springs.preload',
      'Solve for the preload of first so that the springs close shaft',
      'Raise the preload of first to 40 N*mm: shaft closes with 40 N·mm or more (but then single-return-spring)',
      '0 N*mm}',
      '40 N*mm}',
    ],
    [
      wornOut('wind', 'let: {wind: 0 N*mm}\n'),
      'let',
      'Solve for `wind` so that the springs close shaft',
      'Set `wind` to 40 N*mm: shaft closes with 40 N·mm or more (but then single-return-spring)',
      '0 N*mm}',
      '40 N*mm}',
    ],
  ]),
  ...figureCases('closing-margin', 'shaft:', [
    [
      rubbing('200 N*mm', '100 N*mm'),
      'springs.preload',
      'Solve for the preload of second so that shaft closes against friction with first off',
      'Raise the preload of second to 180 N*mm: shaft closes with 2 times the friction or more with either spring off',
      '100 N*mm',
      '180 N*mm',
    ],
    [
      rubbing('200 N*mm', 'wind', 'let: {wind: 100 N*mm}\n'),
      'let',
      'Solve for `wind` so that shaft closes against friction with first off',
      'Set `wind` to 180 N*mm: shaft closes with 2 times the friction or more with either spring off',
      '100 N*mm',
      '180 N*mm',
    ],
    [
      rubbingTail('44 mm'),
      'springs.free_length',
      'Solve for the free length of tail so that shaft closes against friction with winder off',
      'Set the free length of tail to 40.69 mm: shaft closes with 2 times the friction or more with either spring off',
      '44 mm',
      '40.69 mm',
    ],
  ]),
  {
    code: 'friction-lock',
    text: rubbing('40 N*mm', '20 N*mm'),
    at: 'shaft:',
    titles: [
      'Raise the preload of first to 180 N*mm and the preload of second to 180 N*mm: shaft closes with 2 times the friction or more with either spring off',
      'Solve for the preload of first so that shaft closes against friction with second off',
    ],
    edits: [
      ['preload: 40 N*mm', 'preload: 180 N*mm'],
      ['preload: 20 N*mm', 'preload: 180 N*mm'],
    ],
    figure: 'springs.preload',
  },
  ...figureCases('spring-opens', 'first:', [
    [
      springs('-100 N*mm', '200 N*mm', '100 N*mm'),
      'springs.preload',
      'Solve for the preload of first so that first closes',
      'Raise the preload of first to 100 N*mm: first closes',
      '-100 N*mm',
      '100 N*mm',
    ],
  ]),
  ...figureCases('not-assembled', 'link:', [
    [
      levered({ link: ', length: 10 mm' }),
      'rods.length',
      'Solve for the length of link so that link reaches',
      'Lengthen link to 100 mm: link reaches',
      'length: 10 mm',
      'length: 100 mm',
    ],
  ]),
  ...figureCases('change-point', 'link:', [
    [
      levered({ travel: '150 deg' }),
      'pedal.travel',
      "Solve for the pedal's travel so that the pedal ends before the change point of link",
      "Shorten the pedal's travel to 79.99 deg: transmission angle of link 40° at least",
      '150 deg',
      '79.99 deg',
    ],
  ]),
  ...figureCases('closed-stop-passed', '0 deg} # kept', [
    [
      returning('0 deg'),
      'pedal.travel',
      "Solve for the pedal's travel so that shaft does not come back below its closed stop",
      "Shorten the pedal's travel to 29.34 deg: drive angle of link 20° at least",
      '120 deg',
      '29.34 deg',
    ],
  ]),
  ...figureCases('plate-below-seat', '1.5 deg', [
    [
      wound({ stops: '{closed: -2 deg, open: 60 deg}', pull: '26.9 mm', rest: bank('1.5 deg') }),
      'levers.closed',
      'Solve for the closed stop of shaft so that the plates bank stay off their seat',
      'Set the closed stop of shaft to 0 deg: the plates bank stay off their seat',
      '-2 deg',
      '0 deg',
    ],
  ]),
  ...figureCases('closing-dips', 'shaft:', [
    [
      dipping('50 N*mm'),
      'springs.preload',
      'Solve for the preload of third so that shaft closes nearly as hard everywhere as at rest',
      'Raise the preload of third to 911 N*mm: shaft closes with 1111 N·mm or more',
      '50 N*mm',
      '911 N*mm',
    ],
  ]),
  ...figureCases('spring-dead-centre', 'tail: {from', [
    [
      tailed.replace('[40, 0]', '[100, 60]').replace('55 mm', '40 mm'),
      'levers.arms.angle',
      'Solve for the angle of shaft.tail so that tail stays on one side of the pivot',
      'Clock shaft.tail to 185.32 deg: torque of tail 15 N·mm at least',
      '240 deg',
      '185.32 deg',
    ],
  ]),
  ...figureCases('cable-lead', 'main:', [
    [
      led('0.11'),
      'cables.enters_along',
      'Solve for `enters_along` of main so that main runs straight out of its housing',
      'Set `enters_along` of main to 0.087: lead of main 4.97° at most',
      '0.11',
      '0.087',
    ],
  ]),
  ...figureCases('spring-slack', '', [
    [
      tailed,
      'springs.free_length',
      'Solve for the free length of tail so that tail is never slack',
      'Set the free length of tail to 52.91 mm: tail is never slack',
      '55 mm',
      '52.91 mm',
    ],
  ]),
  ...figureCases('touches-keep-out', '', [
    [
      broad('44'),
      'levers.width',
      'Solve for the width of pedal so that pedal keeps clear',
      'Narrow pedal to 7.99 mm: pedal keeps clear',
      '12 mm',
      '7.99 mm',
      'pedal: {pivot',
    ],
    [
      levered({ travel: '20 deg', link: ', width: 9 mm', rest: 'keep_out: {post: {circle: [50, 28.5], radius: 2 mm}}\n' }),
      'rods.width',
      'Solve for the width of link so that link keeps clear',
      'Narrow link to 8.27 mm: link keeps clear',
      '9 mm',
      '8.27 mm',
      'link: {from',
    ],
  ]),
  ...figureCases('keep-out-clearance', '6 mm', [
    [
      broad('50', ', clearance: 6 mm'),
      'levers.width',
      'Solve for the width of pedal so that pedal keeps clear',
      'Narrow pedal to 7.99 mm: pedal keeps clear',
      '12 mm',
      '7.99 mm',
    ],
  ]),
];
