import type { Snapshot } from '../../engine/snapshot';
import type { Result } from '../../evaluation/result';
import { roundToUncertainty } from '../number';
import { chosenResults } from '../oneGloss';
import { plainNumber } from '../plainNumber';
import { shownValue, shownWindow, stateAndReasons, unitText } from '../shown';
import { SnapshotTexts } from '../statements';
import { verdictCells, verdictHeaders } from '../verdicts';
import { fact, type ReportBlock, type ReportInput, type ReportSection } from './model';

/** The numbers, each with its basis, place, standard and expanded uncertainty and what it is worth. */
export function resultsSection({ snapshot, figures }: ReportInput): ReportSection {
  const results = chosenResults(snapshot, { all: false });
  const blocks: ReportBlock[] =
    results.length === 0
      ? [{ block: 'text', text: 'There are no results.' }]
      : [
          {
            block: 'table',
            name: 'Results: ± is the standard uncertainty u (k = 1), U = k·u the expanded one for about 95 %',
            headers: ['result', 'value ± u', 'U', 'segment', 'window', 'state'],
            numbers: [1, 2],
            rows: results.map((r) => [
              r.id,
              shownValue(r),
              expanded(r),
              r.segment ?? '',
              shownWindow(r.window),
              stateAndReasons(r) || 'number',
            ]),
          },
        ];
  const drawn = figures.map((figure): ReportBlock => ({ block: 'figure', figure }));
  const none: ReportBlock = { block: 'facts', facts: [fact('curves', null, 'ISO 11357-1, ISO 11358-1')] };
  return { title: 'Results', blocks: [...blocks, ...(drawn.length === 0 ? [none] : drawn)] };
}

function expanded(r: Result): string {
  if (r.value === null) return '';
  if (r.uncertainty === null) return 'unknown';
  if (!(r.uncertainty > 0)) return 'exact';
  const unit = r.unit.text === '°C' ? 'K' : r.unit.text;
  return `${roundToUncertainty(r.value, r.uncertainty * r.k).uncertainty}${unitText(unit)} (k = ${plainNumber(r.k, 3)})`;
}

/** Requirements with the rule they are decided by and what came out. */
export function requirementsSection(snapshot: Snapshot): ReportSection {
  const { requirements } = snapshot;
  const title = 'Requirements';
  if (requirements.length === 0) return { title, blocks: [{ block: 'text', text: 'None are stated.' }] };
  const texts = new SnapshotTexts(snapshot);
  return {
    title,
    blocks: [
      { block: 'text', text: decisionRule },
      {
        block: 'table',
        name: 'Verdicts',
        headers: verdictHeaders,
        numbers: [2],
        rows: requirements.map((r) => verdictCells(r, texts)),
      },
    ],
  };
}

const decisionRule =
  'Decision rule after JCGM 106:2012 with guard bands of one U on either side, U = k·u and k from the effective degrees ' +
  'of freedom for about 95 %: met where y ± U lies within the closed limits, not met where it lies wholly outside, else ' +
  'inconclusive. What is apparent or indicated is judged only where every reason for it is allowed; what failed is not ' +
  'evaluated.';
