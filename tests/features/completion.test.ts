import assert from 'node:assert/strict';
import type { CompletionItem, CompletionList } from 'vscode-languageserver-types';
import { fullClient, plainClient, type Abilities } from '../../server/src/features/abilities';
import { completion, resolveCompletion } from '../../server/src/features/completion/completion';
import { TextPositions } from '../../server/src/features/positions';
import { findingTable } from '../../server/src/findings/table';
import { parse } from '../../server/src/language/syntax/parse';
import { statements } from '../../server/src/language/vocabulary/statements';
import { bench } from './support/fixture';
import { examples, prefixes, still } from './support/examples';
import { inventedFiles, inventedHead } from './support/invented';

/** The completion at `|` once the results are there. */
async function at(source: string, abilities: Abilities = plainClient): Promise<CompletionList> {
  const b = bench(source, inventedFiles);
  await b.settled();
  return completion(b.workspace, await b.document(), b.marks.cursor, abilities);
}

async function labels(source: string): Promise<readonly string[]> {
  return (await at(source)).items.map((i) => i.label);
}

/** The text after taking one item. */
async function taken(source: string, label: string, abilities: Abilities = plainClient): Promise<string> {
  const b = bench(source, inventedFiles);
  await b.settled();
  const list = await completion(b.workspace, await b.document(), b.marks.cursor, abilities);
  const item = list.items.find((i) => i.label === label);
  assert.ok(item?.textEdit !== undefined, list.items.map((i) => i.label).join('; '));
  const { textEdit } = item;
  const positions = new TextPositions(b.marks.text);
  const { start, end } = positions.span('range' in textEdit ? textEdit.range : textEdit.insert);
  return b.marks.text.slice(0, start) + textEdit.newText + b.marks.text.slice(end);
}

const line = (text: string): string => text.trimEnd().split('\n').at(-1)!;

describe('completion at the start of a line', () => {
  it('offers the two roles for an empty text and nothing else', async () => {
    assert.deepEqual(await labels('|'), ['run', 'method']);
  });

  it('offers what the role has, without what may stand once and stands', async () => {
    const run = await labels(`${inventedHead}st|`);
    const expected = statements.filter((s) => s.roles.includes('run') && s.kind !== 'run').map((s) => s.keyword);
    for (const word of expected) assert.ok(run.includes(word), word);
    assert.ok(!run.includes('run') && !run.includes('override'), 'there is no method to override');
    const used = await labels(`${inventedHead}programme\n  hold 5 min\nmethod "m.gloss"\n|`);
    assert.ok(!used.includes('programme') && !used.includes('method') && used.includes('override'));
    const method = await labels('method "M"\n|');
    assert.ok(method.includes('given') && !method.includes('blank') && !method.includes('mask'));
    assert.deepEqual(await labels('# run|'), []);
  });

  it('offers whole statements for what the run shows, with a free name, and none for what is evaluated', async () => {
    const empty = (await at(`${inventedHead}|`)).items.filter((i) => i.label.includes('..'));
    assert.match(empty[0]!.label, /^step Loss1 \d+\.\.\d+ °C$/);
    assert.match(empty[0]!.detail!, /^a loss of about (?:19\.9|20)/);
    assert.ok(
      empty.some((i) => i.label.startsWith('peak Endo1 ')) && empty.some((i) => i.label.startsWith('glass Glass1 ')),
    );
    const evaluated = await labels(`${inventedHead}step Loss1 200..420 °C\n|`);
    const steps = evaluated.filter((l) => l.startsWith('step Loss'));
    assert.equal(steps.length, 1, steps.join());
    assert.match(steps[0]!, /^step Loss2 /);
    const written = await taken(`${inventedHead}|`, empty[0]!.label);
    assert.deepEqual(parse(written).findings, []);
  });

  it('does not wait for a run that is not read, says that there may be more, and has it the next time', async () => {
    const b = bench(`${inventedHead}|`, inventedFiles);
    const document = await b.document();
    const first = await completion(b.workspace, document, b.marks.cursor, plainClient);
    assert.equal(first.isIncomplete, true);
    assert.ok(first.items.some((i) => i.label === 'step'));
    await b.settled();
    const second = await completion(b.workspace, document, b.marks.cursor, plainClient);
    assert.equal(second.isIncomplete, false);
    assert.ok(second.items.some((i) => i.label.startsWith('step Loss1 ')));
  });

  it('has places to fill in for clients that jump between them only', async () => {
    const source = `${inventedHead}cros|`;
    assert.equal(line(await taken(source, 'crossing')), 'crossing');
    // The blank behind the word is trimmed by `line`.
    assert.equal(line(await taken(source, 'crossing', fullClient)), 'crossing ${1:NAME} ${2:SIGNAL} = ${3:Q}');
    const list = await at(source, fullClient);
    for (const { textEdit, insertTextFormat } of list.items)
      assert.ok(textEdit !== undefined && insertTextFormat !== undefined);
    for (const { insertTextFormat, label } of (await at(source)).items) assert.equal(insertTextFormat, 1, label);
  });
});

describe('completion of windows', () => {
  it('proposes each step behind the name, says what it would give, and how it would be found', async () => {
    const { items } = await at(`${inventedHead}step First |`);
    const windows = items.filter((i) => i.kind === 23);
    assert.equal(windows.length, 4, windows.map((w) => w.label).join('; '));
    assert.match(windows[0]!.label, /^2\d\d\.\.[34]\d\d °C$/);
    assert.match(windows[0]!.detail!, /^a loss of about (?:19\.9\d?|20(?:\.0\d)?) %$/);
    assert.match(windows[1]!.label, /^around 3(?:29|30|31) °C$/);
    assert.match(windows[1]!.detail!, /^a loss of about .* %, found at 2\d\d(?:\.\d)?\.\.[34]\d\d(?:\.\d)? °C$/);
    assert.match(windows[2]!.label, /^4\d\d\.\.5\d\d °C$/);
    assert.match(windows[2]!.detail!, /^a loss of about (?:4\.9\d?|5(?:\.0\d)?) %$/);
  });

  it('gives a statement without a finding of syntax when taken, also over a window that is begun', async () => {
    const { items } = await at(`${inventedHead}step First 2|`);
    const window = items.find((i) => i.label.includes('..'))!;
    const text = await taken(`${inventedHead}step First 2|`, window.label);
    assert.equal(line(text), `step First ${window.label}`);
    assert.deepEqual(parse(text).findings, []);
  });

  it('proposes effects of the heat flow to peaks and glass steps to glass statements', async () => {
    const peaks = (await at(`${inventedHead}peak P |`)).items.filter((i) => i.kind === 23);
    assert.match(peaks[0]!.detail!, /^endothermic, peak about 3(?:29|3[01])/);
    const glass = (await at(`${inventedHead}glass Tg |`)).items.filter((i) => i.kind === 23);
    assert.equal(glass.length, 1);
    assert.match(glass[0]!.detail!, /^a step, midpoint about (?:99|10[01])/);
  });

  it('is units behind a number, segments of the run behind `in`', async () => {
    const units = await labels(`${inventedHead}step First 200..420 |`);
    assert.deepEqual(units.slice(0, 2), ['°C', 'min']);
    assert.equal(line(await taken(`${inventedHead}step First 200..420|`, '°C')), 'step First 200..420 °C');
    assert.deepEqual(await labels(`${inventedHead}step First 200..420 °C in |`), ['heating 1']);
    assert.equal(
      line(await taken(`${inventedHead}step First 200..420 °C in heating |`, 'heating 1')),
      'step First 200..420 °C in heating 1',
    );
    assert.deepEqual(await labels(`${inventedHead}step First around 330 °C |`), ['within', 'in']);
    assert.deepEqual(
      (await labels(`${inventedHead}step First around |`)).map((l) => /^\d+ °C$/.test(l)),
      [true, true],
    );
  });
});

describe('completion of clauses', () => {
  it('offers those of the head that do not stand there', async () => {
    const step = await labels(`${inventedHead}step First 200..420 °C\n  by levels\n  |`);
    assert.deepEqual(step, ['span', 'smooth', 'per', 'encloses', 'note', 'allow']);
    // One of a choice excludes the others; a repeated clause may come again.
    const crossing = await labels(`${inventedHead}crossing T95 mass = 95 %\n  falling\n  note "a"\n  |`);
    assert.deepEqual(crossing, ['first', 'last', 'per', 'note', 'allow']);
    const override = await labels(`${inventedHead}method "m.gloss"\noverride step Early 210..420 °C\n  |`);
    assert.equal(override[0], 'because');
    assert.deepEqual(await labels(`${inventedHead}nonsense\n  |`), []);
  });

  it('still offers the word that stands on the line itself', async () => {
    assert.ok((await labels(`${inventedHead}step First 200..420 °C\n  by|`)).includes('by'));
  });

  it('offers choices of several words as one and replaces what is begun of them', async () => {
    const head = `${inventedHead}peak P 280..380 °C\n  `;
    assert.deepEqual(await labels(`${head}baseline |`), ['linear', 'tangent left', 'tangent right', 'sigmoidal']);
    assert.equal(line(await taken(`${head}baseline tangent l|`, 'tangent left')), '  baseline tangent left');
    assert.deepEqual(await labels(`${head}baseline tangent |`), ['tangent left', 'tangent right']);
    assert.equal(line(await taken(`${head}per dried |`, 'dried mass after')), '  per dried mass after');
    assert.deepEqual(await labels(`${inventedHead}step S 40..90 °C\npeak P 280..380 °C\n  per dried mass after |`), [
      'S',
    ]);
  });

  it('offers units that fit behind a number, and the value that counts anyway before one', async () => {
    const head = `${inventedHead}step First 200..420 °C\n  `;
    const units = await labels(`${head}span 10 |`);
    assert.equal(units[0], 'K');
    assert.ok(units.includes('min') && !units.includes('°C') && !units.includes('mg'), units.join());
    assert.deepEqual(await labels(`${head}span |`), ['10 K']);
    assert.deepEqual(await labels(`${head}smooth |`), ['none', '5 K']);
    assert.equal((await labels('run "a.csv"\n  mass 10 |'))[0], 'mg');
    assert.equal((await labels(`${inventedHead}programme\n  heat 30 °C to 600 °C at 10 |`))[0], 'K/min');
  });

  it('knows gases, crucibles and substances, by their other names and formulas too', async () => {
    const { items } = await at('run "a.csv"\n  atmosphere carbon |');
    const gas = items.find((i) => i.label === 'carbon dioxide');
    assert.match(gas!.filterText!, /CO2/);
    assert.equal(
      line(await taken('run "a.csv"\n  atmosphere carbon d|', 'carbon dioxide')),
      '  atmosphere carbon dioxide',
    );
    assert.equal((await labels('run "a.csv"\n  atmosphere nitrogen 50 |'))[0], 'mL/min');
    assert.deepEqual(await labels('run "a.csv"\n  atmosphere nitrogen 50 mL/min |'), ['purity', 'from']);
    assert.ok((await labels('run "a.csv"\n  crucible |')).includes('alumina'));
    assert.ok((await labels('run "a.csv"\n  crucible alumina 85 |')).includes('µL'));
    assert.equal(line(await taken('run "a.csv"\n  contains quartz, dol|', 'dolomite')), '  contains quartz, dolomite');
  });

  it('reads the columns of the data file', async () => {
    const columns = (await at('run "b.csv"\ncolumns\n  mass |')).items;
    assert.deepEqual(
      columns.map((c) => [c.label, c.detail]),
      [
        ['"Zeit"', 'column 1'],
        ['column 1', 'Zeit'],
        ['"Temp./°C"', 'column 2'],
        ['column 2', 'Temp./°C, °C'],
        ['"w (mg)"', 'column 3'],
        ['column 3', 'w (mg), mg'],
      ],
    );
    assert.equal(line(await taken('run "b.csv"\ncolumns\n  mass "w|"', '"w (mg)"')), '  mass "w (mg)"');
    assert.ok((await labels('run "b.csv"\ncolumns\n  mass column 3 in |')).includes('mg'));
    assert.deepEqual(await labels('run "b.csv"\ncolumns\n  mass column |'), ['1', '2', '3']);
  });
});

describe('completion of expressions', () => {
  const head = `${inventedHead}method "m.gloss"\nstep First 200..420 °C\n`;

  it('offers names with their values, functions and molar masses where a value is due', async () => {
    const { items } = await at(`${head}let x = |`);
    const names = items.map((i) => i.label);
    for (const name of ['First', 'Early', 'Late', 'sum', 'mean', 'M']) assert.ok(names.includes(name), name);
    assert.ok(!names.includes('x'), 'it cannot read itself');
    const sum = items.find((i) => i.label === 'sum');
    assert.match(sum!.detail!, /^2[45]\.\d+ ± \d\.\d+ % \(initial\)$/);
    assert.deepEqual(await labels(`${head}let x = First.loss |`), []);
    assert.deepEqual(await labels(`${head}require First.loss |`), ['in', '<=', '>=']);
    assert.deepEqual(await labels(`${head}require First.loss in 19..21 % |`), ['as']);
  });

  it('offers the quantities behind a point with what they came to', async () => {
    const { items } = await at(`${head}let x = First.|`);
    const loss = items.find((i) => i.label === 'loss');
    // 2 mg of 10 mg left; the reference is the curve the data were made from.
    const value = /^(\d+\.\d+) ± (\d\.\d+) % \(initial\)/.exec(loss!.detail!);
    assert.ok(value !== null && Math.abs(Number(value[1]) - 20) < 4 * Number(value[2]) + 0.05, loss!.detail);
    assert.ok(items.some((i) => i.label === 'midpoint_time'));
  });

  it('offers formulas with the names of what they are', async () => {
    const { items } = await at('run "a.csv"\n  contains dolomite\nlet x = 1 % * M(|)');
    assert.equal(items[0]!.label, 'CaMg(CO3)2');
    assert.equal(items[0]!.detail, 'dolomite');
    assert.ok(items.some((i) => i.label === 'CO2' && i.detail === 'carbon dioxide'));
    assert.equal(line(await taken('run "a.csv"\nlet x = 1 % * M(CaC|', 'CaCO3')), 'let x = 1 % * M(CaCO3)');
    assert.equal(line(await taken('run "a.csv"\nlet x = 1 % * M(CaC|)', 'CaCO3')), 'let x = 1 % * M(CaCO3)');
  });
});

describe('completion of files and codes', () => {
  it('offers data to runs, empty crucibles to blanks, methods to methods, and folders on the way', async () => {
    assert.deepEqual(await labels('run "|"'), ['a.csv', 'b.csv', 'blank.csv', 'sub/', '../']);
    assert.deepEqual(await labels('run "sub/|"'), ['c.csv']);
    assert.equal(await taken('run "sub/|"', 'c.csv'), 'run "sub/c.csv"');
    assert.equal(await taken('run "a|', 'a.csv'), 'run "a.csv"');
    assert.equal(await taken('run |', 'a.csv'), 'run "a.csv"');
    const blanks = (await at('run "a.csv"\nblank "|"')).items;
    assert.deepEqual([blanks[0]!.label, blanks[0]!.detail], ['blank.gloss', 'empty crucible']);
    const methods = (await at('run "a.csv"\nmethod "|"')).items.filter((i) => i.kind === 17);
    assert.deepEqual(
      methods.map((m) => [m.label, m.detail]),
      [['m.gloss', 'Two losses']],
    );
  });

  it('offers codes that can be allowed, what is found now first, and the reason to be written', async () => {
    const source = `${inventedHead}step First 200..420 °C\nstep Second 400..560 °C\nallow |`;
    const { items } = await at(source, fullClient);
    const allowable = [...findingTable.values()].filter((r) => r.allowable).map((r) => r.code as string);
    assert.deepEqual(new Set(items.map((i) => i.label)), new Set(allowable));
    const first = items.findIndex((i) => !i.detail!.endsWith('(found now)'));
    assert.ok(items.slice(0, first).some((i) => i.label === 'window-overlap'));
    assert.equal(line(await taken(source, 'window-overlap')), 'allow window-overlap because ""');
    assert.equal(line(await taken(source, 'window-overlap', fullClient)), 'allow window-overlap because "${1:reason}"');
    assert.equal(
      line(await taken(`${inventedHead}allow window-ov|`, 'window-overlap')),
      'allow window-overlap because ""',
    );
    assert.deepEqual(await labels(`${inventedHead}step First 200..420 °C\nallow window-overlap on |`), ['First']);
  });

  it('offers codes with a limit to `rule`, their limit, and a reason', async () => {
    const codes = await labels(`${inventedHead}rule |`);
    assert.deepEqual(
      codes,
      [...findingTable.values()].filter((r) => r.limits.length > 0).map((r) => r.code),
    );
    const { limits } = findingTable.get('programme-mismatch')!;
    assert.deepEqual(await labels(`${inventedHead}rule programme-mismatch |`), [
      `${limits[0]!.value} ${limits[0]!.unit}`,
    ]);
    assert.deepEqual(await labels(`${inventedHead}rule programme-mismatch 5 |`), ['%']);
    assert.deepEqual(await labels(`${inventedHead}rule programme-mismatch 5 % |`), ['because']);
  });
});

describe('an item of a completion', () => {
  it('tells more when it is looked at, in the format the client reads', async () => {
    const b = bench(`${inventedHead}|`, inventedFiles);
    await b.settled();
    const list = await completion(b.workspace, await b.document(), b.marks.cursor, fullClient);
    const step = list.items.find((i) => i.label === 'step')!;
    assert.equal(step.documentation, undefined);
    const told = (abilities: Abilities): string => {
      const { documentation } = resolveCompletion(b.workspace, step, abilities);
      assert.ok(typeof documentation === 'object');
      return documentation.value;
    };
    assert.match(told(fullClient), /\*\*step NAME .*\n\nA loss or gain of mass[^]*```gloss\nstep First/);
    assert.ok(!told(plainClient).includes('**') && !told(plainClient).includes('```'));
    const unknown: CompletionItem = { label: 'x', data: { doc: { of: 'statement', kind: 'nothing' } } };
    assert.deepEqual(resolveCompletion(b.workspace, unknown, fullClient), unknown);
  });

  it('of everything offered resolves to words, not to nothing', async () => {
    const sources = [
      `${inventedHead}|`,
      `${inventedHead}step A 200..420 °C\n  |`,
      `${inventedHead}allow |`,
      'run "a.csv"\n  atmosphere |',
    ];
    for (const source of sources) {
      const b = bench(source, inventedFiles);
      await b.settled();
      const list = await completion(b.workspace, await b.document(), b.marks.cursor, fullClient);
      const documented = list.items.filter((i) => i.data !== undefined);
      assert.ok(documented.length > 3);
      for (const item of documented) {
        const { documentation } = resolveCompletion(b.workspace, item, fullClient);
        assert.ok(typeof documentation === 'object' && documentation.value.length > 10, item.label);
      }
    }
  });
});

describe('completion anywhere', () => {
  it('survives every prefix of the examples', async function () {
    this.timeout(120_000);
    for (const { text } of examples()) {
      for (const source of prefixes(text)) {
        const { workspace, document, cursor } = await still(source);
        const list = await completion(workspace, document, cursor, fullClient);
        for (const { textEdit, label } of list.items) {
          assert.ok(textEdit !== undefined, label);
          const { start, end } = 'range' in textEdit ? textEdit.range : textEdit.insert;
          assert.equal(start.line, cursor.line, 'an edit stays on the line');
          assert.ok(start.character <= cursor.character && end.character >= cursor.character);
        }
      }
    }
  });
});
