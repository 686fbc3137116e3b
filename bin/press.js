// Reads the shipped recipes and materials once, at build time, so that no command has to.
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { press } from '../dist/files/press.js';
import { pressedFile } from '../dist/files/shipped.js';

writeFileSync(pressedFile, JSON.stringify(press(fileURLToPath(new URL('..', import.meta.url)))));
