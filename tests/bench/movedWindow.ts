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
  let edge = 195;
  const move = async (): Promise<void> => {
    edge += 0.25;
    const snapshot = await engine.evaluate(
      '/lab/a.gloss',
      `run "a.csv"\n  mass 20.000 ± 0.010 mg\nstep First ${edge}..420 °C\nstep Second 480..750 °C\nresidue Rest at 950 °C\nlet share = First.loss / Second.loss\n`,
    );
    assert.ok(snapshot.results.some((r) => r.id === 'First.loss' && r.state === 'number'));
  };
  const cold = await time(move);
  const warm = await time(move, 60, 0);
  return [
    { name: '200,000 rows, median of 15 after 3', value: cold.median, unit: 'ms', limit: null, note: '' },
    { name: '200,000 rows, 95th percentile of the 60 moves after', value: warm.p95, unit: 'ms', limit: 8, note: '' },
  ];
}
