import type { PlacedFinding, Snapshot } from '../../server/src/engine/snapshot';
import type { Requirement, Result } from '../../server/src/evaluation/result';
import type { Statement } from '../../server/src/language/model';
import type { Tree } from '../../server/src/language/tree';
import type { Unit } from '../../server/src/quantities/unit';
import type { Interpretation } from '../../server/src/runs/run';

const dimensionless = [0, 0, 0, 0, 0, 0] as const;

export const percent: Unit = { text: '%', factor: 0.01, offset: 0, dimension: dimensionless };
export const celsius: Unit = { text: '°C', factor: 1, offset: 273.15, dimension: [0, 0, 0, 1, 0, 0] };
export const plain: Unit = { text: '', factor: 1, offset: 0, dimension: dimensionless };

export const identity = '9f'.repeat(32);

export const interpretation: Interpretation = {
  encoding: 'utf-8',
  bom: true,
  lineEnds: 'crlf',
  delimiter: ';',
  decimal: ',',
  skip: 2,
  header: 1,
  footer: 0,
  block: null,
  columns: [
    { number: 1, header: 'Zeit', unitText: 'min', signal: 'time' },
    { number: 2, header: 'T', unitText: '°C', signal: 'temperature' },
    { number: 3, header: 'Flow', unitText: 'mL/min', signal: null },
  ],
  rows: 5821,
  irregularRows: 3,
};

/** A tree as far as presentation looks: each head line is a statement, its id the first two words. */
export function treeOf(text: string, statements: Readonly<Record<string, Statement>> = {}): Tree {
  const nodes: Tree['statements'][number][] = [];
  let start = 0;
  for (const line of text.split('\n')) {
    if (/^\S/.test(line)) {
      const id = line
        .split(/\s+/)
        .slice(0, line.startsWith('override') ? 3 : 2)
        .join(' ');
      const span = { start, end: start + line.trimEnd().length };
      nodes.push({
        id,
        span,
        tokens: new Map([['head', span]]),
        canonical: line,
        statement: statements[id] ?? null,
        name: line.split(/\s+/)[1] ?? null,
        broken: false,
      });
    }
    start += line.length + 1;
  }
  return { text, role: text.startsWith('method') ? 'method' : 'run', statements: nodes, findings: [] };
}

export const glossText = [
  'run "b.csv"',
  '  mass 20.052 ± 0.010 mg',
  'step First 640..790 °C',
  'let x = First.loss * 2',
  'require x in 28..31 %',
  '',
].join('\n');

export function result(over: Partial<Result> = {}): Result {
  return {
    id: 'First.loss',
    name: 'First',
    kind: 'step',
    quantity: 'loss',
    state: 'number',
    value: 14.7968,
    uncertainty: 0.0412,
    k: 2,
    dof: null,
    unit: percent,
    valueKind: 'fraction',
    limit: null,
    basis: 'initial mass',
    segment: 'heating 1',
    window: { from: 640, to: 790, unit: '°C', rule: null },
    method: 'levels, span 10 K',
    contributions: [
      { input: 'edge of mass at 640.0012345 °C in heating 1, b', u: 0.0391 },
      { input: 'mass of b', u: -0.0074 },
    ],
    reasons: [],
    uncertain: null,
    file: 'gloss',
    statement: 'step First',
    ...over,
  };
}

export function failedResult(over: Partial<Result> = {}): Result {
  const none = { value: null, uncertainty: null, contributions: [], window: null, segment: null, basis: null };
  return result({ ...none, state: 'failed', reasons: ['window-empty'], ...over });
}

export function requirement(over: Partial<Requirement> = {}): Requirement {
  return {
    name: null,
    statement: 'require x',
    file: 'gloss',
    text: 'x in 28..31 %',
    verdict: 'met',
    state: 'number',
    value: 29.5936,
    uncertainty: 0.0824,
    unit: percent,
    low: 28,
    high: 31,
    k: 2,
    ...over,
  };
}

export function finding(over: Partial<PlacedFinding> = {}): PlacedFinding {
  const start = glossText.indexOf('640..790');
  return {
    code: 'window-edge-not-level',
    severity: 'warning',
    file: 'gloss',
    span: { start, end: start + '640..790 °C'.length },
    message: 'The curve falls by 0.02 %/K at 790 °C.',
    related: [],
    fixes: [],
    allowed: null,
    ...over,
  };
}

export function snapshot(over: Partial<Snapshot> = {}, text = glossText): Snapshot {
  return {
    gloss: { path: '/lab/b.gloss', display: 'b.gloss', tree: treeOf(text) },
    method: null,
    run: {
      display: 'b.csv',
      identity,
      points: 5821,
      segments: [
        {
          name: 'heating 1',
          direction: 'heating',
          index: 1,
          first: 0,
          last: 5821,
          from: 30.1,
          to: 1000,
          start: 0,
          end: 5820,
          rate: 10,
          gas: 'air',
        },
      ],
      interpretation,
    },
    inputs: [{ role: 'blank', display: 'z.csv', identity, interpretation: null }],
    results: [result()],
    requirements: [requirement()],
    findings: [finding()],
    constructions: [],
    ...over,
  };
}
