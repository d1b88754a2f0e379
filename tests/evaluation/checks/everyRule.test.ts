import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { findingTable } from '../../../server/src/findings/table';

/** Codes of review rules found while a text or a file is read; their examples run with those. */
const elsewhere = new Set([
  'decimal-comma',
  'quantity-missing',
  'wrong-dimension',
  'basis-mixed',
  'column-unclear',
  'cell-not-a-number',
  // Against a record, each change in tests/approval/changes.test.ts.
  'approval-broken',
  'approved-result-moved',
]);

describe('every code of a review rule', () => {
  const folder = join('tests', 'evaluation', 'checks');
  const texts = readdirSync(folder)
    .filter((name) => name.endsWith('.test.ts') && name !== 'everyRule.test.ts')
    .map((name) => readFileSync(join(folder, name), 'utf8'));
  const text = texts.join('\n').replace(/\s+/g, ' ');
  // A call ends at the first closing bracket and semicolon; the code is one of its arguments.
  const named = (call: string, code: string) =>
    [...text.matchAll(new RegExp(`\\b${call}\\((?:(?!\\b(?:fires|silent)\\().)*?'${code}'`, 'g'))].length > 0;

  for (const record of findingTable.values()) {
    if (record.rules.length === 0 || elsewhere.has(record.code)) continue;
    it(`${record.code} (${record.rules.join(', ')}) has a case that fires and a near miss`, () => {
      assert.ok(named('fires', record.code), 'nothing makes it fire');
      assert.ok(named('silent', record.code), 'nothing shows that it stays silent');
    });
  }
});
