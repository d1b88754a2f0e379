import assert from 'node:assert/strict';
import type { CodeAction, Diagnostic, TextDocumentEdit, TextEdit } from 'vscode-languageserver-types';
import { fullClient, plainClient, type Abilities } from '../../server/src/features/abilities';
import { codeActions, fixAll } from '../../server/src/features/actions/actions';
import { diagnostics } from '../../server/src/features/diagnostics';
import { TextPositions } from '../../server/src/features/positions';
import { findingTable } from '../../server/src/findings/table';
import { bench, type Bench } from './support/fixture';
import { exampleBench, examples, prefixes } from './support/examples';
import { inventedFiles, inventedHead } from './support/invented';

const withoutSnippets: Abilities = { ...fullClient, snippetEdits: false };

async function opened(source: string): Promise<Bench> {
  const b = bench(source, inventedFiles);
  await b.settled();
  return b;
}

/** Actions at the marked range, or at the cursor. */
async function actionsOf(
  b: Bench,
  only?: string[],
  held: readonly Diagnostic[] = [],
  abilities = withoutSnippets,
): Promise<CodeAction[]> {
  const [range = { start: b.marks.cursor, end: b.marks.cursor }] = b.marks.ranges;
  const context = { diagnostics: [...held], ...(only === undefined ? {} : { only }) };
  return codeActions(b.workspace, await b.document(), range, context, abilities);
}

/** The text of a document after an action. */
function made(action: CodeAction, uri: string, text: string): string {
  const positions = new TextPositions(text);
  const changes = (action.edit?.documentChanges ?? []) as TextDocumentEdit[];
  const edits = changes.filter((c) => c.textDocument.uri === uri).flatMap((c) => c.edits as TextEdit[]);
  return edits
    .map(({ range, newText }) => ({ ...positions.span(range), newText }))
    .sort((a, c) => c.start - a.start)
    .reduce((t, { start, end, newText }) => t.slice(0, start) + newText + t.slice(end), text);
}

/** Codes found in a text, among the invented files. */
async function codesIn(text: string): Promise<readonly string[]> {
  const b = await opened(text.replaceAll('|', ''));
  return b.workspace
    .results(b.uri)!
    .snapshot.findings.filter((f) => f.allowed === null)
    .map((f) => f.code);
}

const titled = (actions: readonly CodeAction[], title: string | RegExp): CodeAction => {
  const found = actions.find((a) => (typeof title === 'string' ? a.title === title : title.test(a.title)));
  assert.ok(found !== undefined, actions.map((a) => a.title).join('; '));
  return found;
};

const overlap = `${inventedHead}step First 250..|420 °C\nstep Second 400..560 °C\n`;

describe('code actions on findings', () => {
  it('make the fix of a finding, with the version of the text it was made for', async () => {
    const b = await opened(overlap);
    const held = diagnostics(b.workspace, b.workspace.results(b.uri)!);
    const fix = titled(await actionsOf(b, undefined, held), 'Move the end to 410 °C');
    assert.equal(fix.kind, 'quickfix');
    assert.deepEqual(
      fix.diagnostics?.map((d) => d.code),
      ['window-overlap'],
    );
    const [change] = fix.edit!.documentChanges as TextDocumentEdit[];
    assert.deepEqual(change?.textDocument, { uri: b.uri, version: 1 });
    const text = made(fix, b.uri, b.marks.text);
    assert.ok(text.includes('step First 250..410 °C\n'), text);
    // What is mended on one side only leaves ten of the twenty kelvins.
    assert.ok((await codesIn(text.replace('400..560', '410..560'))).every((code) => code !== 'window-overlap'));
  });

  it('also where the client holds out the diagnostic and the range lies elsewhere', async () => {
    const b = await opened(overlap);
    const held = diagnostics(b.workspace, b.workspace.results(b.uri)!).filter((d) => d.code === 'window-overlap');
    const elsewhere = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
    const actions = await codeActions(
      b.workspace,
      await b.document(),
      elsewhere,
      { diagnostics: held },
      withoutSnippets,
    );
    titled(actions, 'Move the end to 410 °C');
    titled(actions, 'Move the start to 410 °C');
  });

  it('are none for results of an older text', async () => {
    const b = await opened(overlap);
    b.workspace.change(b.uri, 2, [{ text: `${b.marks.text}# later\n` }]);
    assert.deepEqual(await actionsOf(b), []);
    await b.settled();
    assert.ok((await actionsOf(b)).length > 0);
    // A diagnostic of the older text names a finding that may be another by now.
    const stale = diagnostics(b.workspace, { ...b.workspace.results(b.uri)!, version: 1 });
    const elsewhere = { start: { line: 99, character: 0 }, end: { line: 99, character: 0 } };
    const actions = await codeActions(
      b.workspace,
      await b.document(),
      elsewhere,
      { diagnostics: stale },
      withoutSnippets,
    );
    assert.deepEqual(
      actions.filter((a) => a.kind === 'quickfix'),
      [],
    );
  });

  it('change the method where the finding is its, and only as it was read', async () => {
    const text = `${inventedHead}method| "bad.gloss"\n`;
    const bad = 'method "M"\nstep Early 200..420 °C\nstep Late 400..560 °C\n';
    const b = bench(text, { ...inventedFiles, 'bad.gloss': bad });
    await b.settled();
    const fix = titled(await actionsOf(b), 'Move the end to 410 °C (in the method)');
    const [change] = fix.edit!.documentChanges as TextDocumentEdit[];
    assert.deepEqual(change?.textDocument, { uri: 'file:///lab/bad.gloss', version: null });
    assert.ok(made(fix, 'file:///lab/bad.gloss', bad).includes('200..410 °C'));
  });

  it('are edits without versions for a client that knows no others', async () => {
    const b = await opened(overlap);
    const fix = titled(
      await actionsOf(b, undefined, [], { ...plainClient, documentChanges: false }),
      'Move the end to 410 °C',
    );
    assert.equal(fix.edit!.documentChanges, undefined);
    assert.deepEqual(
      fix.edit!.changes![b.uri]?.map((e) => e.newText),
      ['250..410 °C'],
    );
  });

  it('add a missing reason to be written', async () => {
    const rule = await opened(`${inventedHead}rule window-overlap 2 K|`);
    const add = titled(await actionsOf(rule), 'Add a reason to be written');
    assert.ok(made(add, rule.uri, rule.marks.text).endsWith('rule window-overlap 2 K because ""'));
    const override = await opened(`${inventedHead}method "m.gloss"\noverride step| Early 210..420 °C\n`);
    const line = titled(await actionsOf(override), 'Add a line for the reason');
    assert.ok(made(line, override.uri, override.marks.text).includes('210..420 °C\n  because ""\n'));
  });
});

describe('allowing a finding', () => {
  it('is a clause of its statement with a reason to be written, and then accepts it', async () => {
    const b = await opened(`${inventedHead}step First 250..|420 °C\n    span 12 K\nstep Second 400..560 °C\n`);
    const allow = titled(await actionsOf(b), 'Allow window-overlap with a reason');
    const text = made(allow, b.uri, b.marks.text);
    assert.ok(text.includes('    span 12 K\n    allow window-overlap because ""\nstep Second'), text);
    const written = await codesIn(text.replace('""', '"shared on purpose"'));
    assert.equal(written.filter((code) => code === 'window-overlap').length, 1, 'the other window still says it');
    assert.ok((await codesIn(text)).includes('unexpected-text'), 'until the reason is written, that is a finding');
  });

  it('has the cursor in the empty reason where the client can', async () => {
    const b = await opened(overlap);
    const allow = titled(await actionsOf(b, undefined, [], fullClient), 'Allow window-overlap with a reason');
    const [change] = allow.edit!.documentChanges as TextDocumentEdit[];
    assert.deepEqual(
      change!.edits.map((e) => 'snippet' in e && e.snippet.value),
      ['\n  allow window-overlap because "${1:reason}"'],
    );
  });

  it('of what the method has is a line that names the statement; of the run a line of its own', async () => {
    const bad = 'method "M"\nstep Early 200..420 °C\nstep Late 400..560 °C\n';
    const b = bench(`${inventedHead}method| "bad.gloss"\n`, { ...inventedFiles, 'bad.gloss': bad });
    await b.settled();
    const allow = titled(await actionsOf(b), 'Allow window-overlap with a reason');
    const text = made(allow, b.uri, b.marks.text);
    assert.match(text, /\nallow window-overlap on (?:Early|Late) because ""\n$/);
    const run = await opened('run "a.csv"\n  mass 1|2 mg\nstep First 200..420 °C\n');
    const mass = titled(await actionsOf(run), 'Allow mass-mismatch with a reason');
    assert.ok(made(mass, run.uri, run.marks.text).endsWith('\nallow mass-mismatch because ""\n'));
  });

  it('makes every finding of the faulty examples acceptable whose record says so, and no other', async function () {
    this.timeout(120_000);
    let tried = 0;
    for (const { name } of examples().filter((e) => e.text.includes('expects:'))) {
      const b = exampleBench('faults', name);
      await b.settled();
      const results = b.workspace.results(b.uri)!;
      const document = await b.document();
      for (const finding of results.snapshot.findings.filter((f) => f.allowed === null && f.file === 'gloss')) {
        const range = results.gloss.positions.range(finding.span);
        const actions = await codeActions(b.workspace, document, range, { diagnostics: [] }, withoutSnippets);
        const allow = actions.find((a) => a.title === `Allow ${finding.code} with a reason`);
        assert.equal(
          allow !== undefined,
          findingTable.get(finding.code)!.allowable && finding.code !== 'allow-unused',
          finding.code,
        );
        if (allow === undefined) continue;
        const text = made(allow, b.uri, b.marks.text).replace('because ""', 'because "tried"');
        const after = exampleBench('faults', name, text.replaceAll('|', ''));
        await after.settled();
        const { findings } = after.workspace.results(after.uri)!.snapshot;
        assert.ok(!findings.some((f) => f.code === 'allow-unused'), `${name}: ${finding.code} is accepted by it`);
        assert.ok(
          findings.some((f) => f.code === finding.code && f.allowed === 'tried'),
          `${name}: ${finding.code}`,
        );
        tried += 1;
      }
    }
    assert.ok(tried > 15, `${tried}`);
  });
});

describe('fixing all that is safe', () => {
  it('removes what is ignored and what accepts nothing, and changes no number', async () => {
    const source = `${inventedHead}step First 200..420 °C\n  span 12 K\n  span 14 K\n  allow window-overlap because "a"\nallow window-overlap because "b"\n  note "of it"\n|`;
    const b = await opened(source);
    const [all] = await actionsOf(b, ['source.fixAll']);
    assert.equal(all?.kind, fixAll);
    const text = made(all!, b.uri, b.marks.text);
    assert.equal(text, `${inventedHead}step First 200..420 °C\n  span 12 K\n`);
    const after = await opened(text);
    const value = (of: Bench) =>
      of.workspace.results(of.uri)!.snapshot.results.map((r) => [r.id, r.value, r.uncertainty]);
    assert.deepEqual(value(after), value(b));
  });

  it('leaves what a person must decide, and is not offered where nothing is safe', async () => {
    assert.deepEqual(await actionsOf(await opened(overlap), ['source']), []);
    const kinds = (await actionsOf(await opened(overlap), ['quickfix'])).map((a) => a.kind);
    assert.deepEqual(new Set(kinds), new Set(['quickfix']));
  });

  it('prefers a single safe fix only', async () => {
    const b = await opened(`${inventedHead}step First 200..420 °C\n  span 12 K\n  sp|an 14 K\n`);
    assert.equal(titled(await actionsOf(b), 'Remove this line').isPreferred, true);
    assert.ok((await actionsOf(await opened(overlap))).every((a) => a.isPreferred === undefined));
  });
});

describe('other ways to write it', () => {
  it('freeze a window that was found, with the result that it gave', async () => {
    const b = await opened(`${inventedHead}step Late |around 520 °C within 60 K\n`);
    const freeze = titled(await actionsOf(b, ['refactor']), /^Write the ends that were found: /);
    const text = made(freeze, b.uri, b.marks.text);
    assert.match(text, /^step Late 4\d\d\.\d\.\.5\d\d\.\d °C$/m);
    const loss = (of: Bench) => of.workspace.results(of.uri)!.snapshot.results.find((r) => r.id === 'Late.loss')!;
    const before = loss(b);
    const after = loss(await opened(text));
    assert.ok(Math.abs(after.value! - before.value!) < 0.5 * before.uncertainty!, `${after.value} ${before.value}`);
    assert.equal(after.window?.rule, null);
  });

  it('say why a window that was not found cannot be frozen', async () => {
    const b = await opened(`${inventedHead}step Late |around 900 °C\n`);
    assert.equal(
      titled(await actionsOf(b, ['refactor']), /^Write the ends/).disabled?.reason,
      'no ends were found around 900 °C',
    );
    assert.deepEqual(await actionsOf(b, ['refactor'], [], plainClient), []);
  });

  it('move an end to level ground and touch only its number', async () => {
    const b = await opened(`${inventedHead}step First 3|10..420  °C   # why\n`);
    const move = titled(await actionsOf(b, ['refactor']), /^Move the start to level ground at 2\d\d °C$/);
    const text = made(move, b.uri, b.marks.text);
    assert.match(text, /^step First 2\d\d\.\.420 {2}°C {3}# why$/m);
    assert.ok(!(await codesIn(text)).includes('window-edge-sensitive'));
    assert.ok((await codesIn(b.marks.text)).includes('window-edge-sensitive'));
  });

  it('say that an end is level already, or that there is no level ground in reach', async () => {
    const b = await opened(`${inventedHead}step First 2|00..420 °C\n`);
    const level = titled(await actionsOf(b, ['refactor']), 'Move the start to level ground');
    assert.equal(level.disabled?.reason, 'the mass is level at the start already');
    assert.equal(level.edit, undefined);
  });

  it('draft statements for a gloss that has a run and nothing else', async () => {
    const b = await opened('|run "a.csv"\n  endothermic up\n');
    const draft = titled(
      await actionsOf(b),
      /^Draft statements from the run: 2 steps, \d peaks?, 1 glass transition, 1 residue$/,
    );
    const text = made(draft, b.uri, b.marks.text);
    assert.ok(text.startsWith('run "a.csv"\n  endothermic up\n\n'), text);
    const after = await opened(text);
    const { findings, results } = after.workspace.results(after.uri)!.snapshot;
    assert.deepEqual(
      findings.filter((f) => f.severity === 'error').map((f) => f.message),
      [],
    );
    assert.ok(results.some((r) => r.kind === 'step' && r.state !== 'failed'));
    assert.ok((await actionsOf(after)).every((a) => !a.title.startsWith('Draft')));
  });
});

describe('code actions anywhere', () => {
  it('give texts that are read again, for every fix of the faulty examples', async function () {
    this.timeout(120_000);
    let tried = 0;
    for (const { name } of examples().filter((e) => e.text.includes('expects:'))) {
      const b = exampleBench('faults', name);
      await b.settled();
      const document = await b.document();
      const held = diagnostics(b.workspace, b.workspace.results(b.uri)!);
      const actions = await codeActions(
        b.workspace,
        document,
        document.positions.all(),
        { diagnostics: held },
        withoutSnippets,
      );
      for (const action of actions.filter((a) => a.kind === 'quickfix' && !a.title.startsWith('Allow'))) {
        const text = made(action, b.uri, b.marks.text);
        assert.notEqual(text, b.marks.text, action.title);
        const after = exampleBench('faults', name, text.replaceAll('|', ''));
        assert.deepEqual((await after.document()).tree.findings, [], `${name}: ${action.title}\n${text}`);
        tried += 1;
      }
    }
    assert.ok(tried > 5, `${tried}`);
  });

  it('survive every prefix of the examples without their data, and of a gloss with its own', async function () {
    this.timeout(120_000);
    const withData = `${overlap}method "m.gloss"\noverride step Late around 515 °C\n  because "b"\nallow no-blank because "c"\n`;
    for (const { text, files } of [
      ...examples().map((e) => ({ ...e, files: {} })),
      { text: withData, files: inventedFiles },
    ]) {
      const b = bench('', files);
      let version = 1;
      for (const prefix of prefixes(text)) {
        version += 1;
        b.workspace.change(b.uri, version, [{ text: prefix.slice(0, -1) }]);
        await b.settled();
        const document = await b.document();
        const { end } = document.positions.all();
        const actions = await codeActions(b.workspace, document, { start: end, end }, { diagnostics: [] }, fullClient);
        for (const { edit, disabled } of actions) assert.ok((edit === undefined) !== (disabled === undefined));
      }
    }
  });
});
