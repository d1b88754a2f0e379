import assert from 'node:assert/strict';
import { parse } from '../../../server/src/language/syntax/parse';
import {
  edgeEdit,
  previewEdits,
  withEdits,
  type EdgeContext,
  type EdgeMoveRequest,
  type EdgeTextEdit,
} from '../../../server/src/presentation/plot/edgeEdit';
import { placeToWrite, numberIn, writtenAsTyped, writtenAt } from '../../../server/src/presentation/plot/writtenNumber';
import { evaluated, example, twoSteps } from './evaluated';

interface Tried {
  readonly edit: EdgeTextEdit;
  /** The texts after the edit; null where it was refused. */
  readonly gloss: string;
  readonly method: string;
}

interface Trial {
  readonly gloss: string;
  readonly method?: string;
  readonly data?: string;
  /** The texts as they stand when the edge is let go. */
  readonly nowGloss?: string;
  readonly nowMethod?: string;
  readonly move: Partial<EdgeMoveRequest> & { readonly statement: string };
  /** The place of the move, °C on the part the window is on. */
  readonly to?: number;
  readonly part?: string;
  readonly context?: Partial<EdgeContext>;
}

async function tried(trial: Trial): Promise<Tried> {
  const { gloss, method } = trial;
  const files: Record<string, string> = { 'a.gloss': gloss, 'a.csv': trial.data ?? twoSteps };
  if (method !== undefined) files['m.gloss'] = method;
  const { snapshot, curves } = await evaluated(files);
  const part = trial.part ?? 'heating 1';
  const time = trial.to === undefined ? 0 : curves.timeAt(part, trial.to)!;
  const request: EdgeMoveRequest = {
    edge: 'from',
    time,
    perPixel: null,
    typed: null,
    into: 'gloss',
    ...trial.move,
  };
  const [nowGloss, nowMethod] = [trial.nowGloss ?? gloss, trial.nowMethod ?? method ?? ''];
  const context: EdgeContext = {
    role: 'run',
    editable: true,
    methodEditable: true,
    drawn: snapshot,
    curves,
    present: { gloss: { tree: parse(nowGloss) }, method: method === undefined ? null : { tree: parse(nowMethod) } },
    ...trial.context,
  };
  const edit = edgeEdit(request, context);
  const of = (file: 'gloss' | 'method', text: string): string =>
    edit.ok && edit.file === file ? withEdits(text, edit.edits) : text;
  return { edit, gloss: of('gloss', nowGloss), method: of('method', nowMethod) };
}

async function becomes(trial: Trial, expected: string): Promise<EdgeTextEdit> {
  const { edit, gloss } = await tried(trial);
  assert.equal(edit.ok, true, edit.ok ? '' : edit.reason);
  assert.equal(gloss, expected);
  return edit;
}

async function isRefused(trial: Trial, words: RegExp): Promise<void> {
  const { edit } = await tried(trial);
  assert.equal(edit.ok, false);
  assert.match(edit.ok ? '' : edit.reason, words);
}

const head = 'run "a.csv"\n  mass 20 mg\n';
const step = (window: string): string => `${head}step First ${window}\n`;
const first = { statement: 'step First' };

describe('a moved edge of a written window', () => {
  it('changes its number and nothing else: unit, blanks, comment, clauses and other lines stay', async () => {
    const before = `# a remark with 200 °C\n${head}step   First   200 °C  ..  420 °C   in heating 1  # from 200\n  span 10 K\nlet x = 200 K\n`;
    const edit = await becomes(
      { gloss: before, move: first, to: 215.4 },
      before.replace('First   200 °C', 'First   215 °C'),
    );
    assert.ok(edit.ok && edit.label === 'Move the start of First to 215 °C' && edit.written === '215');
    await becomes({ gloss: before, move: { ...first, edge: 'to' }, to: 415.4 }, before.replace('..  420', '..  415'));
  });

  it('is written with the digits the text has, or those a pixel tells where these are fewer', async () => {
    const cases: readonly [string, number | null, string][] = [
      ['200', null, '215'],
      ['200', 0.01, '215'],
      ['200.0', 0.63, '215.4'],
      ['200.00', 0.63, '215.4'],
      ['200.00', 0.063, '215.38'],
      ['200.00', 1.2, '215'],
      ['200', 12, '220'],
      ['2e2', 0.1, '200'],
      ['2.00e2', 0.1, '215'],
    ];
    for (const [written, perPixel, expected] of cases) {
      const edit = await becomes(
        { gloss: step(`${written}..420 °C`), move: { ...first, perPixel }, to: 215.38 },
        step(`${expected}..420 °C`),
      );
      assert.ok(edit.ok && edit.written === expected);
    }
  });

  it('is written as it was typed, with more digits than the text had', async () => {
    await becomes({ gloss: step('200..420 °C'), move: { ...first, typed: 215.375 } }, step('215.375..420 °C'));
    await becomes({ gloss: step('200.0..420 °C'), move: { ...first, typed: 215 } }, step('215..420 °C'));
  });

  it('snapped by a pointer has the digits of its pixel, also where the view sends a value', async () => {
    await becomes(
      { gloss: step('200.00..420 °C'), move: { ...first, typed: 215.4, perPixel: 0.5 } },
      step('215.4..420 °C'),
    );
  });

  it('keeps the unit of the text: kelvin, seconds, hours', async () => {
    await becomes({ gloss: step('473 K..693 K'), move: first, to: 215 }, step('488 K..693 K'));
    await becomes({ gloss: step('1020..2340 s'), move: { ...first, time: 1100 } }, step('1100..2340 s'));
    await becomes({ gloss: step('0.28..0.65 h'), move: { ...first, time: 1098 } }, step('0.30..0.65 h'));
  });

  it('keeps the order in which a window is written, high before low', async () => {
    await becomes({ gloss: step('420..200 °C'), move: first, to: 215 }, step('420..215 °C'));
    await becomes({ gloss: step('420..200 °C'), move: { ...first, edge: 'to' }, to: 400 }, step('400..200 °C'));
  });

  it('changes nothing where the digits stay the same', async () => {
    const { edit } = await tried({ gloss: step('200..420 °C'), move: first, to: 200.3 });
    assert.ok(edit.ok && edit.edits.length === 0);
  });

  it('is found behind a byte order mark, signs of several units and Windows line ends', async () => {
    const before = step('200..420 °C').replace('20 mg', '20 mg  # µ°😀').replaceAll('\n', '\r\n');
    const after = before.replace('200', '215');
    await becomes({ gloss: before, nowGloss: before, move: first, to: 215 }, after);
    const { edit } = await tried({ gloss: `\uFEFF${before}`, move: first, to: 215 });
    assert.ok(edit.ok);
    // Offsets count from behind the mark.
    assert.equal(withEdits(before, edit.edits), after);
  });

  it('below zero keeps the minus of the text', async () => {
    const rows = Array.from({ length: 400 }, (_, i) => `${i * 6},${-100 + i},${(5 - i / 1e4).toFixed(5)}`);
    const data = `time / s,temperature / °C,mass / mg\n${rows.join('\n')}\n`;
    for (const minus of ['-', '\u2212']) {
      await becomes({ gloss: step(`${minus}50..100 °C`), data, move: first, to: -40 }, step(`${minus}40..100 °C`));
    }
    await becomes({ gloss: step('20..100 °C'), data, move: first, to: -40 }, step('-40..100 °C'));
    await becomes({ gloss: step('-50..100 °C'), data, move: first, to: 40 }, step('40..100 °C'));
  });
});

describe('a moved edge on a heat-cool-heat run', () => {
  const gloss = example('preform/pet-07.gloss').replace('pet-07.txt', 'a.csv');
  const data = example('preform/pet-07.txt');
  const trial = { gloss, data };

  it('on the cooling ramp is the start at the higher temperature, and the order of the text stays', async () => {
    const move = { statement: 'peak FromMelt' };
    await becomes({ ...trial, move, part: 'cooling 1', to: 235 }, gloss.replace('160..230', '160..235'));
    await becomes(
      { ...trial, move: { ...move, edge: 'to' }, part: 'cooling 1', to: 150 },
      gloss.replace('160..230', '150..230'),
    );
    const turned = gloss.replace('160..230', '230..160');
    await becomes(
      { ...trial, gloss: turned, move, part: 'cooling 1', to: 235 },
      turned.replace('230..160', '235..160'),
    );
  });

  it('counts minutes from the start of the segment named', async () => {
    const held = `${gloss}onset Held 0.50..2.50 min in hold 2\n  of heatflow\n`;
    const { curves } = await evaluated({ 'a.gloss': held, 'a.csv': data });
    const start = curves.parts.find((p) => p.name === 'hold 2')!.start;
    const move = { statement: 'onset Held', time: start + 66 };
    await becomes({ ...trial, gloss: held, move }, held.replace('0.50..2.50', '1.10..2.50'));
    const free = `${gloss}onset Free ${(start / 60 + 0.5).toFixed(2)}..${(start / 60 + 2.5).toFixed(2)} min\n  of heatflow\n`;
    const written = (start / 60 + 0.5).toFixed(2);
    await becomes(
      { ...trial, gloss: free, move: { statement: 'onset Free', time: start + 66 } },
      free.replace(`Free ${written}`, `Free ${((start + 66) / 60).toFixed(2)}`),
    );
  });
});

describe('a moved edge found by a rule', () => {
  it('freezes: both ends are written as numbers, the moved one as it was put, in one edit', async () => {
    const gloss = `${head}step First around 300 °C within 150 K  # found\n  span 10 K\n`;
    const { snapshot } = await evaluated({ 'a.gloss': gloss, 'a.csv': twoSteps });
    const { to } = snapshot.results.find((r) => r.name === 'First')!.window!;
    const edit = await becomes(
      { gloss, move: first, to: 231.26 },
      gloss.replace('around 300 °C within 150 K', `231.3..${to.toFixed(1)} °C`),
    );
    assert.ok(edit.ok && edit.edits.length === 1);
    await becomes(
      { gloss, move: { ...first, perPixel: 1.5 }, to: 231.26 },
      gloss.replace('around 300 °C within 150 K', `231..${to.toFixed(1)} °C`),
    );
  });

  it('of a whole segment is written before that segment', async () => {
    const gloss = `${head}onset Start in heating 1\n  of mass\n`;
    const { edit, gloss: after } = await tried({ gloss, move: { statement: 'onset Start', edge: 'to' }, to: 320 });
    assert.ok(edit.ok, edit.ok ? '' : edit.reason);
    assert.match(after, /^onset Start 30\.0\.\.320\.0 °C in heating 1$/m);
  });

  it('of a crossing without a place is written behind its level', async () => {
    const gloss = `${head}crossing T95 mass = 95 %\n  falling\n`;
    const { edit, gloss: after } = await tried({ gloss, move: { statement: 'crossing T95', edge: 'to' }, to: 420 });
    assert.ok(edit.ok, edit.ok ? '' : edit.reason);
    assert.match(after, /^crossing T95 mass = 95 % 30\.0\.\.420\.0 °C\n {2}falling$/m);
  });

  it('says in words what cannot be moved: the hull of a sum, the end of a segment', async () => {
    const sum = `${head}step A 200..420 °C\nstep B 480..750 °C\nstep Both = A + B\n`;
    await isRefused({ gloss: sum, move: { statement: 'step Both' }, to: 250 }, /first to the last edge.*A or B/);
    const end = `${head}residue Rest at end of heating 1\n`;
    await isRefused({ gloss: end, move: { statement: 'residue Rest' }, to: 900 }, /end of heating 1/);
  });

  it('the point of a residue moves by its own number', async () => {
    const gloss = `${head}residue Rest at 900 °C in heating 1\n`;
    await becomes({ gloss, move: { statement: 'residue Rest' }, to: 910 }, gloss.replace('900', '910'));
  });
});

describe('a moved edge of the method', () => {
  const method =
    'method "Two steps"\nstep First 200..420 °C  # level\n  span 12 K\nstep Around around 600 °C\ncrossing T95 mass = 95 % 200..500 °C\nresidue Rest at 900 °C in heating 1\n';
  const gloss = `${head}method "m.gloss"  # theirs\n\nlet x = First.loss * 2\n`;
  const move = { statement: 'method/step First' };

  it('becomes an override with an empty reason behind the method line, as one edit, caret in the quotes', async () => {
    const after = `${head}method "m.gloss"  # theirs\n\noverride step First 215..420 °C\n  because ""\n\nlet x = First.loss * 2\n`;
    const edit = await becomes({ gloss, method, move, to: 215 }, after);
    assert.ok(edit.ok && edit.edits.length === 1 && edit.caret !== null);
    assert.equal(after.slice(edit.caret - 9, edit.caret + 1), 'because ""');
  });

  it('keeps the segment the method names, the signal and level of a crossing, the point of a residue', async () => {
    const other = method.replace('200..420 °C', '200 °C..420 °C in heating 1');
    const of = async (statement: string, to: number): Promise<string> =>
      (await tried({ gloss, method: other, move: { statement }, to })).gloss;
    assert.match(await of('method/step First', 215), /^override step First 215 °C\.\.420 °C in heating 1$/m);
    assert.match(await of('method/crossing T95', 215), /^override crossing T95 mass = 95 % 215\.\.500 °C$/m);
    assert.match(await of('method/residue Rest', 910), /^override residue Rest at 910 °C in heating 1$/m);
  });

  it('found by a rule freezes in the override', async () => {
    const { gloss: after } = await tried({ gloss, method, move: { statement: 'method/step Around' }, to: 500 });
    assert.match(after, /^override step Around 500\.0\.\.\d{3}\.\d °C$/m);
  });

  it('is evaluated at its new place, and only the empty reason is left to be filled in', async () => {
    const { edit, gloss: after } = await tried({ gloss, method, move, to: 215 });
    const { snapshot } = await evaluated({ 'a.gloss': after, 'm.gloss': method, 'a.csv': twoSteps });
    const errors = snapshot.findings.filter((f) => f.severity === 'error').map((f) => f.code);
    assert.deepEqual(errors, ['override-without-reason']);
    assert.ok(edit.ok);
    const seen = withEdits(gloss, previewEdits(edit));
    assert.equal(seen, after.replace('because ""', 'because "preview"'));
    const preview = await evaluated({ 'a.gloss': seen, 'm.gloss': method, 'a.csv': twoSteps });
    const loss = preview.snapshot.results.find((r) => r.id === 'First.loss')!;
    assert.equal(loss.window!.from, 215);
    assert.ok(Math.abs(loss.value! - 10) < 0.05);
  });

  it('stays in the picture, and can be moved on, while its reason is empty', async () => {
    const empty = `${gloss}override step First 215..420 °C\n  because ""\n`;
    await becomes(
      { gloss: empty, method, move: { statement: 'override step First' }, to: 222 },
      empty.replace('215', '222'),
    );
  });

  it('goes behind the overrides that are there, with the line ends of the file', async () => {
    const with2 =
      `${head}method "m.gloss"\noverride step Around 500..700 °C\n  because "shorter"\nlet x = First.loss\n`.replaceAll(
        '\n',
        '\r\n',
      );
    await becomes(
      { gloss: with2, method, move, to: 215 },
      with2.replace('"shorter"\r\n', '"shorter"\r\noverride step First 215..420 °C\r\n  because ""\r\n'),
    );
  });

  it('moves the number of an override that has the window, and adds the window to one that has none', async () => {
    const statement = 'override step First';
    const own = `${gloss}override step First 210..420 °C\n  because "late"\n`;
    await becomes({ gloss: own, method, move: { statement }, to: 215 }, own.replace('210', '215'));
    const bare = `${gloss}override step First\n  span 20 K\n  because "broad"\n`;
    await becomes(
      { gloss: bare, method, move: { statement }, to: 215 },
      bare.replace('step First\n', 'step First 215..420 °C\n'),
    );
  });

  it('goes into the method by choice, and leaves the gloss alone', async () => {
    const {
      edit,
      gloss: after,
      method: changed,
    } = await tried({ gloss, method, move: { ...move, into: 'method' }, to: 215 });
    assert.ok(edit.ok && edit.file === 'method' && edit.caret === null);
    assert.equal(after, gloss);
    assert.equal(changed, method.replace('200..420', '215..420'));
    await isRefused(
      { gloss, method, move: { ...move, into: 'method' }, to: 215, context: { methodEditable: false } },
      /method cannot be edited/,
    );
  });

  it('is the text itself where the method is in view, and stands in the run where that overrides it', async () => {
    const context = { role: 'method' as const };
    const { method: changed } = await tried({ gloss, method, move, to: 215, context });
    assert.equal(changed, method.replace('200..420', '215..420'));
    const own = `${gloss}override step First 210..420 °C\n  because "late"\n`;
    await isRefused(
      { gloss: own, method, move: { statement: 'override step First' }, to: 215, context },
      /overrides First/,
    );
  });
});

describe('a move that cannot be written', () => {
  const gloss = step('200..420 °C');

  it('is refused in words: read-only, unknown, past the other end, onto it, out of the segment', async () => {
    await isRefused({ gloss, move: first, to: 215, context: { editable: false } }, /cannot be edited/);
    await isRefused({ gloss, move: { statement: 'step Gone' }, to: 215 }, /no window in this picture/);
    await isRefused({ gloss, move: first, to: 450 }, /pass the other end of First at 420 °C/);
    await isRefused({ gloss, move: { ...first, typed: 420 } }, /reach or pass/);
    await isRefused({ gloss, move: { ...first, edge: 'to' }, to: 150 }, /other end of First at 200 °C/);
    await isRefused({ gloss, move: { ...first, typed: 10 } }, /heating 1 spans 30\.0 to 1000\.0 °C/);
    await isRefused({ gloss, move: { ...first, edge: 'to', typed: 1100 } }, /would leave it/);
    await isRefused({ gloss, move: { ...first, typed: NaN } }, /no °C can be written/);
  });

  it('is refused where the window, the statement or its override changed since the picture', async () => {
    const changed = /changed since this picture/;
    await isRefused({ gloss, nowGloss: step('205..420 °C'), move: first, to: 215 }, changed);
    await isRefused({ gloss, nowGloss: step('200..430 °C'), move: first, to: 215 }, changed);
    await isRefused({ gloss, nowGloss: step('200..420 °C in heating 1'), move: first, to: 215 }, changed);
    await isRefused({ gloss, nowGloss: gloss.replace('First', 'Loss'), move: first, to: 215 }, /gone from the text/);
    await isRefused({ gloss, nowGloss: gloss.replace('200..', '200-'), move: first, to: 215 }, /gone from the text/);
    const method = 'method "m"\nstep First 200..420 °C\n';
    const of = `${head}method "m.gloss"\n`;
    const move = { statement: 'method/step First' };
    await isRefused({ gloss: of, method, nowMethod: method.replace('200', '210'), move, to: 215 }, changed);
    const over = `${of}override step First 210..420 °C\n  because "late"\n`;
    await isRefused({ gloss: of, method, nowGloss: over, move, to: 215 }, /written elsewhere/);
  });

  it('is rebased where the text went on and the statement says the same', async () => {
    const now = `# new first line\n${gloss.replace('20 mg', '20.000 ± 0.010 mg')}  span 15 K\nlet y = 3\n`;
    await becomes({ gloss, nowGloss: now, move: first, to: 215 }, now.replace('200..', '215..'));
  });
});

describe('a window that could not be evaluated', () => {
  it('can be moved back: it is drawn where it is written', async () => {
    const gloss = step('200..1400 °C');
    await becomes({ gloss, move: { ...first, edge: 'to' }, to: 420 }, step('200..420 °C'));
  });
});

describe('numbers as they are written', () => {
  it('have the place of their last digit', () => {
    for (const [text, place] of [
      ['640', 0],
      ['640.50', -2],
      ['6.4e2', 1],
      ['6.400e2', -1],
      ['− 50 °C', 0],
    ] as const) {
      assert.equal(numberIn(text)?.place, place, text);
    }
    assert.equal(numberIn('°C'), null);
  });

  it('are rounded to the coarser of digits and pixel', () => {
    assert.deepEqual(
      [
        placeToWrite(-2, null),
        placeToWrite(-2, 0.1),
        placeToWrite(-2, 0.99),
        placeToWrite(-2, 1),
        placeToWrite(0, 0.01),
        placeToWrite(0, 25),
      ],
      [-2, -1, -1, 0, 0, 1],
    );
    assert.deepEqual(
      [writtenAt(652.34, -1), writtenAt(652.34, 1), writtenAt(-0.04, -1), writtenAt(-4.96, -1, '−')],
      ['652.3', '650', '0.0', '−5.0'],
    );
    assert.deepEqual([writtenAsTyped(12), writtenAsTyped(0.1 + 0.2), writtenAsTyped(-3.25)], ['12', '0.3', '-3.25']);
  });
});
