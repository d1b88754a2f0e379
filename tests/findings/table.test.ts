import assert from 'node:assert/strict';
import { codes } from '../../server/src/findings/codes';
import { makeFinding } from '../../server/src/findings/makeFinding';
import { explanationText } from '../../server/src/findings/page';
import { findingTable, fixedLimit, isFindingCode, findingRecord, settableLimit } from '../../server/src/findings/table';

const records = [...findingTable.values()];

describe('the table of findings', () => {
  it('has exactly one record for every code, in the order of the codes', () => {
    assert.deepEqual([...findingTable.keys()], [...codes]);
    assert.equal(new Set(codes).size, codes.length);
  });

  it('writes codes the way the grammar reads them', () => {
    for (const code of codes) assert.match(code, /^[a-z0-9]+(-[a-z0-9]+)*$/);
  });

  it('lets syntax, names and units never be allowed, and everything about the measurement always', () => {
    for (const record of records) {
      const fixed = ['syntax', 'names', 'units', 'approval'].includes(record.family);
      assert.equal(record.allowable, !fixed, record.code);
    }
  });

  // Severities and effects of the language's own table (language.md, section 5): E error, W warning, N note; `!` fails,
  // `~` apparent. The codes of the review list that the language does not name are checked in the coverage test.
  const table: Readonly<Record<string, readonly [severity: string, effect: string | null]>> = {
    'unknown-statement later-word clause-twice': ['error', null],
    'unknown-name cycle given-missing override-of-nothing': ['error', 'fails'],
    'confusing-name': ['note', null],
    'unit-missing basis-mixed bad-formula': ['error', 'fails'],
    'file-missing file-outside-workspace column-unclear signal-missing': ['error', 'fails'],
    'signal-saturated': ['error', 'apparent'],
    'time-not-increasing temperature-reverses gap-in-data mass-mismatch': ['warning', 'apparent'],
    'cell-not-a-number already-smoothed content-twice mass-missing join-mismatch programme-mismatch': ['warning', null],
    'window-empty window-outside-run window-ambiguous-segment segment-missing around-not-found': ['error', 'fails'],
    'window-crosses-segments window-edge-sensitive': ['error', 'apparent'],
    'window-overlap around-same-effect window-edge-not-level window-in-transient': ['warning', 'apparent'],
    'window-near-gas-switch too-few-points': ['warning', 'apparent'],
    'direction-not-declared blank-twice': ['error', 'fails'],
    'blank-mismatch blank-undescribed': ['warning', 'apparent'],
    'crucible-too-hot crucible-incompatible outside-calibration': ['warning', null],
    'calibration-not-stated compatibility-not-assessed caution-energetic caution-cryogenic': ['note', null],
    'below-noise': ['note', null],
    'boundary-not-level two-rate-maxima residue-changing': ['warning', 'apparent'],
    'baseline-crosses-curve': ['error', 'apparent'],
    'mass-balance baseline-matters smoothing-too-wide regain-on-cooling relaxation-overshoot': ['warning', null],
    'effect-contradicts requirement-inconclusive allow-unused': ['warning', null],
    'requirement-not-met allow-not-possible': ['error', null],
  };
  for (const [names, [severity, effect]] of Object.entries(table)) {
    it(`keeps the severity of the language: ${names}`, () => {
      for (const name of names.split(' ')) {
        assert.ok(isFindingCode(name), name);
        assert.deepEqual([findingRecord(name).severity, findingRecord(name).effect], [severity, effect], name);
      }
    });
  }

  // The limits that the language's table prints in brackets (language.md, section 5).
  const limits: readonly (readonly [code: string, values: readonly number[], unit: string])[] = [
    ['signal-saturated', [5], ''],
    ['temperature-reverses', [0.3, 3], 'K'],
    ['gap-in-data', [3], ''],
    ['mass-mismatch', [0.2], '%'],
    ['join-mismatch', [2], 'K'],
    ['programme-mismatch', [2, 3], '%'],
    ['window-edge-sensitive', [0.1, 2], '%'],
    ['window-in-transient', [3], 'min'],
    ['window-near-gas-switch', [2], 'min'],
    ['too-few-points', [10], ''],
    ['boundary-not-level', [10], '%'],
    ['residue-changing', [0.02], '%/min'],
    ['mass-balance', [0.1, 3], '%'],
    ['baseline-matters', [3], '%'],
  ];
  for (const [code, values, unit] of limits) {
    it(`takes the limit of ${code} from the language`, () => {
      assert.ok(isFindingCode(code));
      assert.equal(settableLimit(code)?.unit, unit);
      values.forEach((value, index) => assert.equal(fixedLimit(code, index), value));
    });
  }

  it('explains every code in sentences that quote only limits it has', () => {
    for (const record of records) {
      assert.ok(record.explanation.length > 80 && record.explanation.endsWith('.'), record.code);
      assert.doesNotMatch(explanationText(record), /\{|undefined/, record.code);
      for (const [, index] of record.explanation.matchAll(/\{(\d+)\}/g)) {
        assert.ok(Number(index) < record.limits.length, record.code);
      }
    }
  });

  it('quotes the settable limit of every code that has one', () => {
    for (const record of records) {
      if (record.limits.length === 0 || record.limits[0].value === 0) continue;
      assert.ok(record.explanation.includes('{0}'), record.code);
    }
  });

  it('shows for every code a gloss that fires and a different case that stays silent', () => {
    for (const record of records) {
      assert.notDeepEqual(record.fires, record.silent, record.code);
      assert.ok(record.fires.gloss.length > 0 && record.silent.gloss.length > 0, record.code);
    }
  });

  it('gives a finding the severity of its record unless the rule says otherwise', () => {
    const at = { statement: 'step First', token: 'head' };
    assert.equal(makeFinding('window-overlap', at, 'x').severity, 'warning');
    assert.equal(makeFinding('window-crosses-segments', at, 'x', { severity: 'warning' }).severity, 'warning');
    assert.deepEqual(makeFinding('cycle', at, 'x').fixes, []);
  });
});
