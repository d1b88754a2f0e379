import assert from 'node:assert';
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { Engine } from '../../server/src/engine/engine';
import type { Snapshot } from '../../server/src/engine/snapshot';
import type { Result } from '../../server/src/evaluation/result';
import { NodeHost } from '../../server/src/host/nodeHost';
import { format } from '../../server/src/language/format';

const folder = resolve('examples');

interface ReactionTruth {
  readonly loss: number;
  readonly heat: number;
  readonly fastestIndicated: number;
}

interface RunTruth {
  readonly dolomite: number;
  readonly calcite: number;
  readonly moisture: number;
  readonly carbonDioxide: number;
  readonly residue: number;
  readonly reactions: Record<string, ReactionTruth>;
}

interface PreformTruth {
  readonly crystallinity: number;
  readonly glasses: Record<
    string,
    { readonly midpointIndicated: number; readonly equalAreasIndicated: number; readonly capacityChange: number }
  >;
  readonly transitions: Record<string, { readonly heat: number; readonly peakIndicated: number }>;
}

function truthOf(part: 'limestone' | 'preform'): unknown {
  return JSON.parse(readFileSync(join(folder, part, 'truth.json'), 'utf8'));
}

/** What the generator put in: data with a known answer that the evaluation does not see. */
const limestone = (truthOf('limestone') as { readonly runs: Record<string, RunTruth> }).runs;
const preform = truthOf('preform') as PreformTruth;

describe('The scenarios', () => {
  const engine = new Engine(new NodeHost(folder));
  const snapshots = new Map<string, Promise<Snapshot>>();

  function evaluated(path: string): Promise<Snapshot> {
    const known = snapshots.get(path) ?? engine.evaluate(join(folder, path));
    snapshots.set(path, known);
    return known;
  }

  function glossesIn(part: string): string[] {
    return readdirSync(join(folder, part))
      .filter((name) => name.endsWith('.gloss') && name !== 'limestone.gloss')
      .map((name) => `${part}/${name}`);
  }

  const clean = [...glossesIn('limestone'), ...glossesIn('preform')];

  it('there are eight clean glosses and eleven with a planted fault', () => {
    assert.strictEqual(clean.length, 8);
    assert.strictEqual(glossesIn('faults').length, 11);
  });

  it('every gloss is written as the formatter writes it', () => {
    for (const path of [...clean, ...glossesIn('faults'), 'limestone/limestone.gloss']) {
      const text = readFileSync(join(folder, path), 'utf8');
      assert.strictEqual(format(text), text, path);
    }
  });

  for (const path of clean) {
    it(`${path} gives no finding above a note, and none had to be allowed`, async () => {
      const { findings } = await evaluated(path);
      const loud = findings.filter((f) => f.severity !== 'note').map((f) => `${f.code}: ${f.message}`);
      assert.deepStrictEqual(loud, []);
    });

    it(`${path} meets every requirement it states`, async () => {
      const { requirements, run } = await evaluated(path);
      assert.ok(run !== null && run.points > 2000);
      assert.deepStrictEqual(
        requirements.filter((r) => r.verdict !== 'met').map((r) => r.text),
        [],
      );
      if (!path.includes('blank')) assert.ok(requirements.length > 0);
    });
  }

  for (const name of ['vq217-1', 'vq217-2', 'vq217-3']) {
    const truth = limestone[name];

    it(`${name}: the steps in carbon dioxide are right within U`, async () => {
      const { results } = await evaluated(`limestone/${name}.gloss`);
      within(results, 'Moisture.loss', truth.moisture);
      within(results, 'First.loss', truth.reactions.first.loss);
      within(results, 'Second.loss', truth.reactions.second.loss);
      within(results, 'Oxides.remaining', truth.residue);
      within(results, 'dolomite', truth.dolomite);
      within(results, 'calcite', truth.calcite);
    });

    it(`${name}: temperatures of the largest rate and the heat of the first loss are right within U`, async () => {
      const { results } = await evaluated(`limestone/${name}.gloss`);
      // The record itself, without the error of its scale: 3 K at the blunt maximum, 1 K at the sharp one.
      close(results, 'First.inflection', truth.reactions.first.fastestIndicated, 3);
      close(results, 'Second.inflection', truth.reactions.second.fastestIndicated, 1);
      within(results, 'FirstHeat.enthalpy', truth.reactions.first.heat);
    });
  }

  it('in carbon dioxide the first loss is 14.80 ± 0.10 %', async () => {
    const { results } = await evaluated('limestone/vq217-1.gloss');
    close(results, 'First.loss', 14.8, 0.1);
    assert.ok(expanded(result(results, 'First.loss')) <= 0.1);
  });

  it('in nitrogen the sum of both losses is right within U', async () => {
    const { results } = await evaluated('limestone/vq217-n2.gloss');
    const truth = limestone['vq217-n2'];
    within(results, 'Both.loss', truth.carbonDioxide + truth.reactions.illite.loss);
    within(results, 'Oxides.remaining', truth.residue);
  });

  it('in nitrogen a division at the rate minimum reads ten percent too much, and the value is apparent', async () => {
    const { results } = await evaluated('faults/split-at-rate-minimum.gloss');
    const first = result(results, 'First.loss');
    assert.ok(
      first.value !== null && first.value - limestone['vq217-n2'].reactions.first.loss > 10,
      `${String(first.value)} %`,
    );
    assert.strictEqual(first.state, 'apparent');
    assert.ok(first.reasons.some((reason) => reason.includes('boundary-not-level')));
  });

  it('a blank of nitrogen under a run in carbon dioxide leaves 0.2 % of residue too much', async () => {
    const wrong = result((await evaluated('faults/blank-of-other-gas.gloss')).results, 'Oxides.remaining');
    const right = result((await evaluated('limestone/vq217-1.gloss')).results, 'Oxides.remaining');
    // 0.085 mL · (1.799 − 1.145) mg/mL · (1 − 298/1273) = 43 µg of 20.05 mg: gas densities at 25 °C, common practice.
    const excess = wrong.value! - right.value!;
    assert.ok(Math.abs(excess - 0.21) < 0.04, `${String(excess)} %`);
  });

  it('the preform: glass transitions by both definitions', async () => {
    const { results } = await evaluated('preform/pet-07.gloss');
    close(results, 'Tg.midpoint', preform.glasses.second.midpointIndicated, 0.5);
    within(results, 'Tg.delta_cp', preform.glasses.second.capacityChange);
    close(results, 'TgReceived.midpoint', preform.glasses.first.equalAreasIndicated, 0.5);
    within(results, 'TgReceived.delta_cp', preform.glasses.first.capacityChange);
  });

  it('the preform: heats, temperatures of the peaks and crystallinity', async () => {
    const { results } = await evaluated('preform/pet-07.gloss');
    const { cold, melting, fromMelt, meltingAgain } = preform.transitions;
    for (const [name, truth] of [
      ['Cold', cold],
      ['Melting', melting],
      ['FromMelt', fromMelt],
      ['MeltingAgain', meltingAgain],
    ] as const) {
      within(results, `${name}.enthalpy`, truth.heat);
      close(results, `${name}.peak`, truth.peakIndicated, 0.3);
    }
    const crystallinity = result(results, 'crystallinity');
    const inPercent = crystallinity.unit.text === '%' ? 100 : 1;
    within(results, 'crystallinity', inPercent * preform.crystallinity);
  });

  for (const path of glossesIn('faults')) {
    it(`${path}: its fault is found, and nothing else above a note`, async () => {
      const line = /^# expects: (.+)$/m.exec(readFileSync(join(folder, path), 'utf8'));
      assert.ok(line !== null, 'the gloss names the findings it expects');
      const { findings } = await evaluated(path);
      const loud = findings.filter((f) => f.severity !== 'note');
      const found = [...new Set(loud.map((f) => f.code))].sort();
      assert.deepStrictEqual(found, line[1].split(', ').sort(), loud.map((f) => `${f.code}: ${f.message}`).join('\n'));
    });
  }
});

function result(results: readonly Result[], id: string): Result {
  const found = results.find((r) => r.id === id);
  assert.ok(found !== undefined, `there is a result ${id} among ${results.map((r) => r.id).join(' ')}`);
  return found;
}

function expanded(found: Result): number {
  assert.ok(found.uncertainty !== null, `${found.id} has an uncertainty`);
  return found.k * found.uncertainty;
}

/** The truth lies within the expanded uncertainty, and the value is an unqualified number. */
function within(results: readonly Result[], id: string, truth: number): void {
  const found = result(results, id);
  assert.strictEqual(found.state, 'number', `${id}: ${found.reasons.join(', ')}`);
  const u = expanded(found);
  const shown = `${id} = ${String(found.value)} ± ${String(u)} (U), truth ${String(truth)}`;
  assert.ok(Math.abs(found.value! - truth) <= u, shown);
}

function close(results: readonly Result[], id: string, truth: number, tolerance: number): void {
  const found = result(results, id);
  const off = Math.abs((found.value ?? NaN) - truth);
  assert.ok(off <= tolerance, `${id} = ${String(found.value)}, truth ${String(truth)} within ${String(tolerance)}`);
}
