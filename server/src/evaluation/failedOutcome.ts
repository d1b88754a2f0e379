import type { Finding } from '../findings/finding';
import { makeFinding } from '../findings/makeFinding';
import type { EvaluationStatement, SignalName } from '../language/model';
import type { Effective } from '../language/program';
import type { StatementOutcome } from './outcome';
import type { PlaceFailure } from './place';

/** A failure that comes from another statement is not reported again. */
export const dependency = 'dependency';

export interface Failure extends Omit<PlaceFailure, 'code'> {
  readonly code: PlaceFailure['code'] | typeof dependency;
}

/** The outcome of a statement that could not be evaluated, with the finding that says why. */
export function failedOutcome(
  source: Effective<EvaluationStatement>,
  name: string,
  failure: Failure,
  signal: SignalName | null,
  placed: StatementOutcome['placed'] = null,
): StatementOutcome {
  const findings: Finding[] = [];
  if (failure.code !== dependency) {
    // A method may mention what this run lacks: then it is the run's reader, not the method, who is told, as a warning.
    const severity =
      source.file === 'method' && source.overridden === null && lacking.has(failure.code) ? 'warning' : 'error';
    findings.push(
      makeFinding(failure.code, { statement: source.id, token: failure.token }, failure.message, {
        severity,
        about: name,
        fixes: failure.candidates.map((candidate) => ({
          title: `Evaluate it in ${candidate}`,
          edits: [
            failure.token === 'segment'
              ? { edit: 'replace', at: { statement: source.id, token: 'segment' }, text: candidate }
              : { edit: 'insert-after', at: { statement: source.id, token: 'window' }, text: ` in ${candidate}` },
          ],
          safe: false,
        })),
      }),
    );
  }
  return {
    source,
    name,
    failure: failure.code,
    placed,
    signal,
    quantities: [],
    method: '',
    findings,
    construction: null,
    masses: null,
    analysis: null,
  };
}

const lacking = new Set<string>(['segment-missing', 'signal-missing', 'window-outside-run', 'around-not-found']);
