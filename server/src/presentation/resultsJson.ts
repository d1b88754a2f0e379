import type { PlacedFinding, Snapshot } from '../engine/snapshot';
import type { Requirement, Result } from '../evaluation/result';
import { inTextOrder } from './order';
import { SnapshotTexts } from './statements';
import { version } from './version';

/** The schema number rises when a key goes or changes its meaning. */
export const resultsSchema = 'thermogloss-results/1';

export interface JsonOptions {
  /** Adds `geometry`: the construction of each statement in data units. */
  readonly geometry?: boolean;
}

/**
 * One gloss as a plain object after `results.schema.json`: full precision, every key present, no NaN. Temperatures in °C,
 * times in min; lines and columns from 1 in UTF-16, ends exclusive.
 */
export function resultsJson(snapshot: Snapshot, options: JsonOptions = {}): object {
  const texts = new SnapshotTexts(snapshot);
  const { run } = snapshot;
  const json = {
    schema: resultsSchema,
    program: version,
    gloss: snapshot.gloss.display,
    run:
      run === null
        ? null
        : {
            path: run.display,
            identity: run.identity,
            points: run.points,
            segments: run.segments.map((s) => ({
              name: s.name,
              from: finite(s.from),
              to: finite(s.to),
              start: finite(s.start / 60),
              end: finite(s.end / 60),
              rate: finite(s.rate),
              gas: s.gas,
            })),
          },
    inputs: snapshot.inputs.map((i) => ({ role: i.role, path: i.display, identity: i.identity })),
    results: snapshot.results.map((r) => resultObject(r, texts)),
    requirements: snapshot.requirements.map((r) => requirementObject(r, texts)),
    findings: inTextOrder(snapshot.findings).map((f) => findingObject(f, texts)),
  };
  return options.geometry === true ? { ...json, geometry: geometryObjects(snapshot) } : json;
}

function resultObject(r: Result, texts: SnapshotTexts): object {
  return {
    id: r.id,
    name: r.name,
    kind: r.kind,
    quantity: r.quantity,
    state: r.state,
    value: finite(r.value),
    uncertainty: finite(r.uncertainty),
    k: r.k,
    dof: finite(r.dof),
    unit: r.unit.text,
    contributions: r.contributions.map((c) => ({ input: c.input, u: finite(c.u) })),
    limit: finite(r.limit),
    basis: r.basis,
    segment: r.segment,
    window:
      r.window === null
        ? null
        : { from: finite(r.window.from), to: finite(r.window.to), unit: r.window.unit, rule: r.window.rule },
    reasons: [...r.reasons],
    file: r.file === 'method' ? texts.path('method') : null,
    line: texts.line(r.file, r.statement),
  };
}

function requirementObject(r: Requirement, texts: SnapshotTexts): object {
  return {
    name: r.name,
    file: r.file === 'method' ? texts.path('method') : null,
    line: texts.line(r.file, r.statement),
    text: r.text,
    verdict: r.verdict,
    state: r.state,
    value: finite(r.value),
    uncertainty: finite(r.uncertainty),
    unit: r.unit.text,
    low: finite(r.low),
    high: finite(r.high),
    k: r.k,
  };
}

/** A finding as in `results` and `check --format json`. */
export function findingObject(f: PlacedFinding, texts: SnapshotTexts): object {
  const start = texts.positions(f.file).at(f.span.start);
  const end = texts.positions(f.file).at(f.span.end);
  return {
    code: f.code,
    severity: f.severity,
    allowed: f.allowed,
    file: f.file === 'method' ? texts.path('method') : null,
    line: start.line,
    column: start.column,
    endLine: end.line,
    endColumn: end.column,
    message: f.message,
  };
}

function geometryObjects(snapshot: Snapshot): object[] {
  return snapshot.constructions.map((c) => ({
    name: c.name,
    signal: c.signal,
    unit: c.unit ?? null,
    shapes: c.shapes.map((s) => {
      if (s.shape === 'area') return { shape: s.shape, from: finite(s.from / 60), to: finite(s.to / 60) };
      if (s.shape === 'mark') return { shape: s.shape, quantity: s.quantity, at: pointObject(s.at) };
      return { shape: s.shape, role: s.role, points: s.points.map(pointObject) };
    }),
  }));
}

function pointObject(p: { readonly time: number; readonly temperature: number; readonly y: number }): object {
  return { time: finite(p.time / 60), temperature: finite(p.temperature), y: finite(p.y) };
}

/** JSON has no NaN and no infinity: what is not a number is `null`. */
function finite(value: number | null): number | null {
  return value !== null && Number.isFinite(value) ? value : null;
}
