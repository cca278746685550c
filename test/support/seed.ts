/**
 * Random tests draw the same cases on every run, so that a failure can be seen again. `FAST_CHECK_SEED` in the environment draws
 * others.
 */
import fc from 'fast-check';

fc.configureGlobal({ seed: Number(process.env.FAST_CHECK_SEED ?? 20_811) });
