import assert from 'node:assert/strict';
import { Counters } from '../../../server/src/base/counters';
import { success } from '../../../server/src/base/outcome';
import { BoundedMemo } from '../../../server/src/engine/boundedMemo';
import { checksOf } from '../../../server/src/evaluation/checkRun';
import { evaluateProgram } from '../../../server/src/evaluation/evaluateProgram';
import { effectiveLimit } from '../../../server/src/evaluation/limits';
import { prepareRun } from '../../../server/src/evaluation/prepareRun';
import type { FindingCode } from '../../../server/src/findings/codes';
import type { Finding } from '../../../server/src/findings/finding';
import { resolveProgram } from '../../../server/src/language/meaning/resolveProgram';
import { parse } from '../../../server/src/language/syntax/parse';
import { rawRun, type Arrays } from '../onArrays';
import type { Programme } from './curves';

/** A blank as it was measured: its columns, and the gloss of its empty crucible where it has one. */
export interface BlankData {
  readonly columns: Arrays;
  readonly gloss: string | null;
  /** Of its data text; each blank its own where absent. */
  readonly identity?: string;
}

/** Columns of a run: time and temperature of a programme with signals beside them. */
export function columns(p: Programme, signals: Arrays): Arrays {
  return [
    { signal: 'time', unit: 's', values: p.time },
    { signal: 'temperature', unit: '°C', values: p.temperature },
    ...signals,
  ];
}

/** Everything that is found on a gloss and its arrays, evaluated as the program does. Blanks in the order of the gloss. */
export function checked(data: Arrays, gloss: string, blanks: readonly BlankData[] = []): Finding[] {
  const program = resolveProgram(parse(gloss), null);
  assert.deepEqual(program.findings, [], 'the gloss of the test has findings of its own');
  const inputs = blanks.map((blank, i) => ({
    statement: program.blanks[i].id,
    data: success(rawRun(blank.columns, blank.identity ?? `blank ${i}`)),
    conditions: blank.gloss === null ? null : resolveProgram(parse(blank.gloss), null).run!.statement,
    path: program.blanks[i].statement.file,
  }));
  const memo = new BoundedMemo(200);
  const raw = rawRun(data, 'run');
  const prepared = prepareRun(program, raw, [], inputs, memo, new Counters());
  const limit = (code: FindingCode) => effectiveLimit(program, code);
  const input = { program, prepared, raw, blanks: inputs, joins: [], display: (path: string) => path, limit };
  const evaluated = evaluateProgram(
    { program, run: prepared.run, dataFindings: prepared.findings, limit, checks: checksOf(input, memo) },
    memo,
    new Counters(),
  );
  return [...evaluated.findings];
}

/** The findings of one code, of which there must be at least one, and its numbers must be in the message. */
export function fires(findings: readonly Finding[], code: FindingCode, message: RegExp, times = 1): Finding {
  const found = findings.filter((f) => f.code === code);
  assert.equal(found.length, times, `${code} ${found.length} times; there are: ${list(findings)}`);
  assert.match(found[0].message, message);
  return found[0];
}

export function silent(findings: readonly Finding[], code: FindingCode): void {
  assert.deepEqual(
    findings.filter((f) => f.code === code).map((f) => f.message),
    [],
  );
}

/** No finding at all but notes and those named. */
export function quiet(findings: readonly Finding[], but: readonly FindingCode[] = []): void {
  const rest = findings.filter((f) => f.severity !== 'note' && !but.includes(f.code));
  assert.equal(rest.length, 0, list(rest));
}

/** The text a fix would write: of its only edit. */
export function fixText(finding: Finding, index = 0): string {
  const edit = finding.fixes.at(index)?.edits.at(0);
  assert.ok(edit !== undefined && 'text' in edit, `no fix in ${finding.code}`);
  return edit.text;
}

function list(findings: readonly Finding[]): string {
  return findings.map((f) => `${f.code}: ${f.message}`).join('\n');
}
