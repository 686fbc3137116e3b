#!/usr/bin/env node
// CommonJS: Node starts it without its loader of ES modules, which takes longer than all that stands here.
const { setFlagsFromString } = require('node:v8');

// Node keeps its own modules compiled, but takes that only while its flags are as they were: what every command needs of them
// is loaded before any is set.
for (const module of ['module', 'vm', 'crypto', 'process']) require(`node:${module}`);
void process.stdout;

// Some versions of Node compile functions for speed after so few turns that a command of half a second spends a third of it
// compiling. Each has its own word for waiting longer, and complains of the others'.
const patience = { 11.3: '--interrupt-budget=1000000', 12.4: '--invocation-count-for-turbofan=20000' };
const flag = patience[process.versions.v8.split('.', 2).join('.')];
if (flag !== undefined) setFlagsFromString(flag);

const { start } = require('../dist/program/start.js');

start(process.argv.slice(2)).then((code) => {
  process.exitCode = code;
});
