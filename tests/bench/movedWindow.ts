import { strict as assert } from 'node:assert';
import { Engine } from '../../server/src/engine/engine';
import { MemoryHost } from '../../server/src/host/memoryHost';
import { syntheticRun } from '../support/syntheticRun';
import { time, type BenchRow } from './harness';

/** One edge of one window moves, as while typing or dragging: complete results with uncertainty, edges and findings. */
export async function movedWindow(): Promise<readonly BenchRow[]> {
  const data = syntheticRun({
    every: 5820 / 199_999,
    steps: [
      { at: 300, width: 8, loss: 10 },
      { at: 600, width: 10, loss: 25 },
    ],
  });
  const engine = new Engine(new MemoryHost({ 'a.csv': data }, '/lab'));
  let moves = 0;
  const move = async (): Promise<void> => {
    // Each edge of both windows in turn, never back to a place already evaluated.
    const edges = [200, 420, 480, 750].map((edge, k) => edge - 0.25 * Math.floor((moves + k) / 4));
    moves++;
    const snapshot = await engine.evaluate(
      '/lab/a.gloss',
      `run "a.csv"\n  mass 20.000 ± 0.010 mg\nstep First ${edges[0]}..${edges[1]} °C\nstep Second ${edges[2]}..${edges[3]} °C\nresidue Rest at 950 °C\nlet share = First.loss / Second.loss\n`,
    );
    for (const id of ['First.loss', 'First.inflection', 'Second.loss', 'Rest.remaining', 'share']) {
      const result = snapshot.results.find((r) => r.id === id);
      assert.ok(result !== undefined && result.value !== null && (result.uncertainty ?? 0) > 0, id);
    }
    assert.ok(snapshot.findings.length > 0);
  };
  const first = await time(move);
  const later = await time(move, 60, 0);
  const name = '200,000 rows';
  return [
    { name: `${name}, median of 15 after 3`, value: first.median, unit: 'ms', limit: null, note: '' },
    { name: `${name}, 95th percentile of 15 after 3`, value: first.p95, unit: 'ms', limit: 8, note: '' },
    { name: `${name}, 95th percentile of the 60 after`, value: later.p95, unit: 'ms', limit: 8, note: '' },
  ];
}
