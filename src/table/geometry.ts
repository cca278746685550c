/** Moved to `src/kinematics/poseGeometry.ts`. */
export * from '../kinematics/poseGeometry.ts';
