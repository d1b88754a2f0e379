import assert from 'node:assert/strict';
import type { Location, LocationLink } from 'vscode-languageserver-types';
import { definition } from '../../server/src/features/definition';
import { linkedNames } from '../../server/src/features/linkedNames';
import { highlights, references } from '../../server/src/features/references';
import { examples, prefixes } from './support/examples';
import { bench, marked, type Bench } from './support/fixture';

// Invented glosses; no data is needed for names.
const method = marked(
  'method "M"\ngiven filler in %\nstep «Early» 200..420 °C\nstep Late 500..560 °C\n  per dried mass after «Early»\nlet net = «Early».loss - filler\n',
);
const files = { 'm.gloss': method.text };

/** `line:column text` of each place, with the file where it is another. */
function shown(at: Bench, texts: Readonly<Record<string, string>>, places: readonly Location[]): string[] {
  return places.map(({ uri, range }) => {
    const name = uri.replace('file:///lab/', '');
    const line = (uri === at.uri ? at.marks.text : texts[name]).split('\n')[range.start.line];
    const text = line.slice(range.start.character, range.end.character);
    return `${uri === at.uri ? '' : `${name} `}${range.start.line + 1}:${range.start.character + 1} ${text}`;
  });
}

async function definedAt(source: string, more: Readonly<Record<string, string>> = files): Promise<string[]> {
  const at = bench(source, more);
  const links = await definition(at.workspace, await at.document(), at.marks.cursor);
  return shown(at, more, links.map(target));
}

function target({ targetUri, targetSelectionRange }: LocationLink): Location {
  return { uri: targetUri, range: targetSelectionRange };
}

async function referredAt(
  source: string,
  more: Readonly<Record<string, string>>,
  declaration = true,
): Promise<string[]> {
  const at = bench(source, more);
  return shown(at, more, await references(at.workspace, await at.document(), at.marks.cursor, declaration));
}

describe('the definition of a name', () => {
  it('is its statement, also from a quantity, a sum, a basis, `on` and `encloses`', async () => {
    const head = 'run "a.csv"\nstep First 1..2 °C\nstep Second 2..3 °C\n';
    for (const use of [
      'let x = Fi|rst.loss',
      'let x = mean(First.lo|ss, 1 %)',
      'step Both = |First + Second',
      'step Third 3..4 °C\n  per dried mass after First|',
      'step All 1..5 °C\n  encloses Second, F|irst',
      'note "x"\n  on F|irst',
      'allow window-overlap on |First because "x"',
      'require 2 % <= 1 * |First.loss',
    ]) {
      assert.deepEqual(await definedAt(head + use), ['2:6 First'], use);
    }
  });

  it('is a statement of the method, with the override that changes it', async () => {
    const source = 'run "a.csv"\nmethod "m.gloss"\nlet filler = 2 %\n';
    assert.deepEqual(await definedAt(`${source}let y = Ear|ly.loss\n`), ['m.gloss 3:6 Early']);
    const over = `${source}override step Early 210..420 °C\n  because "x"\nlet y = Ear|ly.loss\n`;
    assert.deepEqual(await definedAt(over), ['m.gloss 3:6 Early', '4:15 Early']);
    for (const cursor of ['|override step Early', 'over|ride step Early', 'override step Ear|ly']) {
      assert.deepEqual(await definedAt(`${source}${cursor} 210..420 °C\n  because "x"\n`), ['m.gloss 3:6 Early']);
    }
    assert.deepEqual(await definedAt(source.replace('filler', 'fil|ler')), ['m.gloss 2:7 filler']);
  });

  it('is the sum, of a part that no statement defines', async () => {
    assert.deepEqual(await definedAt('run "a.csv"\nstep Both = A + B 1..9 °C\nlet x = A|.loss\n'), ['2:13 A']);
  });

  it('is the file where it is there, and the page of a finding', async () => {
    const there = { 'a.csv': 'x', 'm.gloss': method.text };
    const file = async (source: string): Promise<string[]> => {
      const at = bench(source, there);
      return (await definition(at.workspace, await at.document(), at.marks.cursor)).map((l) => l.targetUri);
    };
    assert.deepEqual(await file('run "a.c|sv"\n'), ['file:///lab/a.csv']);
    assert.deepEqual(await file('run "b.c|sv"\n'), []);
    assert.deepEqual(await file('run "a.csv"\nmethod "|m.gloss"\n'), ['file:///lab/m.gloss']);
    assert.deepEqual(await file('run "a.csv"\nrule window-over|lap 5 % because "x"\n'), [
      'file:///docs/finding-window-overlap.md',
    ]);
    assert.deepEqual(await file('run "a.csv"\nstep A 1..2 °C\n  allow two-rate|-maxima because "x"\n'), [
      'file:///docs/finding-two-rate-maxima.md',
    ]);
  });

  it('is nothing for keywords, numbers, comments and names that nothing defines', async () => {
    for (const source of [
      'run "a.csv"\nst|ep A 1..2 °C\n',
      'run "a.csv"\nstep A 1|0..20 °C\n',
      'run "a.csv"\nstep A 1..2 °C # A|\n',
      'run "a.csv"\nlet x = no|ne\n',
    ]) {
      assert.deepEqual(await definedAt(source), [], source);
    }
  });
});

describe('references', () => {
  const first = 'run "b.csv"\nmethod "m.gloss"\nlet filler = 1 %\noverride step Early 210..420 °C\n  because "x"\n';
  const other = 'run "c.csv"\nlet filler = 3 %\nstep Early 1..2 °C\n';
  const more = { ...files, 'b.gloss': first, 'c.gloss': other };

  it('of a name of a method stand in the method and in every gloss that uses it, and in no other', async () => {
    const all = ['m.gloss 3:6 Early', 'm.gloss 5:24 Early', 'm.gloss 6:11 Early', '4:11 Early', 'b.gloss 4:15 Early'];
    const source = 'run "a.csv"\nmethod "m.gloss"\nlet filler = 2 %\nlet twice =|\n';
    const own = source.replace('=|', '= Ear|ly.loss');
    const places = await referredAt(own, more);
    assert.deepEqual(places.sort(), [...all.slice(0, 3), '4:13 Early', 'b.gloss 4:15 Early'].sort());
    const without = await referredAt(own, more, false);
    assert.deepEqual(without.sort(), places.filter((p) => p !== 'm.gloss 3:6 Early').sort());
  });

  it('are found from the method too', async () => {
    const at = bench('run "z.csv"\n', more);
    at.workspace.open('file:///lab/m.gloss', 3, method.text);
    const document = (await at.workspace.document('file:///lab/m.gloss'))!;
    const found = await references(at.workspace, document, method.ranges[0].start, true);
    assert.deepEqual(
      found.filter(({ uri }) => uri.endsWith('m.gloss')).map(({ range }) => range),
      method.ranges,
    );
    assert.deepEqual(
      found.filter(({ uri }) => !uri.endsWith('m.gloss')).map(({ uri }) => uri),
      ['file:///lab/b.gloss'],
    );
  });

  it('of a file stand in every gloss that names it', async () => {
    const found = await referredAt('run "b.c|sv"\nblank "b.csv"\n', { ...more, 'sub/d.gloss': 'run "../b.csv"\n' });
    assert.deepEqual(found.sort(), ['1:6 b.csv', '2:8 b.csv', 'b.gloss 1:6 b.csv', 'sub/d.gloss 1:6 ../b.csv'].sort());
  });
});

describe('highlights', () => {
  it('mark every place of a name in the text, written where it is defined or changed, else read', async () => {
    const at = bench(
      'run "a.csv"\nstep «First» 1..2 °C\nstep Second 2..3 °C\nstep Both = «First» + Second\nlet x = «Fi|rst».loss\n# First\nnote "First"\n',
    );
    const found = highlights(await at.document(), at.marks.cursor);
    assert.deepEqual(
      found,
      at.marks.ranges.map((range, i) => ({ range, kind: i === 0 ? 3 : 2 })),
    );
  });

  it('take a name in two forms of Unicode for one, and names that differ by capitals for two', async () => {
    const at = bench('run "a.csv"\nlet «étape» = 1\nlet x = «|e\u0301tape» + Étape\n');
    assert.deepEqual(
      highlights(await at.document(), at.marks.cursor).map(({ range }) => range),
      at.marks.ranges,
    );
  });
});

describe('linked names', () => {
  it('are those of a run alone; a name that a method shares is left to rename', async () => {
    const own = bench('run "a.csv"\nstep «First» 1..2 °C\nlet x = «Fi|rst».loss\n');
    assert.deepEqual(linkedNames(await own.document(), own.marks.cursor), { ranges: own.marks.ranges });
    const shared = bench('run "a.csv"\nmethod "m.gloss"\nlet x = Ear|ly.loss + Early.gain\n', files);
    assert.equal(linkedNames(await shared.document(), shared.marks.cursor), null);
    const hidden = bench('run "a.csv"\nmethod "gone.gloss"\nlet x = Ear|ly.loss + Early.gain\n');
    assert.equal(linkedNames(await hidden.document(), hidden.marks.cursor), null);
  });
});

describe('names in every prefix of the examples', () => {
  it('are looked for without a fault, and those found are names', async () => {
    let found = 0;
    for (const { text } of examples()) {
      for (const prefix of prefixes(text)) {
        const at = bench(prefix, files);
        const document = await at.document();
        found += (await definition(at.workspace, document, at.marks.cursor)).length;
        found += (await references(at.workspace, document, at.marks.cursor, true)).length;
        found +=
          highlights(document, at.marks.cursor).length + (linkedNames(document, at.marks.cursor)?.ranges.length ?? 0);
      }
    }
    assert.ok(found > 100, `${found} places`);
  }).timeout(120_000);
});
