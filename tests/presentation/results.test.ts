import assert from 'node:assert/strict';
import { parse } from 'csv-parse/sync';
import type { Snapshot } from '../../server/src/engine/snapshot';
import { explainText } from '../../server/src/presentation/explain';
import { geometryText } from '../../server/src/presentation/geometry';
import { anyFailed, mainResults } from '../../server/src/presentation/mainQuantities';
import { oneGlossCsv, oneGlossMarkdown, oneGlossText } from '../../server/src/presentation/oneGloss';
import { seriesOf } from '../../server/src/presentation/series';
import { seriesCsv } from '../../server/src/presentation/seriesCsv';
import { seriesMarkdown, seriesText } from '../../server/src/presentation/seriesText';
import { sampleStatistics } from '../../server/src/presentation/statistics';
import { celsius, failedResult, glossText, percent, requirement, result, snapshot, treeOf } from './snapshots';

const few = { all: false };

describe('the results of one gloss', () => {
  it('are a row a result with ± u, verdicts below with U and k', () => {
    assert.equal(
      oneGlossText(snapshot(), few),
      [
        'b.gloss: b.csv, 5821 points, heating 1',
        '',
        'result      value ± u (k = 1)           segment    window       state',
        'First.loss  14.797 ± 0.041 % (initial)  heating 1  640..790 °C',
        '',
        'verdict  requirement    judged by (± u, k = 1)  expanded, about 95 %',
        'met      x in 28..31 %  29.594 ± 0.082 %        U = 0.16 % (k = 2)',
        '',
      ].join('\n'),
    );
  });

  it('are the same rows in Markdown', () => {
    const text = oneGlossMarkdown(snapshot(), few);
    assert.ok(text.includes('| First.loss | 14.797 ± 0.041 % (initial) | heating 1 | 640..790 °C |  |'));
    assert.ok(text.includes('| met | x in 28..31 % | 29.594 ± 0.082 % | U = 0.16 % (k = 2) |'));
  });

  it('are one record each in CSV, with value and u apart', () => {
    const [row] = parse(oneGlossCsv(snapshot(), few), { columns: true, record_delimiter: '\r\n' }) as Record<
      string,
      string
    >[];
    assert.deepEqual([row.gloss, row.line, row.result, row.state], ['b.gloss', '3', 'First.loss', 'number']);
    assert.deepEqual([row.value, row['u (k = 1)'], row.unit, row.basis], ['14.797', '0.041', '%', 'initial mass']);
    assert.deepEqual([row['window from'], row['window to'], row['window unit']], ['640', '790', '°C']);
  });

  it('are the main quantities, what the gloss reads and what failed; all of them when asked', () => {
    const results = [
      result(),
      result({ id: 'First.gain', quantity: 'gain' }),
      result({ id: 'First.mass_end', quantity: 'mass_end' }),
      result({ id: 'First.start', quantity: 'start', unit: celsius }),
      result({ id: 'First.start_time', quantity: 'start_time' }),
      result({ id: 'Hold.start_time', name: 'Hold', quantity: 'start_time' }),
      failedResult({ id: 'First.departure', quantity: 'departure' }),
    ];
    assert.deepEqual([...mainResults(snapshot({ results }))].sort(), [
      'First.departure',
      'First.loss',
      'First.start',
      'Hold.start_time',
    ]);
    const inMilligrams = failedResult({
      id: 'First.mass_end',
      quantity: 'mass_end',
      reasons: ['mass-missing (First)'],
    });
    const ofFraction = snapshot({ results: [result(), inMilligrams] });
    assert.deepEqual([...mainResults(ofFraction)], ['First.loss'], 'mg that nobody asked for, without a specimen mass');
    assert.equal(anyFailed(ofFraction), false);
    assert.equal(anyFailed(snapshot({ results: [failedResult({ id: 'First.gain', quantity: 'gain' })] })), true);
    const reading = treeOf(glossText, {
      'let x': {
        kind: 'let',
        id: 'let x',
        override: false,
        because: null,
        notes: [],
        allows: [],
        name: 'x',
        show: null,
        expression: { node: 'name', name: 'First', quantity: 'mass_end', token: 'expression' },
      },
    });
    const gloss = { path: '/lab/b.gloss', display: 'b.gloss', tree: reading };
    assert.ok(mainResults(snapshot({ gloss, results })).has('First.mass_end'));
    assert.equal(anyFailed(snapshot({ gloss, results: [result(), inMilligrams] })), true, 'it is read, and fails');
    assert.ok(oneGlossText(snapshot({ results }), { all: true }).includes('First.gain'));
    assert.ok(!oneGlossText(snapshot({ results }), few).includes('First.gain'));
  });

  it('say that a comparison with an expression is judged by the difference', () => {
    const text = 'run "b.csv"\nrequire x <= y\n';
    const name = (n: string) => ({ node: 'name', name: n, quantity: null, token: 'expression' }) as const;
    const tree = treeOf(text, {
      'require x': {
        kind: 'require',
        id: 'require x',
        override: false,
        because: null,
        notes: [],
        allows: [],
        name: null,
        left: name('x'),
        limit: { form: '<=', right: name('y') },
        text: 'x <= y',
      },
    });
    const gloss = { path: '/lab/b.gloss', display: 'b.gloss', tree };
    assert.ok(oneGlossText(snapshot({ gloss }), few).includes('29.594 ± 0.082 % (difference)'));
    assert.ok(!oneGlossText(snapshot(), few).includes('difference'));
  });
});

function run(name: string, value: number, over: Partial<Snapshot> = {}, text = glossText): Snapshot {
  const gloss = { path: `/lab/${name}`, display: name, tree: treeOf(text) };
  return snapshot({ gloss, results: [result({ value, uncertainty: 0.04 })], ...over });
}

describe('a series', () => {
  const overriding = 'run "b.csv"\noverride step First 655..805 °C\n  because "coarse"\n';

  it('has n, mean and s of NIST/SEMATECH data', () => {
    // NIST/SEMATECH e-Handbook of Statistical Methods, StRD data set "NumAcc1": 10000001, 10000003, 10000002;
    // certified mean 10000002, standard deviation 1 (from memory).
    assert.deepEqual(sampleStatistics([10000001, 10000003, 10000002]), { n: 3, mean: 10000002, s: 1 });
    assert.deepEqual(sampleStatistics([3]), { n: 1, mean: 3, s: null });
    assert.deepEqual(sampleStatistics([]), { n: 0, mean: null, s: null });
  });

  it('is a row a run and a column a result, with n, mean and s below', () => {
    const text = seriesText(seriesOf([run('a.gloss', 14.7), run('b.gloss', 14.9)], few), null);
    const lines = text.split('\n');
    assert.match(lines[0], /^gloss +First\.loss +x in 28\.\.31 %$/);
    assert.match(lines[1], /± u \/ % \(initial\)/);
    assert.match(lines[2], /^a\.gloss +14\.700 ± 0\.040 +met$/);
    assert.match(lines[3], /^b\.gloss +14\.900 ± 0\.040 +met$/);
    assert.match(lines[5], /^n +2$/);
    assert.match(lines[6], /^mean +14\.80$/);
    assert.match(lines[7], /^s +0\.14$/);
  });

  it('leaves what has no value out of n, and marks the mean where something was below detection', () => {
    const failed = run('c.gloss', 0, { results: [failedResult()] });
    const below = run('d.gloss', 0, {
      results: [failedResult({ state: 'not-detected', limit: 0.05, basis: 'initial mass' })],
    });
    const text = seriesText(seriesOf([run('a.gloss', 14.7), failed, run('b.gloss', 14.9)], few), null);
    assert.match(text, /\nc\.gloss +failed/);
    assert.match(text, /\nn +2\nmean +14\.80\n/);
    const marked = seriesText(seriesOf([run('a.gloss', 14.7), below, run('b.gloss', 14.9)], few), null);
    assert.match(marked, /\nd\.gloss +< 0\.05/);
    assert.match(marked, /\nmean +~14\.80\n/);
  });

  it('marks the runs that differ from their method and says why', () => {
    const tree = treeOf(overriding);
    const [, node] = tree.statements;
    const common = { override: true, because: 'coarse', notes: [], allows: [] };
    const statement = {
      ...common,
      kind: 'onset' as const,
      id: node.id,
      name: 'First',
      place: { window: null, segment: null },
      of: null,
      span: null,
      smooth: null,
    };
    const gloss = {
      path: '/lab/b.gloss',
      display: 'b.gloss',
      tree: { ...tree, statements: [tree.statements[0], { ...node, statement }] },
    };
    const series = seriesOf([run('a.gloss', 14.7), run('b.gloss', 14.9, { gloss })], few);
    const text = seriesText(series, null);
    assert.match(text, /\nb\.gloss \* /);
    assert.match(text, /\n\* b\.gloss differs from its method: step First \(coarse\)\n/);
    assert.doesNotMatch(text, /\na\.gloss \*/);
    assert.ok(seriesMarkdown(series).includes('| b.gloss \\* |'));
    const records = parse(seriesCsv(series), { columns: true, record_delimiter: '\r\n' }) as Record<string, string>[];
    assert.deepEqual(
      records.map((r) => r.overrides),
      ['', 'step First', '', '', ''],
    );
  });

  it('keeps values of another basis or unit in a column of their own', () => {
    const dried = run('b.gloss', 14.9, { results: [result({ value: 14.9, basis: 'dried, Moisture' })] });
    const series = seriesOf([run('a.gloss', 14.7), dried, run('c.gloss', 0, { results: [failedResult()] })], few);
    assert.deepEqual(
      series.columns.map((c) => c.basis),
      ['initial mass', 'dried, Moisture'],
    );
    assert.deepEqual(
      series.statistics.map((s) => s.n),
      [1, 1],
    );
    assert.equal(series.rows[2].cells[0]?.state, 'failed');
  });

  it('is three fields a result in CSV and ends with n, mean and s', () => {
    const series = seriesOf([run('a.gloss', 14.7), run('b.gloss', 14.9)], few);
    const records = parse(seriesCsv(series), { record_delimiter: '\r\n' }) as string[][];
    assert.deepEqual(records[0].slice(4, 7), ['First.loss / % (initial)', 'u(First.loss) / %', 'First.loss state']);
    assert.deepEqual(records[1].slice(4, 7), ['14.700', '0.040', 'number']);
    assert.deepEqual(
      records.slice(-3).map((r) => [r[0], r[4]]),
      [
        ['n', '2'],
        ['mean', '14.80'],
        ['s', '0.14'],
      ],
    );
    assert.ok(records.every((r) => r.length === records[0].length));
  });

  it('is set in blocks where the terminal is narrow, and loses nothing', () => {
    const results = Array.from({ length: 9 }, (_, i) => result({ id: `Step${i}.loss`, name: `Step${i}` }));
    const series = seriesOf([run('a.gloss', 1, { results }), run('b.gloss', 1, { results })], few);
    const lines = seriesText(series, 60)
      .split('\n')
      .filter((l) => !l.startsWith('±'));
    assert.ok(
      lines.every((l) => l.length <= 60),
      lines.join('\n'),
    );
    for (let i = 0; i < 9; i++) assert.equal(lines.filter((l) => l.includes(`Step${i}.loss`)).length, 1);
  });
});

describe('the explanation', () => {
  it('tells how the file was read, the segments, and what each number rests on', () => {
    const text = explainText(snapshot());
    for (const part of [
      'b.csv (run, 5821 points, SHA-256 9f9f',
      'UTF-8 with a byte order mark, lines end with CR LF; separated by semicolons, decimal comma',
      '2 lines before the header, 1 header line; 5821 rows, 3 of them irregular',
      'column 2 "T" in °C: temperature',
      'column 3 "Flow" in mL/min: not used',
      'z.csv (blank, SHA-256 9f9f',
      'First (step, b.gloss:3)',
      'window  640..790 °C in heating 1',
      'basis   initial',
      'method  levels, span 10 K',
      'First.loss = 14.797 ± 0.041 % (initial), k = 2 (many degrees of freedom)',
      'u from edge of mass at 640 °C in heating 1, b 0.039 %; mass of b 0.0074 %',
    ]) {
      assert.ok(text.includes(part), `${part}\n\n${text}`);
    }
    assert.match(text, /heating 1 +30\.1 +1000\.0 +0\.00 +97\.00 +10\.000 +air/);
  });

  it('shows every result, also those that the table leaves out', () => {
    assert.ok(
      explainText(snapshot({ results: [result({ id: 'First.gain', quantity: 'gain' })] })).includes('First.gain ='),
    );
  });
});

describe('the geometry', () => {
  it('gives lines and marks in data units', () => {
    const at = { time: 3660, temperature: 640.123, y: 99.87654321 };
    const constructions = [
      {
        name: 'First',
        signal: 'mass',
        unit: '%',
        shapes: [
          { shape: 'line' as const, role: 'level' as const, points: [at, { ...at, time: 3720 }] },
          { shape: 'mark' as const, quantity: 'start', at },
        ],
      },
    ];
    const text = geometryText(snapshot({ constructions }));
    assert.match(text, /Geometry of First: mass in % over the file's time in min/);
    assert.match(text, /level +61\.000 +640\.12 +99\.8765/);
    assert.match(text, /at start +61\.000 +640\.12 +99\.8765/);
  });
});

it('a requirement that was not evaluated shows no U', () => {
  const requirements = [
    requirement({
      name: 'Balance',
      verdict: 'not evaluated',
      state: 'failed',
      value: null,
      uncertainty: null,
      unit: percent,
    }),
  ];
  assert.match(oneGlossText(snapshot({ requirements }), few), /not evaluated +Balance: x in 28\.\.31 % +failed\n/);
});
