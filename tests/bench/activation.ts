import { strict as assert } from 'node:assert';
import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import { summary, type BenchRow } from './harness';

/**
 * Loads the bundled client and activates it in a process of its own, as an extension host does once a session. The editor
 * is a stand-in that answers every call with another stand-in: what the client itself does is measured, the start of the
 * server's process included, not how long the editor takes to hear of it.
 */
const script = `
const { join } = require('node:path');
const Module = require('node:module');
const standIn = () => new Proxy(function () {}, {
  get: (_, name) => name === Symbol.toPrimitive ? () => '' : name === Symbol.iterator ? function* () {} :
    name === 'then' ? undefined : name === 'textDocuments' || name === 'visibleTextEditors' || name === 'all' ? [] :
    name === 'fsPath' ? ${JSON.stringify(resolve('dist', 'server.js'))} : standIn(),
  set: () => true,
  apply: () => standIn(),
  construct: () => standIn(),
});
const load = Module._load;
Module._load = (name, ...rest) => name === 'vscode' ? standIn() : load(name, ...rest);
const start = performance.now();
const { activate } = require(${JSON.stringify(resolve('dist', 'client.js'))});
const loaded = performance.now();
activate({ extensionUri: standIn(), subscriptions: [], workspaceState: standIn(), globalState: standIn(), extensionMode: 1 });
const end = performance.now();
process.stdout.write(JSON.stringify({ load: loaded - start, call: end - loaded }));
process.exit();
`;

/** The time until the editor may go on after it has woken the extension. */
export function activation(): Promise<readonly BenchRow[]> {
  const times: number[] = [];
  for (let i = 0; i < 20; i++) {
    const run = spawnSync(process.execPath, ['-e', script], { encoding: 'utf8' });
    assert.equal(run.status, 0, run.stderr);
    const { load, call } = JSON.parse(run.stdout) as { load: number; call: number };
    times.push(load + call);
  }
  const { median, p95 } = summary(times);
  const note = `median ${median.toFixed(0)} ms; the editor's side is a stand-in`;
  return Promise.resolve([{ name: 'the client loaded and activated, p95', value: p95, unit: 'ms', limit: 100, note }]);
}
