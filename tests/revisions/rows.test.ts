import assert from 'node:assert/strict';
import { toleranceOf } from '../../server/src/cli/diff';
import { BadUsage } from '../../server/src/cli/exitCodes';
import type { ComparedGloss, ComparedRequirement, ComparedResult } from '../../server/src/presentation/diff/compared';
import { glossOf } from '../../server/src/presentation/diff/saved';
import type { DiffRow } from '../../server/src/presentation/diff/model';
import { diffRows, verdictRows } from '../../server/src/presentation/diff/rows';
import { approvalTolerance, defaultTolerance } from '../../server/src/presentation/diff/tolerance';

const one: ComparedResult = {
  id: 'A.loss',
  name: 'A',
  kind: 'step',
  quantity: 'loss',
  state: 'number',
  value: 10,
  uncertainty: 0.03,
  unit: '%',
  limit: null,
  basis: 'initial mass',
  segment: 'heating 1',
  window: { from: 100, to: 200, unit: '°C', rule: null },
  reasons: [],
  main: true,
  line: 1,
};
const altered = (changed: Partial<ComparedResult>): ComparedResult => ({ ...one, ...changed });

function side(
  results: readonly ComparedResult[],
  meanings: Readonly<Record<string, string>> = {},
  requirements: readonly ComparedRequirement[] = [],
): ComparedGloss {
  return {
    gloss: 'a.gloss',
    program: '1',
    results,
    requirements,
    run: null,
    inputs: [],
    meanings: new Map(Object.entries(meanings)),
    failure: null,
  };
}

const row = (a: Partial<ComparedResult>, b: Partial<ComparedResult>, tolerance = defaultTolerance): DiffRow =>
  diffRows(side([altered(a)]), side([altered(b)]), tolerance)[0];

describe('rows of a comparison', () => {
  it('a move of up to a twentieth of the combined uncertainty is within tolerance, more is a change', () => {
    // √(0.03² + 0.04²) = 0.05; a twentieth of it is 0.0025.
    assert.equal(row({}, { value: 10.0024, uncertainty: 0.04 }).status, 'within tolerance');
    assert.equal(row({}, { value: 10.0026, uncertainty: 0.04 }).status, 'changed');
    assert.equal(row({}, {}).status, 'equal');
  });

  it('from and to zero there is a difference but no relative one from zero', () => {
    const from = row({ value: 0 }, { value: 1 });
    assert.deepEqual([from.difference, from.relative, from.status], [1, null, 'changed']);
    const to = row({ value: 1 }, { value: 0 });
    assert.deepEqual([to.difference, to.relative, to.status], [-1, -1, 'changed']);
    assert.equal(row({ value: 0, uncertainty: 0 }, { value: 0, uncertainty: 0 }).status, 'equal');
    assert.equal(row({ value: 0 }, { value: -0 }).status, 'equal');
  });

  it('tiny values are not hidden by an absolute floor, their last bits are', () => {
    const exact = { uncertainty: 0 };
    assert.equal(row({ value: 1e-12, ...exact }, { value: 2e-12, ...exact }).status, 'changed');
    assert.equal(row({ value: 1e-12, ...exact }, { value: 1e-12 * (1 + 1e-10), ...exact }).status, 'within tolerance');
  });

  it('a change of sign is a difference through zero, relative to the size before', () => {
    const r = row({ value: -2 }, { value: 2 });
    assert.deepEqual([r.difference, r.relative, r.status], [4, 2, 'changed']);
  });

  it('an unknown uncertainty leaves the floors alone', () => {
    const unknown = { uncertainty: null };
    assert.equal(row(unknown, { ...unknown, value: 10.000001 }).status, 'changed');
    assert.equal(row(unknown, { ...unknown, value: 10.000001 }).uncertainty, null);
  });

  it('what is no longer detected, or is detected now, has changed; the same limit has not', () => {
    const none = { state: 'not-detected' as const, value: null, uncertainty: null, limit: 0.05 };
    assert.deepEqual(
      [row({}, none).status, row({}, none).remark],
      ['changed', '10 % before, not detected (< 0.05 %) now'],
    );
    assert.equal(row(none, {}).status, 'changed');
    assert.equal(row(none, none).status, 'equal');
    assert.equal(row(none, { ...none, limit: 0.1 }).status, 'changed');
  });

  it('a detection limit may follow the noise by a tenth between sides of equal rank, and not where it was approved', () => {
    const none = { state: 'not-detected' as const, value: null, uncertainty: null, limit: 0.05 };
    const limited = (limit: number | null, tolerance = approvalTolerance): string =>
      row(none, { ...none, limit }, tolerance).status;
    assert.equal(limited(0.054, defaultTolerance), 'equal');
    assert.equal(limited(0.054), 'changed');
    assert.equal(limited(null), 'changed');
    assert.equal(limited(0.05 * (1 + 5e-10)), 'equal');
    assert.equal(limited(0.05 * (1 + 5e-9)), 'changed');
  });

  it('an uncertainty alone makes a change of what was approved, in any unit, and none between sides of equal rank', () => {
    const wider = { uncertainty: 0.6 };
    assert.equal(row({}, wider).status, 'equal');
    const approved = row({}, wider, approvalTolerance);
    assert.deepEqual([approved.status, approved.remark], ['changed', 'its standard uncertainty was 0.03 %, is 0.6 %']);
    const grams = { unit: 'g', value: 0.002, uncertainty: 0.0001, basis: null };
    const milligrams = { unit: 'mg', value: 2, uncertainty: 0.1, basis: null };
    assert.equal(row(grams, milligrams, approvalTolerance).remark, null);
  });

  it('milligrams and grams are compared in the new unit, milligrams and percent are not', () => {
    const mass = row(
      { unit: 'mg', value: 2, basis: null },
      { unit: 'g', value: 0.002, uncertainty: 3e-5, basis: null },
    );
    assert.ok(Math.abs(mass.difference!) < 1e-15 && mass.status !== 'changed');
    const share = row({ unit: 'mg' }, {});
    assert.deepEqual([share.status, share.difference, share.remark], ['changed', null, 'unit changed from mg to %']);
  });

  it('another basis is a change even of the same number', () => {
    const r = row({}, { basis: 'dry mass' });
    assert.deepEqual([r.status, r.remark], ['changed', 'basis changed from initial mass to dry mass']);
  });

  it('what came, went or failed says so', () => {
    assert.equal(diffRows(side([]), side([one]), defaultTolerance)[0].status, 'added');
    assert.equal(diffRows(side([one]), side([]), defaultTolerance)[0].status, 'removed');
    const failed = { state: 'failed' as const, value: null, uncertainty: null, reasons: ['no-data (A)'] };
    assert.deepEqual([row({}, failed).status, row({}, failed).remark], ['cannot compute', 'failed now: no-data (A)']);
    assert.deepEqual([row(failed, {}).status, row(failed, {}).remark], ['changed', 'failed before: no-data (A)']);
    assert.equal(row(failed, failed).status, 'equal');
  });

  it('a number that JSON cannot hold is read from a saved file as no value, never as NaN', () => {
    const saved = (value: unknown): ComparedGloss =>
      glossOf({ schema: 'thermogloss-results/1', gloss: 'a.gloss', results: [{ ...one, value }], requirements: [] })!;
    for (const value of [NaN, Infinity, 'NaN', null]) {
      const [r] = diffRows(saved(value), side([one]), defaultTolerance);
      assert.deepEqual([r.status, r.difference], ['changed', null], String(value));
    }
  });

  it('statements match by name, then by meaning, then by the overlap of their windows', () => {
    const named = (name: string, from: number, to: number): ComparedResult =>
      altered({ id: `${name}.loss`, name, window: { from, to, unit: '°C', rule: null } });
    const was = (a: ComparedGloss, b: ComparedGloss): (string | null)[] =>
      diffRows(a, b, defaultTolerance).map((r) => (r.status === 'added' ? 'added' : r.was));
    assert.deepEqual(was(side([named('A', 100, 200)]), side([named('A', 500, 600)])), [null]);
    const meaning = 'step around 300 °C';
    assert.deepEqual(was(side([named('A', 100, 200)], { A: meaning }), side([named('B', 500, 600)], { B: meaning })), [
      'A.loss',
    ]);
    assert.deepEqual(was(side([named('A', 100, 200)]), side([named('B', 110, 200)])), ['A.loss']);
    assert.equal(was(side([named('A', 100, 200)]), side([named('B', 180, 300)]))[0], 'added');
  });

  it('requirements match by name, then by left side and operator', () => {
    const asked = (text: string, asks: string, name: string | null = null): ComparedRequirement => ({
      asks,
      name,
      text,
      verdict: 'met',
      value: 10,
      uncertainty: 0,
      unit: '%',
      line: 1,
    });
    const rows = verdictRows(
      side([], {}, [asked('x <= 5 %', 'x <='), asked('x >= 1 %', 'x >=')]),
      side([], {}, [asked('x >= 2 %', 'x >='), asked('x <= 5 %', 'x <=')]),
    );
    assert.deepEqual(
      rows.map((r) => [r.label, r.status, r.limitChanged]),
      [
        ['x >=', 'changed', true],
        ['x <=', 'equal', false],
      ],
    );
  });
});

describe('--tolerance', () => {
  it('takes floors by id or quantity and a bare fraction', () => {
    const t = toleranceOf('loss=0.02, A.start=0.5,0.2');
    assert.equal(t.fraction, 0.2);
    assert.deepEqual(
      [...t.floors],
      [
        ['loss', 0.02],
        ['A.start', 0.5],
      ],
    );
    assert.equal(row({}, { value: 10.019 }, toleranceOf('loss=0.02')).status, 'within tolerance');
    assert.equal(row({}, { value: 10.021 }, toleranceOf('loss=0.02')).status, 'changed');
    assert.equal(row({}, { value: 10.019 }, toleranceOf('loss=0.02,A.loss=0.01')).status, 'changed');
  });

  it('refuses what is no number of at least zero', () => {
    for (const text of ['', 'loss=', 'loss=-1', 'loss=NaN', 'much', 'loss=1,', '=1', 'a=1=2', 'loss=Infinity']) {
      assert.throws(() => toleranceOf(text), BadUsage, text);
    }
  });
});
