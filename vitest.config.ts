import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { defineConfig } from 'vitest/config';

const long = process.env['DRYBENCH_LONG'] === '1';

export default defineConfig({
  test: {
    include: long ? ['tests/**/*.test.ts', 'tests/**/*.long.ts'] : ['tests/**/*.test.ts'],
    reporters: ['default', './tests/support/count-reporter.ts'],
    // Against what hangs, not what is slow: a busy machine takes many times as long as an idle one.
    testTimeout: long ? 3_600_000 : 300_000,
    // What commands remember of the shops of tests is not the user's.
    env: { TZ: 'Pacific/Auckland', XDG_CACHE_HOME: join(tmpdir(), 'drybench-tests') },
  },
});
