import type { Snapshot } from '../../engine/snapshot';
import { gasTimeline, gasWords } from '../../evaluation/checks/gasTimeline';
import type { RunStatement } from '../../language/model';
import { writeAtmosphere, writeCrucible } from '../../language/writing/clauses';
import { fixedNumber } from '../plainNumber';
import { statementsOf } from '../statements';
import { oneLine } from '../width';
import type { PlotCurves, PlotPart } from './plotCurves';

/** `vq217-1 · Dolomitic limestone VQ-217 · 20.052 mg · carbon dioxide 50 mL/min`: what is measured, and how. */
export function titleOf(snapshot: Snapshot, role: 'run' | 'method'): string {
  const title = runTitle(snapshot);
  const [method] = role === 'method' ? statementsOf(snapshot, 'method') : [];
  if (method === undefined) return title;
  return title === '' ? oneLine(method.statement.title) : `${oneLine(method.statement.title)} · with ${title}`;
}

function runTitle(snapshot: Snapshot): string {
  const run = runOf(snapshot);
  if (run === null) return '';
  const name = run.file.split(/[\\/]/).pop() ?? run.file;
  const dot = name.lastIndexOf('.');
  const [gas] = run.atmospheres;
  const parts = [
    dot > 0 ? name.slice(0, dot) : name,
    run.sampleIsNone ? 'no sample' : (run.sample ?? ''),
    run.mass === null ? '' : withoutUncertainty(run.mass.text),
    gas === undefined ? '' : `${gasWords(gas)}${gas.flow === null ? '' : ` ${gas.flow.text}`}`,
  ];
  return parts
    .filter((p) => p !== '')
    .map(oneLine)
    .join(' · ');
}

/** How it was measured and what was done to it, a line each. */
export function conditionsOf(snapshot: Snapshot, curves: PlotCurves | null): string[] {
  const run = runOf(snapshot);
  if (run === null) return [];
  const lines = [
    run.crucible === null ? '' : writeCrucible(run.crucible, 'written'),
    ...(run.atmospheres.length > 1 ? run.atmospheres.map((a) => writeAtmosphere(a, 'written')) : []),
    ...(curves?.parts ?? []).map(partWords),
    ...statementsOf(snapshot, 'blank').map(
      ({ statement: s }) =>
        `blank ${s.file} subtracted from ${s.subtract.length === 0 ? 'mass' : s.subtract.join(', ')}`,
    ),
    ...statementsOf(snapshot, 'mask').map(
      ({ statement: s }) => `masked ${s.range.from.text}..${s.range.to.text}: ${s.reason}`,
    ),
    run.measured === null ? '' : `measured ${run.measured}`,
  ];
  return lines.filter((l) => l !== '').map(oneLine);
}

/** Where one gas follows another. */
export function gasChangesOf(
  snapshot: Snapshot,
  curves: PlotCurves,
): { readonly time: number; readonly temperature: number; readonly gas: string }[] {
  const run = runOf(snapshot);
  if (run === null || snapshot.run === null) return [];
  return gasTimeline(run, snapshot.run.segments, Infinity)
    .slice(1)
    .flatMap(({ from, words }) => {
      const part = partAt(curves, from);
      const temperature = part === null ? null : curves.temperatureAt(part.name, from);
      return temperature === null ? [] : [{ time: from, temperature, gas: words }];
    });
}

function partAt(curves: PlotCurves, time: number): PlotPart | null {
  return curves.parts.find((p) => p.start <= time && time <= p.end) ?? null;
}

export function partWords(part: PlotPart): string {
  if (!Number.isFinite(part.from)) return part.name;
  if (part.rate === null) {
    const middle = fixedNumber((part.from + part.to) / 2, 1);
    return `${part.name}: ${middle} °C for ${fixedNumber((part.end - part.start) / 60, 1)} min`;
  }
  const ends = `${fixedNumber(part.from, 1)} to ${fixedNumber(part.to, 1)} °C`;
  return `${part.name}: ${ends} at ${fixedNumber(Math.abs(part.rate), 2)} K/min`;
}

function runOf(snapshot: Snapshot): RunStatement | null {
  return statementsOf(snapshot, 'run')[0]?.statement ?? null;
}

function withoutUncertainty(text: string): string {
  return text.replace(/ (?:±|\+\/-) \S+/, '');
}
