#!/usr/bin/env node
import { createRequire } from 'node:module';
import { setFlagsFromString } from 'node:v8';

// Some versions of Node compile functions for speed after so few turns that a command of half a second spends a third of it
// compiling. Each has its own word for waiting longer, and complains of the others'.
const patience = { 11.3: '--interrupt-budget=1000000', 12.4: '--invocation-count-for-turbofan=20000' };
const flag = patience[process.versions.v8.split('.', 2).join('.')];
if (flag !== undefined) setFlagsFromString(flag);

// An import of CommonJS would first look through its text for what it exports.
const { start } = createRequire(import.meta.url)('../dist/program/start.js');

process.exitCode = await start(process.argv.slice(2));
