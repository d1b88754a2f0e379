import type { Finding } from '../findings/finding';
import { makeFinding } from '../findings/makeFinding';
import { findingRecord } from '../findings/table';
import type { AllowClause } from '../language/model';
import type { Program } from '../language/program';
import type { Reason } from './typedValue';

/** Which findings are accepted, and with what reason. */
export interface Acceptance {
  /** The reason a finding was allowed with; null: it stands. */
  allowed(finding: Finding): string | null;
  acceptsReason(reason: Reason): boolean;
  /** Findings for allows that accept nothing. */
  unused(): Finding[];
}

interface Allow {
  readonly code: string;
  /** Names it reaches; null: everything. */
  readonly names: readonly string[] | null;
  readonly because: string;
  readonly at: Finding['at'];
}

export function acceptance(program: Program, findings: readonly Finding[]): Acceptance {
  const allows = allowsOf(program);
  const matches = (allow: Allow, code: string, about: string | null, statement: string | null) =>
    allow.code === code &&
    (allow.names === null || allow.names.some((n) => n === about || n === statement)) &&
    findingRecord(code as Finding['code']).allowable;
  const allowed = (finding: Finding) => {
    const statement = 'statement' in finding.at ? finding.at.statement : null;
    return allows.find((a) => matches(a, finding.code, finding.about, statement))?.because ?? null;
  };
  return {
    allowed,
    acceptsReason: (reason) =>
      allows.some((a) => a.code === reason.code && (a.names === null || a.names.includes(reason.name))),
    unused: () =>
      allows
        .filter((allow) => {
          return !findings.some((f) => matches(allow, f.code, f.about, 'statement' in f.at ? f.at.statement : null));
        })
        .map((allow) => {
          const on = allow.names === null ? '' : ` on ${allow.names[0]}`;
          return makeFinding(
            'allow-unused',
            allow.at,
            `Nothing here is found as ${allow.code}${on}: this allow accepts nothing.`,
          );
        }),
  };
}

function allowsOf(program: Program): Allow[] {
  const allows: Allow[] = program.allows.map(({ statement, id }) => ({
    code: statement.code,
    names: statement.on === null ? null : [statement.on],
    because: statement.reason,
    at: { statement: id, token: 'head' },
  }));
  const clauses = (id: string, names: readonly string[], list: readonly AllowClause[]) => {
    for (const clause of list) {
      allows.push({
        code: clause.code,
        names: [...names, id],
        because: clause.because,
        at: { statement: id, token: clause.token },
      });
    }
  };
  for (const effective of program.order) {
    clauses(effective.id, [effective.statement.name, effective.statement.id], effective.allows);
  }
  for (const effective of program.requires) {
    clauses(effective.id, effective.statement.name === null ? [] : [effective.statement.name], effective.allows);
  }
  for (const group of [program.run === null ? [] : [program.run], program.blanks, program.joins, program.masks]) {
    for (const effective of group) clauses(effective.id, [], effective.allows);
  }
  return allows;
}
