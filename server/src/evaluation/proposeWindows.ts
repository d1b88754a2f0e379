import type { Place, SegmentName } from '../language/model';
import { parseUnit } from '../quantities/parseUnit';
import { locate } from './locate';
import type { PreparedRun } from './preparedRun';
import { proposeEvaluations, type Proposal } from './propose';
import type { ResultWindow } from './result';
import type { StatementContext } from './statementContext';

/** A proposal with the rule that would find the same effect by itself. */
export interface ProposedWindow {
  readonly proposal: Exclude<Proposal, { kind: 'residue' }>;
  /** `around 769 °C` and the ends it finds in this run; null where it finds none, and for glass transitions. */
  readonly around: { readonly text: string; readonly found: ResultWindow } | null;
}

/** What a run shows: windows to evaluate, and where the mass left is read. */
export interface ProposedStatements {
  readonly windows: readonly ProposedWindow[];
  readonly residue: Extract<Proposal, { kind: 'residue' }> | null;
}

/**
 * What a run proposes (`proposeEvaluations`), each step's and peak's also as an `around` rule where that rule
 * finds both ends. What is proposed is there to be looked at and changed.
 */
export function proposeWindows(run: PreparedRun): ProposedStatements {
  const windows: ProposedWindow[] = [];
  let residue: ProposedStatements['residue'] = null;
  for (const proposal of proposeEvaluations(run)) {
    if (proposal.kind === 'residue') residue = proposal;
    else windows.push({ proposal, around: aroundRule(run, proposal) });
  }
  return { windows, residue };
}

function aroundRule(run: PreparedRun, proposal: ProposedWindow['proposal']): ProposedWindow['around'] {
  if (proposal.kind === 'glass') return null;
  const segment = run.segments.find((s) => s.name === proposal.segment);
  const unit = parseUnit(proposal.unit);
  if (segment === undefined || !unit.ok) return null;
  const name: SegmentName = { direction: segment.direction, index: segment.index };
  const text = `${proposal.at} ${proposal.unit}`;
  const place: Place = {
    window: {
      rule: 'around',
      at: { value: Number(proposal.at), unit: unit.value, u: null, text },
      within: null,
    },
    segment: name,
  };
  const located = locate(alone(run), place, proposal.kind === 'step' ? 'mass' : 'heatflow', null);
  return located.ok ? { text: `around ${text}`, found: located.value.placed.shown } : null;
}

/** Nothing of other statements is needed to find a window. */
function alone(run: PreparedRun): StatementContext {
  return { run, runStatement: '', outcome: () => null, limit: () => NaN };
}
