import assert from 'node:assert/strict';
import type { TextDocumentEdit, WorkspaceEdit } from 'vscode-languageserver-types';
import { prepareRename, rename } from '../../server/src/features/rename';
import { TextPositions } from '../../server/src/features/positions';
import { parse } from '../../server/src/language/syntax/parse';
import { resolveProgram } from '../../server/src/language/meaning/resolveProgram';
import { examples, prefixes } from './support/examples';
import { bench } from './support/fixture';

// Invented glosses; no data is needed for names.
const method =
  'method "M"\ngiven filler in %\nstep Early 200..420 °C\nstep Late 500..560 °C\n  per dried mass after Early\nstep Both = Early + Late\nstep All 100..600 °C\n  encloses Early, Late\nlet net = Early.loss - filler\nallow window-overlap on Early because "x"\nrequire Early.loss >= 1 % * 2 as Enough\n  on Early\n';
const user =
  'run "b.csv"\nmethod "m.gloss"\nlet filler = 1 %\noverride step Early 210..420 °C\n  because "Early: see the note"\nlet twice = 2 * Early.loss # Early\n';
const stranger = 'run "c.csv"\nstep Early 1..2 °C\nlet x = Early.loss\n';
const files = { 'm.gloss': method, 'b.gloss': user, 'c.gloss': stranger };
const own = 'run "a.csv"\nmethod "m.gloss"\nlet filler = 2 %\nlet y = Ear|ly.loss\nlet z = y + 1 %\n';

/** The texts after a rename, by name; or why it was refused. */
async function renamed(
  source: string,
  to: string,
  more: Readonly<Record<string, string>> = files,
): Promise<Record<string, string> | string> {
  const at = bench(source, more);
  const answer = await rename(at.workspace, await at.document(), at.marks.cursor, to);
  if ('refused' in answer) return answer.refused;
  return applied(answer, { ...more, 'a.gloss': at.marks.text });
}

function applied(edit: WorkspaceEdit, texts: Readonly<Record<string, string>>): Record<string, string> {
  const after: Record<string, string> = {};
  for (const change of edit.documentChanges as TextDocumentEdit[]) {
    const name = change.textDocument.uri.replace('file:///lab/', '');
    const positions = new TextPositions(texts[name]);
    const edits = change.edits.map((e) => ({
      start: positions.raw(e.range.start),
      end: positions.raw(e.range.end),
      by: 'newText' in e ? e.newText : '',
    }));
    after[name] = edits
      .sort((a, b) => b.start - a.start)
      .reduce((text, e) => text.slice(0, e.start) + e.by + text.slice(e.end), texts[name]);
  }
  return after;
}

describe('rename', () => {
  it('of a name of a method reaches the method and every gloss that uses it: overrides, sums, bases, `on`, `encloses`, expressions; no text, no comment, no other gloss', async () => {
    const after = await renamed(own, 'Erste');
    assert.ok(typeof after !== 'string', String(after));
    assert.deepEqual(Object.keys(after).sort(), ['a.gloss', 'b.gloss', 'm.gloss']);
    assert.equal(after['m.gloss'], method.replaceAll('Early', 'Erste'));
    assert.equal(after['b.gloss'], user.replace('step Early', 'step Erste').replace('* Early', '* Erste'));
    assert.equal(after['a.gloss'], own.replace('Ear|ly', 'Erste'));
    // Nothing is said of the texts afterwards that was not said before.
    const codes = (m: string, gloss: string): string[] =>
      resolveProgram(parse(gloss), parse(m)).findings.map((f) => f.code);
    assert.deepEqual(codes(after['m.gloss'], after['b.gloss']), codes(method, user));
  });

  it('gives each text its version, none to one that is not open', async () => {
    const at = bench(own, files);
    const answer = (await rename(at.workspace, await at.document(), at.marks.cursor, 'Erste')) as WorkspaceEdit;
    const versions = (answer.documentChanges as TextDocumentEdit[]).map(({ textDocument: t }) => [
      t.uri.slice(-7),
      t.version,
    ]);
    assert.deepEqual(versions.sort(), [
      ['a.gloss', 1],
      ['b.gloss', null],
      ['m.gloss', null],
    ]);
  });

  it('of a value that a method asks for reaches the `let` of every run', async () => {
    const after = await renamed(own.replace('|', '').replace('let filler', 'let |filler'), 'share');
    assert.ok(typeof after !== 'string');
    assert.match(after['m.gloss'], /given share in %/);
    assert.match(after['b.gloss'], /let share = 1 %/);
    assert.match(after['a.gloss'], /let share = 2 %/);
  });

  it('of a name of the run alone stays in the run, and of a requirement as well', async () => {
    assert.deepEqual(await renamed(own.replace('|', '').replace('let y', 'let |y'), 'first_loss'), {
      'a.gloss': own.replace('|', '').replace('let y', 'let first_loss').replace('y + 1', 'first_loss + 1'),
    });
    assert.deepEqual(await renamed('run "a.csv"\nrequire 1 % <= 2 % as B|alance\n', 'Sum'), {
      'a.gloss': 'run "a.csv"\nrequire 1 % <= 2 % as Sum\n',
    });
  });

  it('of the second of two definitions changes it alone', async () => {
    const source = 'run "a.csv"\nstep A 1..2 °C\nstep A| 3..4 °C\nlet x = A.loss\n';
    assert.deepEqual(await renamed(source, 'B'), { 'a.gloss': source.replace('A|', 'B') });
  });

  it('takes names in any script, in one form of Unicode', async () => {
    const after = await renamed('run "a.csv"\nlet x| = 1\nlet y = x\n', 'e\u0301tape');
    assert.deepEqual(after, { 'a.gloss': 'run "a.csv"\nlet étape = 1\nlet y = étape\n' });
  });

  it('is asked for with the range of the name and the name', async () => {
    const at = bench('run "a.csv"\nstep First 1..2 °C\nlet x = «Fi|rst».loss\n');
    assert.deepEqual(await prepareRename(at.workspace, await at.document(), at.marks.cursor), {
      range: at.marks.ranges[0],
      placeholder: 'First',
    });
  });
});

describe('rename is refused with its reason', () => {
  it('for what is no name of the grammar', async () => {
    for (const to of ['', ' ', '2nd', 'a b', 'a-b', '_x', 'A.loss', '"A"', 'x²']) {
      assert.match(String(await renamed(own, to)), /is no name: a letter, then/, to);
    }
  });

  it('where the new name is taken in the method, in the run, or in any other gloss of the method', async () => {
    assert.match(String(await renamed(own, 'Late')), /`Late` is taken: it stands in line 4 of m\.gloss\./);
    assert.match(String(await renamed(own, 'z')), /`z` is taken: it stands in line 5\./);
    assert.match(String(await renamed(own, 'twice')), /`twice` is taken: it stands in line 6 of b\.gloss\./);
    assert.match(String(await renamed(own.replace('|', '').replace('let y', 'let |y'), 'Late')), /line 4 of m\.gloss/);
    // A gloss without the method is none of its business.
    assert.equal(typeof (await renamed(own, 'x')), 'object');
  });

  it('where a line would be read as something else', async () => {
    const divided = 'run "a.csv"\nlet n| = 3\nlet x = 12 mg/n\n';
    assert.match(String(await renamed(divided, 'K')), /With `K` line 3 would be read otherwise\./);
    assert.equal(typeof (await renamed(divided, 'k')), 'object');
  });

  it('on keywords, quantities, files, numbers, units and empty places', async () => {
    const on = async (source: string): Promise<string> => {
      const at = bench(source, files);
      const answer = await prepareRename(at.workspace, await at.document(), at.marks.cursor);
      return 'refused' in answer ? answer.refused : JSON.stringify(answer);
    };
    assert.match(await on('run "a.csv"\nst|ep A 1..2 °C\n'), /A word of the language/);
    assert.match(await on('run "a.|csv"\n'), /A file is renamed where it lies/);
    for (const source of [
      'run "a.csv"\nstep A 1..2 °|C\n',
      'run "a.csv"\nstep A 1..2 °C\n  sp|an 5 K\n',
      'run "a.csv"\nstep A 1..2 °C\nlet x = A.lo|ss\n',
      'run "a.csv"\n|\n',
      'run "a.csv" # A|\n',
    ]) {
      assert.match(await on(source), /no name here/, source);
    }
    assert.match(await on('run "a.csv"\nlet x = no|ne.loss\n'), /Nothing is called `none` yet/);
  });

  it('where the method cannot be read and may be where the name comes from', async () => {
    const source = 'run "a.csv"\nmethod "gone.gloss"\nlet x = Ear|ly.loss\n';
    assert.match(String(await renamed(source, 'Z')), /The method of this gloss cannot be read/);
    assert.equal(typeof (await renamed(source.replace('|', '').replace('let x', 'let |x'), 'Z')), 'object');
  });

  it('where a broken line mentions the name, in any of its glosses; a broken line without it does not hinder', async () => {
    const broken = { ...files, 'b.gloss': `${user}let bad = Early.loss +\n` };
    assert.match(String(await renamed(own, 'Erste', broken)), /Line 7 of b\.gloss mentions `Early` and cannot be read/);
    assert.match(String(await renamed(`${own}stepp Early 1..2 °C\n`, 'Erste')), /Line 6 mentions `Early` and cannot/);
    assert.equal(typeof (await renamed(`${own}stepp Other 1..2 °C "Early" # Early\n`, 'Erste')), 'object');
    // The name of a broken statement was read before it broke.
    assert.equal(typeof (await renamed('run "a.csv"\nstep First| 1..\nlet x = First.loss\n', 'Erste')), 'object');
  });
});

describe('rename in every prefix of the examples', () => {
  it('renames or refuses without a fault, and the text reads as before', async () => {
    let done = 0;
    for (const { text } of examples()) {
      for (const prefix of prefixes(text)) {
        const at = bench(prefix);
        const answer = await rename(at.workspace, await at.document(), at.marks.cursor, 'Renamed_here');
        if ('refused' in answer) continue;
        const after = applied(answer, { 'a.gloss': at.marks.text })['a.gloss'];
        assert.equal(parse(after).findings.length, parse(at.marks.text).findings.length, prefix);
        done += 1;
      }
    }
    assert.ok(done > 30, `${done} renames`);
  }).timeout(120_000);
});
