// Writes the manual page for `man drybench`, from what `--help` shows; beside it the same in Spanish.
import { readFileSync, writeFileSync } from 'node:fs';
import { manualPage } from '../dist/commands/manual.js';
import { spanish } from '../dist/words/spanish.js';
import { speak } from '../dist/words/worded.js';

const { version } = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8'));
writeFileSync(new URL('../dist/drybench.1', import.meta.url), manualPage(version));
speak(spanish);
writeFileSync(new URL('../dist/drybench.es.1', import.meta.url), manualPage(version));
