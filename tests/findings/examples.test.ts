import assert from 'node:assert/strict';
import type { FindingExample, FindingRecord } from '../../server/src/findings/record';
import { findingTable } from '../../server/src/findings/table';
import { resolveProgram } from '../../server/src/language/meaning/resolveProgram';
import { parse } from '../../server/src/language/syntax/parse';
import { parseUnit } from '../../server/src/quantities/parseUnit';

/** What the method of an example holds, where its words say that it holds something. */
const methods: Readonly<Record<string, string>> = {
  'given-missing': 'method "M"\ngiven polymer in %',
  'override-of-nothing': 'method "M"\nstep First 640..800 °C',
  'override-without-reason': 'method "M"\nstep First 640..800 °C',
};

function codesOf(record: FindingRecord, example: FindingExample): string[] {
  const tree = parse(example.gloss);
  const method = methods[record.code];
  const program = resolveProgram(tree, method === undefined ? null : parse(method));
  return [...tree.findings, ...program.findings].map((f) => f.code);
}

const records = [...findingTable.values()];
const ofText = records.filter(
  (r) => ['syntax', 'names', 'units'].includes(r.family) || r.code === 'allow-not-possible',
);
const ofData = records.filter((r) => !ofText.includes(r));

describe('the examples of the findings', () => {
  for (const record of ofText) {
    it(`show ${record.code} and a near miss`, () => {
      assert.ok(codesOf(record, record.fires).includes(record.code), codesOf(record, record.fires).join(', '));
      assert.ok(!codesOf(record, record.silent).includes(record.code));
    });
  }

  it('are glosses without another fault where data decide', () => {
    for (const record of ofData) {
      for (const example of [record.fires, record.silent]) {
        const others = codesOf(record, example).filter((c) => c !== record.code && c !== 'confusing-name');
        assert.deepEqual(others, [], `${record.code}: ${example.gloss}`);
      }
    }
  });

  it('print limits in units of the language', () => {
    for (const record of records) {
      for (const { unit } of record.limits) assert.ok(unit === '' || parseUnit(unit).ok, `${record.code}: ${unit}`);
    }
  });

  it('set each settable limit by a rule that has no fault of its own', () => {
    for (const record of records.filter((r) => r.limits.length > 0)) {
      const { value, unit } = record.limits[0];
      const tree = parse(`run "a.csv"\nrule ${record.code} ${value} ${unit} because "local experience"`);
      const codes = [...tree.findings, ...resolveProgram(tree, null).findings].map((f) => `${f.code}: ${f.message}`);
      assert.deepEqual(codes, [], record.code);
    }
  });
});
