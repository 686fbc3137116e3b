import { configureGlobal } from 'fast-check';

// Every property is tried with the same values on every run, so that a failure is there again on the next; fast-check
// reports seed and path beside the counterexample. `DRYBENCH_SEED=7 npm test` tries others. A property may name its own seed.

const seed = Number(process.env['DRYBENCH_SEED'] ?? 20270111);
if (!Number.isSafeInteger(seed)) throw new Error('DRYBENCH_SEED is not a whole number');

configureGlobal({ seed });

export { default } from 'fast-check';
