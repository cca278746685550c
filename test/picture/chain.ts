/** A chain of four-bars, each lever driving the next by a rod, the last one with plates and springs. */
export function chainText(loops: number): string {
  const levers = Array.from({ length: loops + 1 }, (_, i) => {
    const stops = i === loops ? '\n    stops: {closed: 0, open: 70 deg}' : '';
    return `  lever_${i}:\n    pivot: [${i * 120}, ${(i % 2) * 15}]\n    arms: {in: {radius: 40, angle: ${95 - (i % 5)}}, out: {radius: 40.5, angle: 85}}${stops}\n`;
  });
  const rods = Array.from(
    { length: loops },
    (_, i) => `  rod_${i}: {from: lever_${i}.out, to: lever_${i + 1}.in, ends: {kind: rod_end}}\n`,
  );
  return `format: 1
let: {reach: 40 mm}
levers:
${levers.join('')}pedal: {lever: lever_0, opens: clockwise, travel: 12 deg, pad: in}
rods:
${rods.join('')}plates: {bank: {lever: lever_${loops}, bore: 45 mm, shaft: 8 mm, seat: 6 deg}}
springs:
  first: {lever: lever_${loops}, rate: 2 N*mm/deg, preload: 200 N*mm}
`;
}
