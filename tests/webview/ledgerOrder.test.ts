import assert from 'node:assert/strict';
import type { LedgerRow } from '../../server/src/protocol/view';
import { atPoint, cellText, ledgerOrder } from '../../webview/src/state/ledgerOrder';

const row = (id: string, number: number | null, more: Partial<LedgerRow> = {}): LedgerRow => ({
  id,
  statement: `step ${id.split('.')[0]}`,
  name: id.split('.')[0],
  kind: 'step',
  quantity: id.split('.')[1] ?? '',
  value: number === null ? '' : `${number} %`,
  number,
  unit: '%',
  basis: '',
  state: '',
  since: '',
  sinceMoved: false,
  limit: '',
  verdict: null,
  severity: null,
  main: true,
  details: [],
  ...more,
});
const rows = [
  row('B.loss', 14.8),
  row('B.start', 725, { main: false }),
  row('A10.loss', 0.4),
  row('A2.loss', null),
  row('A2.end', 29.7),
];
const ids = (sort: Parameters<typeof ledgerOrder>[1], all = true): string[] =>
  ledgerOrder(rows, sort, all).shown.map((s) => s.row.id);

describe('the rows of the ledger', () => {
  it('stand as they are written, each name once', () => {
    const { shown } = ledgerOrder(rows, null, true);
    assert.deepEqual(
      shown.map((s) => s.row.id),
      rows.map((r) => r.id),
    );
    assert.deepEqual(
      shown.map((s) => s.isFirst),
      [true, false, true, true, false],
    );
  });

  it('hide what is not a main quantity, and tell how many', () => {
    const { shown, hidden } = ledgerOrder(rows, null, false);
    assert.equal(hidden, 1);
    assert.ok(shown.every((s) => s.row.main));
  });

  it('sort by number, those without one last either way', () => {
    assert.deepEqual(ids({ column: 'value', down: false }), ['A10.loss', 'B.loss', 'A2.end', 'B.start', 'A2.loss']);
    assert.deepEqual(ids({ column: 'value', down: true }), ['B.start', 'A2.end', 'B.loss', 'A10.loss', 'A2.loss']);
  });

  it('sort names as people count, and keep a statement together', () => {
    assert.deepEqual(ids({ column: 'name', down: false }), ['A2.loss', 'A2.end', 'A10.loss', 'B.loss', 'B.start']);
  });

  it('keep their order where a column says nothing', () => {
    assert.deepEqual(
      ids({ column: 'limit', down: true }),
      rows.map((r) => r.id),
    );
    assert.equal(cellText(rows[0], 'constructor'), '');
  });

  it('line up at the decimal point', () => {
    assert.deepEqual(atPoint('14.793 ± 0.026 %'), ['14', '.793 ± 0.026 %']);
    assert.deepEqual(atPoint('-0.0057 ± 0.0096 %/min'), ['-0', '.0057 ± 0.0096 %/min']);
    assert.deepEqual(atPoint('< 0.04 %'), ['< 0', '.04 %']);
    assert.deepEqual(atPoint('failed'), ['', 'failed']);
  });
});
