import { instances } from './instances.ts';

/** The measurements there are: one file each. */
const measurements: Readonly<Record<string, { use: string; run: (words: readonly string[]) => void }>> = {
  instances: { use: 'instances DIR --seconds 10 --out OUT   published instances (.sch, .sm) in DIR', run: instances },
};

const [name, ...words] = process.argv.slice(2);
const chosen = name === undefined ? undefined : measurements[name];
if (chosen === undefined) {
  process.stdout.write('What to measure:\n');
  for (const { use } of Object.values(measurements)) process.stdout.write(`  ${use}\n`);
  process.exitCode = name === undefined ? 0 : 2;
} else chosen.run(words);
