// Type checks each compile unit, two at a time. The pure floors see neither Node's nor the browser's types.
import { spawn } from 'node:child_process';
import { createRequire } from 'node:module';
import { join } from 'node:path';

const tsc = createRequire(import.meta.url).resolve('typescript/bin/tsc');
// The largest first.
const units = [
  'tests/tsconfig.json',
  'server/tsconfig.node.json',
  'server/tsconfig.pure.json',
  'server/tsconfig.worker.json',
  'tests/page/tsconfig.json',
  'tests/editor/tsconfig.json',
  'webview/tsconfig.json',
  'client/tsconfig.json',
];
const only = process.argv.slice(2);
const wanted = units.filter((u) => only.length === 0 || only.some((o) => u.includes(o)));
let failed = false;

// What was checked is kept below out/, so that the next check looks at what changed.
function check(unit) {
  const kept = join('out', 'types', `${unit.replaceAll('/', '.')}.tsbuildinfo`);
  const options = [
    '-p',
    unit,
    '--incremental',
    '--tsBuildInfoFile',
    kept,
    ...(process.stdout.isTTY ? ['--pretty'] : []),
  ];
  const run = spawn(process.execPath, [tsc, ...options], { stdio: ['ignore', 'pipe', 'inherit'] });
  const said = [];
  run.stdout.on('data', (part) => said.push(part));
  return new Promise((resolve) => {
    run.on('close', (status) => {
      // At once, so that two do not mix.
      process.stdout.write(Buffer.concat(said));
      failed ||= status !== 0;
      resolve();
    });
  });
}

async function worker() {
  for (let unit = wanted.shift(); unit !== undefined; unit = wanted.shift()) await check(unit);
}

await Promise.all([worker(), worker()]);
process.exit(failed ? 1 : 0);
