import assert from 'node:assert/strict';
import { SymbolKind, type DocumentSymbol } from 'vscode-languageserver-types';
import { shownValue } from '../../server/src/presentation/shown';
import { documentSymbols, flatSymbols } from '../../server/src/features/symbols';
import { workspaceSymbols } from '../../server/src/features/workspaceSymbols';
import { examples, prefixes } from './support/examples';
import { bench } from './support/fixture';
import { inventedFiles, inventedHead } from './support/invented';

const gloss = `${inventedHead}method "m.gloss"\noverride step Early 205..420 °C\n  because "invented"\nresidue Left at 600 °C\nlet double = 2 * Early.loss\nrequire Early.loss in 19..21 % as Limit\nnote "free text"\n`;

describe('symbols of a text', () => {
  it('are its statements by name or file with their clauses inside; each range holds its selection', async () => {
    const at = bench(gloss, inventedFiles);
    const symbols = documentSymbols(at.workspace, await at.document());
    assert.deepEqual(
      symbols.map(({ name, kind }) => [name, kind]),
      [
        ['a.csv', SymbolKind.File],
        ['m.gloss', SymbolKind.Module],
        ['Early', SymbolKind.Event],
        ['Left', SymbolKind.Number],
        ['double', SymbolKind.Variable],
        ['Limit', SymbolKind.Boolean],
        ['note "free text"', SymbolKind.String],
      ],
    );
    const children = (symbols[0].children ?? []).map(({ name, detail }) => [name, detail]);
    assert.deepEqual(children, [
      ['mass', '10 mg'],
      ['endothermic', 'up'],
      ['hazard', '"none: invented"'],
    ]);
    const holds = (outer: DocumentSymbol): void => {
      for (const inner of [outer.selectionRange, ...(outer.children ?? []).map(({ range }) => range)]) {
        const [a, b] = [outer.range, inner].map(({ start, end }) => [
          start.line * 1e4 + start.character,
          end.line * 1e4 + end.character,
        ]);
        assert.ok(a[0] <= b[0] && b[1] <= a[1], outer.name);
      }
      outer.children?.forEach(holds);
    };
    symbols.forEach(holds);
  });

  it('show the words of a statement while nothing is computed, then its value as the tables have it, and say where that is of an older text', async () => {
    const at = bench(gloss, inventedFiles);
    const details = async (): Promise<Record<string, string | undefined>> =>
      Object.fromEntries(documentSymbols(at.workspace, await at.document()).map(({ name, detail }) => [name, detail]));
    assert.equal((await details())['Left'], 'residue at 600 °C');
    await at.settled();
    const { snapshot } = at.workspace.results(at.uri)!;
    const value = (id: string): string => shownValue(snapshot.results.find((r) => r.id === id)!);
    const now = await details();
    assert.equal(now['Early'], `override step: loss ${value('Early.loss')}`);
    assert.equal(now['Left'], `residue: remaining ${value('Left.remaining')}`);
    assert.equal(now['double'], `let: ${value('double')}`);
    assert.match(now['Limit']!, /^require: (?:met|not met|inconclusive), \d/);
    assert.equal(now['m.gloss'], 'method');
    at.workspace.change(at.uri, 2, [{ text: `\n${gloss}` }]);
    assert.equal((await details())['Left'], `residue: remaining ${value('Left.remaining')}, of an older text`);
  });

  it('name broken statements too, by the name that was read or by their words', async () => {
    const at = bench('run "a.csv"\nstep First 1..\nfoo bar baz\n');
    const symbols = documentSymbols(at.workspace, await at.document());
    assert.deepEqual(
      symbols.map(({ name }) => name),
      ['a.csv', 'First', 'foo bar baz'],
    );
  });

  it('are flat for clients that know no other, at the same places', async () => {
    const at = bench('run "a.csv"\n  mass 1 mg\nstep First 1..2 °C\n');
    const document = await at.document();
    const symbols = documentSymbols(at.workspace, document);
    const flat = flatSymbols(document, symbols);
    assert.deepEqual(
      flat.map(({ name, location }) => [name, location.range]),
      symbols.map(({ name, range }) => [name, range]),
    );
  });
});

describe('symbols of the workspace', () => {
  it('are the named statements, files and methods of all its glosses, found by letters in order', async () => {
    const at = bench('run "a.csv"\n  sample "Clay HB-3"\nstep First 1..2 °C\n', inventedFiles);
    const names = async (query: string): Promise<string[]> =>
      (await workspaceSymbols(at.workspace, query)).map(({ name, location }) => `${location.uri.slice(12)} ${name}`);
    assert.deepEqual(
      (await names('')).sort(),
      [
        'a.gloss First',
        'a.gloss a.csv',
        'blank.gloss blank.csv',
        'm.gloss Early',
        'm.gloss Late',
        'm.gloss Two losses',
        'm.gloss sum',
      ].sort(),
    );
    assert.deepEqual(await names('eRY'), ['m.gloss Early']);
    assert.deepEqual((await names('hb-3')).sort(), ['a.gloss First', 'a.gloss a.csv']);
    assert.deepEqual(await names('yr'), []);
  });

  it('of an open text are those of the text as it stands', async () => {
    const at = bench('run "a.csv"\nstep First 1..2 °C\n');
    at.workspace.change(at.uri, 2, [{ text: 'run "a.csv"\nstep Other 1..2 °C\n' }]);
    assert.deepEqual(
      (await workspaceSymbols(at.workspace, 'ther')).map(({ name }) => name),
      ['Other'],
    );
    assert.deepEqual(await workspaceSymbols(at.workspace, 'First'), []);
  });
});

describe('symbols in every prefix of the examples', () => {
  it('are told without a fault, and none is without a name', async () => {
    let seen = 0;
    for (const { text } of examples()) {
      for (const prefix of prefixes(text)) {
        const at = bench(prefix);
        for (const symbol of documentSymbols(at.workspace, await at.document())) {
          for (const { name } of [symbol, ...(symbol.children ?? [])]) assert.ok(name.trim() !== '', prefix);
          seen += 1;
        }
      }
    }
    assert.ok(seen > 1000, `${seen} symbols`);
  }).timeout(120_000);
});
