/** The planar four-bar as the textbooks treat it: class, positions, limits, sensitivities and synthesis. Pure functions on four lengths. */
export * from './branch.ts';
export * from './classify.ts';
export * from './fourBar.ts';
export * from './freudenstein.ts';
export * from './functionGenerator.ts';
export * from './limits.ts';
export * from './position.ts';
export * from './sensitivities.ts';
