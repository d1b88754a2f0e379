import { statementsOf } from '../statements';
import { version } from '../version';
import { approvedOn } from './approval';
import { fact, type ReportInput, type ReportOptions, type ReportSection } from './model';
import { noted, runStatement } from './stated';

const laboratories = 'ISO/IEC 17025';

/** Who, what, when and by which text: the general part of ISO/IEC 17025:2017, 7.8.2.1 (from memory). */
export function identification(input: ReportInput, { issued }: ReportOptions): ReportSection {
  const { snapshot, identity, revision } = input;
  const run = runStatement(snapshot);
  const [method] = statementsOf(snapshot, 'method');
  const both = 'ISO/IEC 17025, ISO 11357-1, ISO 11358-1';
  const sample = run === null ? null : run.sampleIsNone ? 'none: an empty crucible' : run.sample;
  return {
    title: 'Identification',
    blocks: [
      {
        block: 'facts',
        facts: [
          fact('sample', sample, both),
          noted(snapshot, 'condition'),
          noted(snapshot, 'customer'),
          noted(snapshot, 'laboratory'),
          noted(snapshot, 'place'),
          noted(snapshot, 'received'),
          fact('measured', run?.measured ?? null, both),
          fact('issued', issued ?? approvedOn(input) ?? 'not issued', laboratories),
          fact('operator', run?.operator ?? null, both),
          fact('evaluator', run?.evaluator ?? null, laboratories),
          noted(snapshot, 'authoriser'),
          fact('method', methodWords(method?.statement.title ?? null, input), both),
          noted(snapshot, 'deviations'),
          fact('gloss', snapshot.gloss.display),
          fact('SHA-256 of the gloss', identity),
          fact('revision', revision),
          fact('program', `Thermogloss ${version}`),
        ],
      },
      { block: 'text', text: 'The results relate only to the items tested.' },
    ],
  };
}

function methodWords(title: string | null, { snapshot }: ReportInput): string {
  if (snapshot.method === null) return 'the evaluation stands in the gloss itself';
  return `${title ?? 'without a title'} (${snapshot.method.display}, named by its SHA-256 under Files)`;
}
