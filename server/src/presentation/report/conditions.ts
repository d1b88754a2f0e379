import type { Snapshot } from '../../engine/snapshot';
import { writeRange, writeAmount } from '../../language/writing/amounts';
import { writeAtmosphere, writeClauses, writeCrucible } from '../../language/writing/clauses';
import { fixedNumber } from '../plainNumber';
import { statementsOf } from '../statements';
import { fact, type Fact, type ReportBlock, type ReportInput, type ReportSection } from './model';
import { noted, runStatement } from './stated';

const thermal = 'ISO 11357-1, ISO 11358-1';

/** Apparatus, specimen, gas, programme, calibration: the conditions clauses of ISO 11357-1 and ISO 11358-1 (from memory). */
export function conditions({ snapshot }: ReportInput): ReportSection {
  const run = runStatement(snapshot);
  const crucible = run?.crucible ?? null;
  const lid = crucible?.further.join(', ') ?? null;
  const gases = (run?.atmospheres ?? []).map((a) => writeAtmosphere(a, 'written'));
  const purity = run !== null && run.atmospheres.length > 0 && run.atmospheres.every((a) => a.purity !== null);
  const flow = run !== null && run.atmospheres.length > 0 && run.atmospheres.every((a) => a.flow !== null);
  const [programme] = statementsOf(snapshot, 'programme');
  const facts: Fact[] = [
    noted(snapshot, 'instrument'),
    noted(snapshot, 'sensor'),
    fact('crucible', crucible === null ? null : writeCrucible(crucible, 'written'), thermal),
    ...(crucible === null
      ? []
      : [
          fact('crucible volume', crucible.volume === null ? null : writeAmount(crucible.volume, 'written'), thermal),
          fact('lid', lid, thermal),
        ]),
    fact('mass of the specimen', run?.mass?.text ?? null, thermal),
    noted(snapshot, 'form'),
    noted(snapshot, 'preparation'),
    noted(snapshot, 'history'),
    fact('known to contain', run === null || run.contains.length === 0 ? null : run.contains.join(', ')),
    fact('gas, with every switch', gases.join('; then '), thermal),
    ...(gases.length > 0 && !flow ? [fact('gas flow', null, thermal)] : []),
    ...(gases.length > 0 && !purity ? [fact('gas purity', null, thermal)] : []),
    fact(
      'programme asked for',
      programme === undefined ? null : writeClauses(programme.statement, 'written').join(', then '),
      thermal,
    ),
    // Of a run without a heat flow there is no direction to state.
    ...(hasHeatFlow(snapshot) ? [fact('endothermic direction', run?.endothermic ?? null, 'ISO 11357-1')] : []),
    fact('calibrated', calibrationWords(snapshot), thermal),
    noted(snapshot, 'calibration materials'),
    noted(snapshot, 'calibration date'),
    fact('specimens evaluated here', snapshot.run === null ? null : '1 (n = 1)', thermal),
  ];
  return { title: 'Conditions', blocks: [{ block: 'facts', facts }, ...segments(snapshot)] };
}

function hasHeatFlow({ run }: Snapshot): boolean {
  return run !== null && run.interpretation.columns.some((c) => c.signal === 'heatflow');
}

function calibrationWords(snapshot: Snapshot): string {
  return (runStatement(snapshot)?.calibrated ?? [])
    .map(
      ({ signal, range, u }) =>
        `${signal} ${writeRange(range, 'written')}${u === null ? ', u not stated' : `, u = ${writeAmount(u, 'written')}`}`,
    )
    .join('; ');
}

function segments({ run }: Snapshot): ReportBlock[] {
  if (run === null || run.segments.length === 0) return [];
  return [
    {
      block: 'table',
      name: 'Segments found in the data',
      headers: ['segment', 'from / °C', 'to / °C', 'from / min', 'to / min', 'rate / (K/min)', 'gas'],
      numbers: [1, 2, 3, 4, 5],
      rows: run.segments.map((s) => [
        s.name,
        Number.isFinite(s.from) ? fixedNumber(s.from, 1) : '',
        Number.isFinite(s.to) ? fixedNumber(s.to, 1) : '',
        fixedNumber(s.start / 60, 2),
        fixedNumber(s.end / 60, 2),
        s.rate === null ? '' : fixedNumber(s.rate, 2),
        s.gas ?? 'not stated',
      ]),
    },
  ];
}
