import type { ResultState, Verdict } from '../../evaluation/result';
import { asksOf, type ComparedGloss, type ComparedResult } from './compared';

/** A saved results file (`results --format json`): one gloss a line. null: it is none; the reason says which line. */
export function savedResults(text: string): readonly ComparedGloss[] | { readonly problem: string } {
  const found: ComparedGloss[] = [];
  // The record of an approval is one object over many lines.
  const whole = recordOf(text);
  if (whole !== null) return [whole];
  for (const [index, line] of text.split(/\r?\n/).entries()) {
    if (line.trim() === '') continue;
    let json: unknown;
    try {
      json = JSON.parse(line);
    } catch {
      return { problem: `line ${index + 1} is no JSON` };
    }
    const gloss = glossOf(json);
    if (gloss === null) return { problem: `line ${index + 1} is no result of thermogloss-results/1` };
    found.push(gloss);
  }
  return found.length === 0 ? { problem: 'it is empty' } : found;
}

function recordOf(text: string): ComparedGloss | null {
  try {
    return glossOf(JSON.parse(text));
  } catch {
    return null;
  }
}

type Json = Readonly<Record<string, unknown>>;

/** One object after `results.schema.json`, as a side of a comparison. */
export function glossOf(json: unknown): ComparedGloss | null {
  if (!isObject(json) || json['schema'] !== 'thermogloss-results/1' || typeof json['gloss'] !== 'string') return null;
  const results = list(json['results']);
  const requirements = list(json['requirements']);
  const run = json['run'];
  return {
    gloss: json['gloss'],
    program: text(json['program']),
    results: results.map(resultOf),
    requirements: requirements.map((r) => ({
      asks: asksOf(text(r['text'])),
      name: textOrNull(r['name']),
      text: text(r['text']),
      verdict: text(r['verdict']) as Verdict,
      value: number(r['value']),
      uncertainty: number(r['uncertainty']),
      unit: text(r['unit']),
      line: number(r['line']),
    })),
    run: isObject(run) ? { path: text(run['path']), identity: text(run['identity']) } : null,
    inputs: list(json['inputs']).map((i) => ({
      role: text(i['role']),
      path: text(i['path']),
      identity: text(i['identity']),
    })),
    meanings: new Map(),
    failure: null,
  };
}

function resultOf(r: Json): ComparedResult {
  const window = r['window'];
  return {
    id: text(r['id']),
    name: text(r['name']),
    kind: text(r['kind']),
    quantity: text(r['quantity']),
    state: text(r['state']) as ResultState,
    value: number(r['value']),
    uncertainty: number(r['uncertainty']),
    unit: text(r['unit']),
    limit: number(r['limit']),
    basis: textOrNull(r['basis']),
    segment: textOrNull(r['segment']),
    window: isObject(window)
      ? {
          from: number(window['from']) ?? NaN,
          to: number(window['to']) ?? NaN,
          unit: window['unit'] === 'min' ? 'min' : '°C',
          rule: textOrNull(window['rule']),
        }
      : null,
    reasons: Array.isArray(r['reasons']) ? r['reasons'].map(text) : [],
    // Which ones the texts use is not in the file: the side that is evaluated says it.
    main: false,
    line: r['file'] === null ? number(r['line']) : null,
  };
}

function isObject(value: unknown): value is Json {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function list(value: unknown): readonly Json[] {
  return Array.isArray(value) ? value.filter(isObject) : [];
}

function text(value: unknown): string {
  return typeof value === 'string' ? value : '';
}

function textOrNull(value: unknown): string | null {
  return typeof value === 'string' ? value : null;
}

function number(value: unknown): number | null {
  return typeof value === 'number' && Number.isFinite(value) ? value : null;
}
