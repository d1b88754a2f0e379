import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { RunCurves } from '../../../server/src/engine/curves/runCurves';
import { samples } from '../../../server/src/engine/curves/samples';
import { Engine } from '../../../server/src/engine/engine';
import type { Snapshot } from '../../../server/src/engine/snapshot';
import { MemoryHost } from '../../../server/src/host/memoryHost';
import { plotState, type PlotInput } from '../../../server/src/presentation/plot/plotState';
import { defaultChoices, type ViewState } from '../../../server/src/protocol/view';
import { syntheticRun } from '../../support/syntheticRun';

/** A gloss evaluated on files in memory, with the curves it was evaluated on. */
export interface Evaluated {
  readonly engine: Engine;
  readonly host: MemoryHost;
  readonly snapshot: Snapshot;
  readonly curves: RunCurves;
}

export async function evaluated(files: Readonly<Record<string, string>>, path = '/lab/a.gloss'): Promise<Evaluated> {
  const host = new MemoryHost(files, '/lab');
  const engine = new Engine(host);
  const snapshot = await engine.evaluate(path);
  const curves = engine.curvesOf(snapshot);
  assert.notEqual(curves, null, snapshot.findings.map((f) => f.message).join('\n'));
  return { engine, host, snapshot, curves: curves! };
}

export const example = (path: string): string => readFileSync(resolve('examples', path), 'utf8');

const folder = (part: string, names: readonly string[]): Record<string, string> =>
  Object.fromEntries(names.map((name) => [`${part}/${name}`, example(`${part}/${name}`)]));

/** The invented examples of the repository. */
export const limestone = (): Record<string, string> =>
  folder('limestone', [
    'vq217-1.gloss',
    'vq217-1.csv',
    'vq217-2.gloss',
    'vq217-2.csv',
    'limestone.gloss',
    ...['blank-co2-1', 'blank-co2-2'].flatMap((name) => [`${name}.gloss`, `${name}.csv`]),
  ]);

export const preform = (): Record<string, string> => folder('preform', ['pet-07.gloss', 'pet-07.txt']);

/** Two steps on one heating ramp of 10 K/min, 20 mg; computed. */
export const twoSteps = syntheticRun({
  steps: [
    { at: 300, width: 8, loss: 10 },
    { at: 600, width: 10, loss: 25 },
  ],
});

export function inputOf({ snapshot, curves }: Pick<Evaluated, 'snapshot' | 'curves'>): PlotInput {
  return {
    generation: { uri: 'file:///lab/a.gloss', version: 3, revision: 7 },
    freshness: { state: 'current', text: 'current', error: null },
    choices: defaultChoices,
    role: 'run',
    editable: true,
    snapshot,
    curves,
    uris: { gloss: 'file:///lab/a.gloss', method: 'file:///lab/m.gloss' },
    companions: [],
    overlays: [],
    against: null,
    runs: [],
    offers: [],
  };
}

export function stateOf(of: Pick<Evaluated, 'snapshot' | 'curves'>, over: Partial<PlotInput> = {}): ViewState {
  return plotState({ ...inputOf(of), ...over });
}

/** The samples a view of so many pixels would have of every curve of a state. */
export function blocksOf(
  state: ViewState,
  runs: readonly RunCurves[],
  pixels: number,
  from = -Infinity,
  to = Infinity,
): ReadonlyMap<string, readonly { readonly x: number; readonly y: number }[]> {
  const blocks = new Map<string, { x: number; y: number }[]>();
  for (const lane of state.lanes) {
    for (const { id } of lane.curves) {
      const curve = runs.map((r) => r.curve(id)).find((c) => c !== null);
      if (curve === undefined) continue;
      const { abscissa } = state.choices;
      const x = curve.drawn(abscissa)?.axis.x ?? new Float64Array(0);
      const drawn = samples(
        curve,
        abscissa,
        Math.max(from, x[0] ?? 0),
        Math.min(to, x[x.length - 1] ?? 0),
        pixels,
        lane.unit,
      );
      blocks.set(
        id,
        Array.from(drawn.x, (v, i) => ({ x: v, y: drawn.y[i] })),
      );
    }
  }
  return blocks;
}
