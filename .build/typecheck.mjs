// Type checks each compile unit. The pure floors see neither Node's nor the browser's types.
import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';

const tsc = createRequire(import.meta.url).resolve('typescript/bin/tsc');
const units = [
  'server/tsconfig.pure.json',
  'server/tsconfig.node.json',
  'server/tsconfig.worker.json',
  'client/tsconfig.json',
  'webview/tsconfig.json',
  'tests/tsconfig.json',
  'tests/editor/tsconfig.json',
  'tests/page/tsconfig.json',
];
const only = process.argv.slice(2);
let failed = false;
for (const unit of units.filter((u) => only.length === 0 || only.some((o) => u.includes(o)))) {
  const run = spawnSync(process.execPath, [tsc, '-p', unit], { stdio: 'inherit' });
  failed ||= run.status !== 0;
}
process.exit(failed ? 1 : 0);
