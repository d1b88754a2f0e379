#!/usr/bin/env node
// Starts program.js with the code cache that the build made beside it, so that V8 compiles nothing anew: a third of the
// time of a small evaluation. A cache of another Node is rejected by V8 and passed over; without one all is the same.
const { readFileSync } = require('node:fs');
const { createRequire, wrap } = require('node:module');
const { join } = require('node:path');
const { Script } = require('node:vm');

const file = join(__dirname, 'program.js');
let cachedData;
try {
  cachedData = readFileSync(join(__dirname, 'program.cache'));
} catch {
  cachedData = undefined;
}
const script = new Script(wrap(readFileSync(file, 'utf8')), { filename: file, cachedData });
const write = process.env.THERMOGLOSS_BUILD_CACHE;
if (write !== undefined) {
  process.on('exit', () => require('node:fs').writeFileSync(write, script.createCachedData()));
}
script.runInThisContext()(exports, createRequire(file), module, file, __dirname);
