import { strict as assert } from 'node:assert';
import { MemoryHost } from '../../server/src/host/memoryHost';
import type { SignalName } from '../../server/src/language/model';
import { detectAll, type ReadingChoices } from '../../server/src/runs/reading/choices';
import { readRun } from '../../server/src/runs/reading/readRun';
import type { RawRun, ReadingProblem } from '../../server/src/runs/run';

/** Reads a text as the file `run.csv` of a host in memory; fails the test where it is refused. */
export async function readText(content: string | Uint8Array, choices: Partial<ReadingChoices> = {}): Promise<RawRun> {
  const read = await readRun(new MemoryHost({ 'run.csv': content }), '/lab/run.csv', { ...detectAll, ...choices });
  assert.ok(read.ok, read.ok ? '' : JSON.stringify(read.failure));
  return read.value;
}

/** The problem of a text that must be refused. */
export async function refusedText(content: string, choices: Partial<ReadingChoices> = {}): Promise<ReadingProblem> {
  const read = await readRun(new MemoryHost({ 'run.csv': content }), '/lab/run.csv', { ...detectAll, ...choices });
  assert.ok(!read.ok, 'this must not be read');
  return read.failure;
}

export function signals(run: RawRun): string[] {
  return run.columns.map(({ signal, unit }) => `${signal} ${unit}`);
}

export function values(run: RawRun, signal: SignalName): number[] {
  const column = run.columns.find((candidate) => candidate.signal === signal);
  assert.ok(column, `no ${signal}`);
  return [...column.values];
}
