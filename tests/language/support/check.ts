import assert from 'node:assert/strict';
import type { Span } from '../../../server/src/base/span';
import type { Anchor, Finding, Fix, GlossRole } from '../../../server/src/findings/finding';
import { resolveProgram } from '../../../server/src/language/meaning/resolveProgram';
import type { Program } from '../../../server/src/language/program';
import { parse } from '../../../server/src/language/syntax/parse';
import { syntaxFindings } from '../../../server/src/language/syntax/syntaxFindings';
import type { Tree } from '../../../server/src/language/tree';
import { marked } from './marked';

export interface Checked {
  readonly tree: Tree;
  readonly method: Tree | null;
  readonly program: Program;
  /** Of syntax and meaning, in the order of the texts. */
  readonly findings: readonly Finding[];
}

/** Everything that is said about a gloss, and a method, before data are read. */
export function check(text: string, methodText: string | null = null): Checked {
  const tree = parse(text);
  const method = methodText === null ? null : parse(methodText);
  const program = resolveProgram(tree, method);
  const syntax = [...syntaxFindings(tree, 'gloss'), ...(method === null ? [] : syntaxFindings(method, 'method'))];
  const all = [...syntax, ...program.findings].map((finding) => ({ finding, ...locate(finding.at, tree, method) }));
  all.sort((a, b) => (a.file === b.file ? a.span.start - b.span.start : a.file === 'gloss' ? -1 : 1));
  return { tree, method, program, findings: all.map(({ finding }) => finding) };
}

/** Where an anchor stands. The token it names must exist. */
export function locate(at: Anchor, tree: Tree, method: Tree | null): { readonly file: GlossRole; readonly span: Span } {
  if ('span' in at) return at;
  for (const [file, of] of [
    ['gloss', tree],
    ['method', method],
  ] as const) {
    const node = of?.statements.find((statement) => statement.id === at.statement);
    const span = node?.tokens.get(at.token);
    if (span !== undefined) return { file, span };
  }
  throw new Error(`no token ${at.token} in ${at.statement}`);
}

/** Codes of the findings of a gloss, each at its mark, in the order of the marks' ends; and nothing else. */
export function expectFindings(
  fixture: string,
  codes: readonly string[],
  methodFixture: string | null = null,
): Checked {
  const gloss = marked(fixture);
  const method = methodFixture === null ? null : marked(methodFixture);
  const checked = check(gloss.text, method?.text ?? null);
  const texts = { gloss: gloss.text, method: method?.text ?? '' };
  const actual = checked.findings.map((finding) => {
    const { file, span } = locate(finding.at, checked.tree, checked.method);
    return [finding.code, file, span.start, texts[file].slice(span.start, span.end)];
  });
  const marks = [
    ...gloss.spans.map((span) => ['gloss', span.start, gloss.text.slice(span.start, span.end)]),
    ...(method?.spans ?? []).map((span) => ['method', span.start, method!.text.slice(span.start, span.end)]),
  ];
  assert.deepEqual(
    actual,
    marks.map((mark, i) => [codes[i], ...mark]),
    checked.findings.map((finding) => finding.message).join('\n'),
  );
  for (const finding of checked.findings) assert.match(finding.message, /^[^a-z].*[.?!]$/s, 'a sentence');
  return checked;
}

export function expectSilent(text: string, method: string | null = null): Checked {
  return expectFindings(text, [], method);
}

/** The text after a fix of the first finding, and that the finding is then gone. */
export function expectFix(fixture: string, fixed: string, which = 0, method: string | null = null): void {
  const { text } = marked(fixture);
  const checked = check(text, method);
  const finding = checked.findings[0]!;
  const fix = finding.fixes[which];
  assert.ok(fix, `${finding.code} has no such fix: ${finding.message}`);
  const after = applyFix(fix, checked);
  assert.equal(after, fixed);
  const left = check(after, method).findings.map(({ code, message }) => `${code}: ${message}`);
  assert.deepEqual(left, []);
}

export function applyFix(fix: Fix, { tree, method }: Checked): string {
  const edits = fix.edits.map((edit) => {
    if (edit.edit === 'insert-clause') {
      const node = tree.statements.find((statement) => statement.id === edit.statement)!;
      return { span: { start: node.span.end, end: node.span.end }, text: `\n  ${edit.text}` };
    }
    if (!('at' in edit)) throw new Error(`a fix of this kind is not expected here: ${edit.edit}`);
    const { file, span } = locate(edit.at, tree, method);
    assert.equal(file, 'gloss');
    return edit.edit === 'replace'
      ? { span, text: edit.text }
      : { span: { start: span.end, end: span.end }, text: edit.text };
  });
  let { text } = tree;
  for (const { span, text: by } of edits.sort((a, b) => b.span.start - a.span.start)) {
    text = text.slice(0, span.start) + by + text.slice(span.end);
  }
  return text;
}
