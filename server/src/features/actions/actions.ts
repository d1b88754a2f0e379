import type { CodeAction, CodeActionContext, Diagnostic, Range } from 'vscode-languageserver-types';
import type { Span } from '../../base/span';
import type { PlacedFinding } from '../../engine/snapshot';
import type { Abilities } from '../abilities';
import type { DiagnosticData } from '../diagnostics';
import { firstSpan, statementAt } from '../statements';
import { isCurrent, type GlossDocument, type Results, type Workspace } from '../workspace';
import { allowChange } from './allow';
import { approveAgain, isAnswered } from './approveAgain';
import { filesElsewhere, type OfferedFix } from './filesElsewhere';
import { apart, workspaceEdit, wholeLine } from './edits';
import { draftStatements, freeze, levelGround, type Rewrite } from './rewrites';

export const fixAll = 'source.fixAll.thermogloss';
export const rewrite = 'refactor.rewrite';
export const actionKinds: readonly string[] = ['quickfix', rewrite, fixAll];

interface Asked {
  readonly results: Results;
  readonly span: Span;
  readonly context: CodeActionContext;
  readonly abilities: Abilities;
}

/**
 * What may be done about a stretch of a text: the fixes of its findings, their acceptance, other ways to write what stands
 * there. Only for results of the text as it stands: what belongs to an older one would be written to the wrong place.
 */
export async function codeActions(
  workspace: Workspace,
  document: GlossDocument,
  range: Range,
  context: CodeActionContext,
  abilities: Abilities,
): Promise<CodeAction[]> {
  const results = workspace.results(document.uri);
  if (results === null || !isCurrent(document, results)) return [];
  const asked: Asked = { results, span: document.positions.span(range), context, abilities };
  const wants = (kind: string): boolean =>
    context.only === undefined || context.only.some((only) => kind === only || kind.startsWith(`${only}.`));
  const method = await unchangedMethod(workspace, results);
  const again = approving(document, asked);
  return [
    ...again.filter(({ kind }) => wants(kind!)),
    ...(wants('quickfix') ? await fixes(workspace, asked, method) : []),
    ...(wants(rewrite) ? await rewrites(document, asked) : []),
    ...(wants(fixAll) ? allSafe(asked) : []),
  ];
}

/** Once a line, however much is found there. */
function approving(document: GlossDocument, asked: Asked): CodeAction[] {
  if (!asked.abilities.approves) return [];
  const found = concerned(asked).filter(({ finding }) => isAnswered(finding));
  const { diagnostics } = asked.context;
  const of = diagnostics.filter((d) => found.some(({ finding, index }) => isOf(d, finding, index, asked.results)));
  const [first] = found;
  return approveAgain(
    document,
    first?.finding.span.start ?? asked.span.start,
    of,
    first === undefined ? rewrite : 'quickfix',
  );
}

/** Whether the method still is what the results were computed with. */
async function unchangedMethod(workspace: Workspace, { method }: Results): Promise<boolean> {
  return method !== null && (await workspace.glossAt(method.path))?.text === method.text;
}

async function fixes(workspace: Workspace, asked: Asked, method: boolean): Promise<CodeAction[]> {
  const all = concerned(asked).map(({ finding, index }) => fixesOf(workspace, asked, method, finding, index));
  return (await Promise.all(all)).flat();
}

async function fixesOf(
  workspace: Workspace,
  { results, context, abilities }: Asked,
  method: boolean,
  finding: PlacedFinding,
  index: number,
): Promise<CodeAction[]> {
  const diagnostics = context.diagnostics.filter((d) => isOf(d, finding, index, results));
  const own = [...ownFixes(results, finding), ...(await filesElsewhere(workspace, results, finding))];
  const offered = own.filter((fix) => method || fix.changes.every((c) => c.file === 'gloss'));
  const actions = offered.flatMap((fix): CodeAction[] => {
    const edit = workspaceEdit(results, fix.changes, abilities);
    if (edit === null) return [];
    const where = fix.changes.some((c) => c.file === 'method') ? ' (in the method)' : '';
    const preferred = offered.length === 1 && fix.safe ? { isPreferred: true } : {};
    return [{ title: `${fix.title}${where}`, kind: 'quickfix', diagnostics, edit, ...preferred }];
  });
  const change = allowChange(results, finding);
  const edit = change === null ? null : workspaceEdit(results, [change], abilities);
  if (edit !== null)
    actions.push({ title: `Allow ${finding.code} with a reason`, kind: 'quickfix', diagnostics, edit });
  return actions;
}

/** The fixes of a finding; an allowance that accepts nothing may go, and no number changes. */
function ownFixes({ gloss }: Results, finding: PlacedFinding): OfferedFix[] {
  const made = finding.fixes.map(({ title, safe, edits }) => ({ title, safe, changes: edits }));
  if (finding.code !== 'allow-unused' || finding.file !== 'gloss') return made;
  const { tree } = gloss;
  const node = statementAt(tree, finding.span.start);
  const last = node?.statement?.kind === 'allow' ? node.span.end : finding.span.start;
  const span = { start: wholeLine(tree.text, finding.span.start).start, end: wholeLine(tree.text, last).end };
  return [...made, { title: 'Remove this line', safe: true, changes: [{ file: 'gloss', span, text: '' }] }];
}

/** Findings on the stretch, and those whose diagnostics the client holds out. */
function concerned({ results, span, context }: Asked): { readonly finding: PlacedFinding; readonly index: number }[] {
  return results.snapshot.findings
    .map((finding, index) => ({ finding, index }))
    .filter(({ finding, index }) => {
      if (finding.allowed !== null) return false;
      const at = shownSpan(results, finding);
      const on = at.start <= span.end && span.start <= at.end;
      return on || context.diagnostics.some((d) => isOf(d, finding, index, results));
    });
}

/** What is found in the method stands, in the gloss, where the method is named. */
function shownSpan({ gloss, method }: Results, finding: PlacedFinding): Span {
  return finding.file === 'method' && method !== null ? firstSpan(gloss.tree, 'use method') : finding.span;
}

function isOf(diagnostic: Diagnostic, finding: PlacedFinding, index: number, results: Results): boolean {
  if (diagnostic.code !== finding.code) return false;
  const data = diagnostic.data as DiagnosticData | undefined;
  if (data !== undefined) return data.finding === index && data.version === results.version;
  const { start, end } = results.gloss.positions.range(shownSpan(results, finding));
  const { range } = diagnostic;
  return same(range.start, start) && same(range.end, end);
}

function same(a: Range['start'], b: Range['start']): boolean {
  return a.line === b.line && a.character === b.character;
}

async function rewrites(document: GlossDocument, { results, span, abilities }: Asked): Promise<CodeAction[]> {
  const nodes = document.tree.statements.filter((s) => s.span.start <= span.end && span.start <= s.span.end);
  const [node] = nodes;
  const found: Rewrite[] = [
    ...(await draftStatements(document)),
    // One statement at a time: over many it would be a list nobody reads.
    ...(node === undefined || nodes.length > 1
      ? []
      : [...freeze(results, node), ...(await levelGround(document, node, span))]),
  ];
  return found.flatMap(({ title, changes, disabled }): CodeAction[] => {
    if (disabled !== null)
      return abilities.disabledActions ? [{ title, kind: rewrite, disabled: { reason: disabled } }] : [];
    const edit = workspaceEdit(results, changes, abilities);
    return edit === null ? [] : [{ title, kind: rewrite, edit }];
  });
}

/** Every fix of the gloss that changes no number, at once. */
function allSafe({ results, abilities }: Asked): CodeAction[] {
  const safe = results.snapshot.findings
    .filter((finding) => finding.allowed === null)
    .flatMap((finding) => {
      const [fix, ...others] = ownFixes(results, finding).filter((f) => f.safe);
      return fix !== undefined && others.length === 0 ? [fix] : [];
    })
    .filter((fix) => fix.changes.every((change) => change.file === 'gloss'));
  const changes = apart(safe.map((fix) => fix.changes));
  const edit = changes.length === 0 ? null : workspaceEdit(results, changes, abilities);
  return edit === null ? [] : [{ title: 'Make every fix that changes no number', kind: fixAll, edit }];
}
