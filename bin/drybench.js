#!/usr/bin/env node
import { setFlagsFromString } from 'node:v8';
import { run } from '../dist/program/cli.js';

// Some versions of Node compile functions for speed after so few turns that a command of half a second spends a third of it
// compiling. Each has its own word for waiting longer, and complains of the others'.
const patience = { 11.3: '--interrupt-budget=1000000', 12.4: '--invocation-count-for-turbofan=20000' };
const flag = patience[process.versions.v8.split('.', 2).join('.')];
if (flag !== undefined) setFlagsFromString(flag);

process.exitCode = await run(process.argv.slice(2));
