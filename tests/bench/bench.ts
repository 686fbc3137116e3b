import { instances } from './instances.ts';
import { shops } from './shops.ts';
import { speed } from './speed.ts';

/** The measurements there are: one file each. */
const measurements: Readonly<Record<string, { use: string; run: (words: readonly string[]) => void }>> = {
  speed: { use: 'speed [--runs 7]                       whole processes beside a node that does nothing', run: speed },
  shops: {
    use: 'shops [SIZE...] [--all] [--seed 7] [--for SECONDS]   generated shops of 10 to 300 (--all: 1000) pieces',
    run: shops,
  },
  instances: { use: 'instances DIR --seconds 10 --out OUT   published instances (.sch, .sm) in DIR', run: instances },
};

const [name, ...words] = process.argv.slice(2);
const chosen = name === undefined ? undefined : measurements[name];
if (name === undefined) {
  speed([]);
  process.stdout.write('\n');
  shops(['10', '30']);
} else if (chosen === undefined) {
  process.stdout.write('What to measure (without a word: speed, then shops 10 30):\n');
  for (const { use } of Object.values(measurements)) process.stdout.write(`  ${use}\n`);
  process.exitCode = name === '--help' ? 0 : 2;
} else chosen.run(words);
