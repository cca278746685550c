/** The text of a linkage with many loops: parallel cranks of one radius in a row, each turned by the one before through a rod. */
export function longChain(loops: number): string {
  const levers = Array.from({ length: loops + 1 }, (_, index) => {
    const stops = index === loops ? ', stops: {closed: 0 deg}' : '';
    return `  crank_${index}: {pivot: [${30 * index}, 0], arms: {out: {radius: 20 mm, angle: 120 deg}}${stops}}`;
  });
  const rods = Array.from({ length: loops }, (_, index) => `  rod_${index}: {from: crank_${index}.out, to: crank_${index + 1}.out}`);
  return [
    'format: 1',
    'levers:',
    ...levers,
    'pedal: {lever: crank_0, opens: clockwise, travel: 40 deg, pad: out}',
    'rods:',
    ...rods,
    'plates:',
    `  bank: {lever: crank_${loops}, count: 2, bore: 40 mm, shaft: 8 mm, seat: 6 deg, idle: 1.5 deg}`,
    '',
  ].join('\n');
}
