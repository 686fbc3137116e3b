// Writes the manual page for `man drybench`, from what `--help` shows.
import { readFileSync, writeFileSync } from 'node:fs';
import { manualPage } from '../dist/commands/manual.js';

const { version } = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8'));
writeFileSync(new URL('../dist/drybench.1', import.meta.url), manualPage(version));
