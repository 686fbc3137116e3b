#!/usr/bin/env node
import { setFlagsFromString } from 'node:v8';
import { run } from '../dist/program/cli.js';

// Node 20 compiles functions for speed after so few turns that a command of half a second spends a third of it compiling.
// Later ones wait by themselves, and do not know the flag.
if (process.versions.v8.startsWith('11.3.')) setFlagsFromString('--interrupt-budget=1000000');

process.exitCode = await run(process.argv.slice(2));
