import assert from 'node:assert/strict';
import { builtRules, coverageTable } from '../../server/src/findings/coverage';
import { findingTable } from '../../server/src/findings/table';

/** Ids as the review list counts them: A01-A15, B01-B14, M01-M19, D01-D17, G01-G07, K01-K03. */
function listed(): string[] {
  const families: readonly (readonly [string, number])[] = [
    ['A', 15],
    ['B', 14],
    ['M', 19],
    ['D', 17],
    ['G', 7],
    ['K', 3],
  ];
  return families.flatMap(([family, count]) =>
    Array.from({ length: count }, (_, i) => `${family}${String(i + 1).padStart(2, '0')}`),
  );
}

describe('the review rules', () => {
  it('are all in the table, each once and in order', () => {
    assert.deepEqual(
      coverageTable().map((row) => row.rule),
      listed(),
    );
  });

  it('have a code each, or say which data they need', () => {
    for (const row of coverageTable()) assert.ok(row.codes.length > 0 || row.lacks !== null, row.rule);
  });

  it('are built for at least 55 of the 75', () => {
    assert.equal(listed().length, 75);
    assert.ok(builtRules() >= 55, `${builtRules()} built`);
  });

  it('are named by records only with ids that exist', () => {
    const known = new Set(listed());
    for (const record of findingTable.values()) {
      for (const rule of record.rules) assert.ok(known.has(rule), `${record.code} names ${rule}`);
      assert.equal(new Set(record.rules).size, record.rules.length, record.code);
    }
  });
});
