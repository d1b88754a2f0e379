import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import Ajv from 'ajv';
import { findingsJson } from '../../server/src/presentation/findings';
import { resultsJson } from '../../server/src/presentation/resultsJson';
import { failedResult, finding, identity, requirement, result, snapshot, treeOf } from './snapshots';

// The schemas are judged by an independent validator (ajv, JSON Schema draft-07).
function validator(name: string): (value: unknown) => string[] {
  const schema = JSON.parse(readFileSync(`server/src/presentation/${name}`, 'utf8')) as object;
  const validate = new Ajv({ allErrors: true }).compile(schema);
  return (value) => {
    // As a reader gets it: through text.
    const read: unknown = JSON.parse(JSON.stringify(value));
    return validate(read) ? [] : validate.errors!.map((e) => `${e.instancePath} ${e.message ?? ''}`);
  };
}

interface Read {
  results: Record<string, unknown>[];
  requirements: Record<string, unknown>[];
  findings: Record<string, unknown>[];
  run: { segments: Record<string, unknown>[] } | null;
  [key: string]: unknown;
}

const read = (value: object): Read => JSON.parse(JSON.stringify(value)) as Read;

describe('results as JSON', () => {
  const errors = validator('results.schema.json');
  const states = [
    result(),
    result({ id: 'First.gain', state: 'apparent', reasons: ['window-overlap'] }),
    result({ id: 'First.start', state: 'indicated', basis: null }),
    failedResult(),
    failedResult({ state: 'sum-only', reasons: [] }),
    failedResult({ state: 'not-detected', limit: 0.05, reasons: [] }),
    result({ uncertainty: null, dof: 4.2 }),
    result({ uncertainty: 0, contributions: [] }),
  ];

  it('keep the committed schema in every state, with and without a run, with geometry', () => {
    assert.deepEqual(errors(resultsJson(snapshot({ results: states }))), []);
    assert.deepEqual(errors(resultsJson(snapshot({ run: null, inputs: [], results: [], requirements: [] }))), []);
    const point = { time: 3600, temperature: 640, y: 99.1 };
    const constructions = [
      {
        name: 'First',
        signal: 'mass',
        shapes: [
          { shape: 'line' as const, role: 'level' as const, points: [point, point] },
          { shape: 'mark' as const, quantity: 'start', at: point },
          { shape: 'area' as const, from: 0, to: 60 },
        ],
      },
    ];
    assert.deepEqual(errors(resultsJson(snapshot({ constructions }), { geometry: true })), []);
  });

  it('have exactly the keys that the language page shows, in its order', () => {
    const json = read(resultsJson(snapshot()));
    const top = ['schema', 'program', 'gloss', 'run', 'inputs', 'results', 'requirements', 'findings'];
    assert.deepEqual(Object.keys(json), top);
    assert.equal(json.schema, 'thermogloss-results/1');
    assert.deepEqual(Object.keys(json.results[0]), [
      ...[
        'id',
        'name',
        'kind',
        'quantity',
        'state',
        'value',
        'uncertainty',
        'k',
        'dof',
        'unit',
        'contributions',
        'limit',
      ],
      ...['basis', 'segment', 'window', 'reasons', 'file', 'line'],
    ]);
    assert.deepEqual(Object.keys(json.requirements[0]), [
      ...['name', 'file', 'line', 'text', 'verdict', 'state', 'value', 'uncertainty', 'unit', 'low', 'high', 'k'],
    ]);
    assert.deepEqual(Object.keys(json.findings[0]), [
      ...['code', 'severity', 'allowed', 'file', 'line', 'column', 'endLine', 'endColumn', 'message'],
    ]);
  });

  it('keep full precision, give minutes, and lines of the statement', () => {
    const json = read(resultsJson(snapshot()));
    assert.equal(json.results[0].value, 14.7968);
    assert.equal(json.results[0].line, 3);
    assert.equal(json.requirements[0].line, 5);
    assert.deepEqual(json.run!.segments[0], {
      name: 'heating 1',
      from: 30.1,
      to: 1000,
      start: 0,
      end: 97,
      rate: 10,
      gas: 'air',
    });
  });

  it('hold null where a number is none', () => {
    const json = read(
      resultsJson(snapshot({ results: [result({ uncertainty: Number.NaN, dof: Number.POSITIVE_INFINITY })] })),
    );
    assert.equal(json.results[0].uncertainty, null);
    assert.equal(json.results[0].dof, null);
  });

  it('name the method for what stands in it, and null for the gloss itself', () => {
    const method = { path: '/lab/m.gloss', display: 'm.gloss', tree: treeOf('method "M"\n\nstep First 640..800 °C\n') };
    const json = read(resultsJson(snapshot({ method, results: [result({ file: 'method' })] })));
    assert.equal(json.results[0].file, 'm.gloss');
    assert.equal(json.results[0].line, 3);
    assert.equal(json.requirements[0].file, null);
  });

  it('are refused by the schema where a key is missing, unknown, or a value contradicts its state', () => {
    const good = read(resultsJson(snapshot()));
    const broken: ((json: Read) => void)[] = [
      (json) => delete json.results[0].limit,
      (json) => (json.results[0].more = 1),
      (json) => (json.extra = 1),
      (json) => (json.results[0].state = 'failed'),
      (json) => (json.results[0].value = null),
      (json) => (json.results[0].state = 'not-detected'),
      (json) => (json.findings[0].line = 0),
      (json) => (json.requirements[0].verdict = 'passed'),
      (json) => (json.schema = 'thermogloss-results/2'),
    ];
    for (const spoil of broken) {
      const copy = structuredClone(good);
      spoil(copy);
      assert.notDeepEqual(errors(copy), [], spoil.toString());
    }
  });

  it('do not hold an identity that is no SHA-256', () => {
    const json = read(
      resultsJson(snapshot({ inputs: [{ role: 'join', display: 'a', identity: 'abc', interpretation: null }] })),
    );
    assert.equal(identity.length, 64);
    assert.notDeepEqual(errors(json), []);
  });
});

describe('positions in JSON', () => {
  it('count UTF-16 units from 1, a BOM not, with exclusive ends', () => {
    const text = '\uFEFFrun "b.csv"\r\n  sample "\u{1F9EA} µg"  mass\r\nstep First 640..790 °C\r\n';
    const bare = text.slice(1);
    const start = bare.indexOf('mass');
    const gloss = { path: '/lab/b.gloss', display: 'b.gloss', tree: treeOf(text) };
    const json = read(resultsJson(snapshot({ gloss, findings: [finding({ span: { start, end: start + 4 } })] })));
    // `  sample "` is 10 units, the test tube two, then ` µg"  ` six.
    const { line, column, endLine, endColumn } = json.findings[0];
    assert.deepEqual([line, column, endLine, endColumn], [2, 19, 2, 23]);
  });

  it('may span lines, and stay inside the text', () => {
    const json = read(
      resultsJson(
        snapshot({ findings: [finding({ span: { start: 5, end: 14 } }), finding({ span: { start: 0, end: 99999 } })] }),
      ),
    );
    assert.deepEqual([json.findings[1].line, json.findings[1].endLine, json.findings[1].endColumn], [1, 2, 3]);
    assert.deepEqual([json.findings[0].endLine, json.findings[0].endColumn], [6, 1]);
  });
});

describe('findings as JSON', () => {
  const errors = validator('findings.schema.json');

  it('keep the committed schema and come in the order of the text', () => {
    const late = finding({ span: { start: 60, end: 61 }, code: 'cycle', severity: 'error' });
    const json = read(findingsJson(snapshot({ findings: [late, finding({ allowed: 'agreed' })] })));
    assert.deepEqual(errors(json), []);
    assert.deepEqual(
      json.findings.map((f) => f.code),
      ['window-edge-not-level', 'cycle'],
    );
    assert.equal(json.findings[0].allowed, 'agreed');
  });

  it('are refused where a message is empty', () => {
    assert.notDeepEqual(errors(findingsJson(snapshot({ findings: [finding({ message: '' })] }))), []);
  });
});

it('a requirement without a value keeps its limits in JSON', () => {
  const json = read(
    resultsJson(
      snapshot({
        requirements: [requirement({ state: 'failed', value: null, uncertainty: null, verdict: 'not evaluated' })],
      }),
    ),
  );
  assert.deepEqual([json.requirements[0].low, json.requirements[0].high, json.requirements[0].value], [28, 31, null]);
});
