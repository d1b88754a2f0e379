import assert from 'node:assert/strict';
import { fullClient, plainClient, type Abilities } from '../../server/src/features/abilities';
import { defaultSettings } from '../../server/src/features/settings';
import { hover } from '../../server/src/features/hover/hover';
import { oneGlossText } from '../../server/src/presentation/oneGloss';
import { mainResults } from '../../server/src/presentation/mainQuantities';
import { shownValue } from '../../server/src/presentation/shown';
import { bench } from './support/fixture';
import { exampleBench, examples, prefixes, still } from './support/examples';
import { inventedFiles, inventedHead } from './support/invented';

async function at(source: string, abilities: Abilities = plainClient): Promise<string | null> {
  const b = bench(source, inventedFiles);
  await b.settled();
  const shown = await hover(b.workspace, await b.document(), b.marks.cursor, abilities);
  if (shown === null) return null;
  assert.ok(typeof shown.contents === 'object' && 'kind' in shown.contents);
  const [expected] = b.marks.ranges;
  if (expected !== undefined) assert.deepEqual(shown.range, expected);
  return shown.contents.value;
}

describe('hover on a name', () => {
  it('tells its results, how the usual one was made, what it rests on and how fresh it is', async () => {
    const text = (await at(`${inventedHead}step «Fi|rst» 200..420 °C\n`))!;
    const loss = /^loss: (\d+\.\d+) ± (\d\.\d+) % \(initial\)/m.exec(text);
    // 2 mg of 10 mg went into the data.
    assert.ok(loss !== null && Math.abs(Number(loss[1]) - 20) < 5 * Number(loss[2]), text);
    for (const line of [
      /^midpoint: 3(?:29|30)\.\d/m,
      /^Definition: Mass at the start less mass at the end.*ISO 11358-1 \(from memory\)/m,
      /^Method: levels, span 10 K/m,
      /^Window: 200\.\.420 °C in heating 1$/m,
      /^Basis: initial$/m,
      /^Coverage: U = .* \(about 95 %, k = /m,
      /^Uncertainty from: /m,
      /^Edges: 420 °C moved by ±5 K: ±.* %; 200 °C moved by ±5 K: ±.* %$/m,
      /^Current \(revision 1\)\.$/m,
    ]) {
      assert.match(text, line);
    }
  });

  it('says the state and its reasons in words', async () => {
    const text = (await at(`${inventedHead}step First 200..420 °C\nstep «Sec|ond» 400..560 °C\n`))!;
    assert.match(text, /^apparent because: .+ \(Second\)$/m);
    assert.match(text, /^State: apparent: .*window-overlap \(Second\)/m);
    assert.match(text, /^Finding: Second and First overlap by 20 K/m);
    // A plain number has no reason to say.
    assert.doesNotMatch((await at(`${inventedHead}step «Fi|rst» 200..420 °C\n`))!, /because:/);
  });

  it('is the same where the name is used, with the quantity that is read', async () => {
    const head = `${inventedHead}step First 200..420 °C\n`;
    assert.match((await at(`${head}let x = «Fir|st».loss\n`))!, /^step First\n\nloss: /);
    assert.match((await at(`${head}let x = First.«mid|point»\n`))!, /^First\.midpoint = 3(?:29|30)\.\d+ ± .* °C\n/);
    assert.match((await at(`${head}let «x|» = First.loss\n`))!, /^x = 20|^x = 19/);
    assert.match((await at(`${head}let x = First.loss\nrequire «x|» in 19..21 %`))!, /^x = /);
    // A line that breaks behind the name still tells it.
    assert.match((await at(`${head}let x = Fir|st.loss +\n`))!, /^step First/);
  });

  it('says that there is no result, and what is in the way', async () => {
    const text = (await at(`${inventedHead}step «Far|» 700..800 °C\n`))!;
    assert.match(text, /failed/);
    assert.match(text, /lies outside the data: heating 1 spans 30 °C to 630 °C|window-outside-run/);
    assert.match((await at('run "none.csv"\nstep «Fa|r» 1..2 °C\n'))!, /^step Far\n\nIt has no result\./);
  });

  it('tells the age of what is shown after the text has changed, in words and by the setting', async () => {
    const b = bench(`${inventedHead}step Fi|rst 200..420 °C\n`, inventedFiles);
    await b.settled();
    const older = b.marks.text;
    const newer = older.replace('200..420', '210..420');
    b.workspace.change(b.uri, 2, [{ text: newer }]);
    const told = async (): Promise<string> => {
      const shown = await hover(b.workspace, await b.document(), b.marks.cursor, plainClient);
      return (shown!.contents as { value: string }).value;
    };
    assert.match(await told(), /^Of an older text \(revision 1\): new numbers are being computed\.$/m);
    assert.match(await told(), /^loss: /m);
    b.workspace.setSettings(b.uri, { ...defaultSettings, refresh: 'onSave' });
    assert.match(await told(), /revision 1\): new numbers are computed when the text is saved/);
    b.workspace.setSettings(b.uri, { ...defaultSettings, refresh: 'manual' });
    assert.match(await told(), /when they are asked for/);
    await b.settled();
    assert.match(await told(), /^Current \(revision 2\)\.$/m);
  });
});

describe('hover elsewhere', () => {
  it('tells a window, what it would be in the method, and what its ends matter', async () => {
    const own = (await at(`${inventedHead}step First «2|00»..420 °C\n`))!;
    assert.match(own, /^200 °C\n\nmeasures: a temperature\nin K: 473\.15 K/);
    assert.match(own, /^Moves First\.loss: .*200 °C moved by ±5 K: ±.* %/m);
    const found = (await at(`${inventedHead}step Late «around| 520 °C»\n`))!;
    assert.match(found, /^Window: 4\d\d(?:\.\d)?\.\.5\d\d(?:\.\d)? °C \(around 520 °C\) in heating 1$/m);
    const over = `${inventedHead}method "m.gloss"\noverride step Early 210..|420 °C\n  because "drier"\n`;
    assert.match((await at(over))!, /^In the method: 200\.\.420 °C$/m);
  });

  it('tells a formula with its molar mass, its uncertainty and its elements', async () => {
    const text = (await at('run "a.csv"\nlet x = 1 % * M(«Ca|CO3»)\n'))!;
    // IUPAC 2021 abridged weights: Ca 40.078(4), C 12.011(2), O 15.999(1): 100.086; u² = (0.004² + 0.002² + 0.003²)/3.
    assert.match(text, /^M\(CaCO3\) = 100\.0860 ± 0\.0031 g\/mol/);
    assert.match(text, /^O: 3 × 15\.999 g\/mol, 47\.9[56] % of the mass$/m);
    assert.match((await at('run "a.csv"\nlet x = 1 % * M(«Ph|OH»)\n'))!, /No molar mass/);
  });

  it('tells words: statements, clauses with their defaults, functions, signals, codes', async () => {
    assert.match((await at(`${inventedHead}«resi|due» Ash at 600 °C\n`))!, /residue NAME at Q/);
    const span = (await at(`${inventedHead}step First 200..420 °C\n  «sp|an 20 K»\n`))!;
    assert.match(span, /^span Q\n\nThe length of the stretch/);
    assert.match(span, /Where it is not written: 10 K; in a hold 60 s\./);
    assert.match(
      (await at(`${inventedHead}step First 200..420 °C\n  span 2|0 K\n`))!,
      /^20 K\n\nmeasures: a temperature or a temperature difference/,
    );
    assert.match((await at(`${inventedHead}let x = «me|an(1 %, 2 %)»\n`))!, /^mean\(x, …\)/);
    assert.match((await at(`${inventedHead}crossing T «ma|ss» = 95 %\n`))!, /mass of the specimen/);
    assert.match((await at(`${inventedHead}allow «window-ov|erlap» because "a"\n`))!, /accepts it/);
    assert.match(
      (await at(`${inventedHead}step First 200..420 °C\n  allow «window-|overlap» because "a"\n`))!,
      /accepts it/,
    );
    assert.match(
      (await at(`${inventedHead}step First 200..420 °C\n  per «dr|ied mass after X»\n`))!,
      /^per dried mass after/,
    );
  });

  it('tells gases, crucibles and substances where they stand in a list', async () => {
    const run = 'run "a.csv"\n';
    assert.match((await at(`${run}  atmosphere «nitrogen 80 % + ox|ygen 20 %»\n`))!, /^oxygen\n/);
    assert.match((await at(`${run}  atmosphere «nitro|gen 50 mL/min»\n`))!, /^nitrogen\n/);
    assert.match((await at(`${run}  atmosphere nitrogen 5|0 mL/min\n`))!, /nitrogen|50 mL\/min/);
    assert.match((await at(`${run}  crucible «alu|mina 85 µL, no lid»\n`))!, /^alumina\n\nup to: 1650 °C in inert gas/);
    assert.match((await at(`${run}  contains «quartz, cal|cite»\n`))!, /^calcite\n\nformula: CaCO3/);
    assert.match((await at(`${run}  contains «some|thing»\n`))!, /^contains WORDS/);
  });

  it('tells a file and how it was read, a segment, a requirement with its verdict', async () => {
    const file = (await at('run «"a.|csv"»\n'))!;
    assert.match(file, /^a\.csv\n\npoints: 1801\n/);
    assert.match(file, /decimal point/);
    assert.match((await at('run «"x.|csv"»\n'))!, /There is no such file/);
    assert.match((await at('run "a.csv"\nmethod «"m.|gloss"»\n'))!, /Method: Two losses/);
    assert.match(
      (await at(`${inventedHead}step First 200..420 °C in «heat|ing 1»\n`))!,
      /^heating 1: 30\.\d to 630\.\d °C at 10\.00 K\/min|^heating 1: 30/,
    );
    const met = (await at(`${inventedHead}step First 200..420 °C\n«requ|ire» First.loss in 19..21 %\n`))!;
    assert.match(met, /^met: (?:19\.9|20\.0)\d+ ± \d\.\d+ %\n\nRequirement: First\.loss in 19\.\.21 %/);
  });

  it('is silent in comments, between statements, on text', async () => {
    for (const source of ['|', '# run |', `${inventedHead}\n|\n`, `${inventedHead}# st|ep`])
      assert.equal(await at(source), null, source);
  });

  it('shows what a file or a gloss says as it is: nothing of it is read as Markdown', async () => {
    const evil = 'run "a.csv"\n  contains «<img src=x>|»\nnote "**x** [a](b)"\n';
    const text = await at(evil, fullClient);
    assert.ok(text === null || !text.includes('<img'), text ?? '');
    const method = 'run "a.csv"\nmethod «"e|.gloss"»\n';
    const b = bench(method, { ...inventedFiles, 'e.gloss': 'method "<b>[x](command:y)</b> `z`"\n' });
    await b.settled();
    const shown = await hover(b.workspace, await b.document(), b.marks.cursor, fullClient);
    const { value } = shown!.contents as { value: string };
    assert.ok(value.includes('&lt;b>\\[x\\](command:y)') && !value.includes('<b>'), value);
  });

  it('is Markdown for a client that reads it and plain words for others', async () => {
    const source = `${inventedHead}step «Fi|rst» 200..420 °C\n`;
    assert.match((await at(source, fullClient))!, /^\*\*step First\*\*\n\n- loss: /);
    assert.doesNotMatch((await at(source))!, /[*`]/);
  });
});

describe('a number shown on hover', () => {
  for (const [folder, name] of [
    ['limestone', 'vq217-1.gloss'],
    ['preform', 'pet-07.gloss'],
    ['limestone', 'limestone.gloss'],
  ] as const) {
    it(`of ${name} is the one the command line prints`, async () => {
      const b = exampleBench(folder, name);
      await b.settled();
      const document = await b.document();
      const { snapshot } = b.workspace.results(b.uri)!;
      const printed = oneGlossText(snapshot, { all: false })
        .split('\n')
        .map((l) => l.replace(/\s+/g, ' '));
      const main = mainResults(snapshot);
      let compared = 0;
      for (const { tokens } of document.tree.statements) {
        for (const [token, span] of tokens) {
          if (!/(?:^|\.)(?:name|quantity)$/.test(token)) continue;
          const words = document.tree.text.slice(
            (tokens.get(token.replace(/quantity$/, 'name')) ?? span).start,
            span.end,
          );
          const own = snapshot.results.filter((r) => r.id === words || (r.name === words && main.has(r.id)));
          if (own.length === 0) continue;
          const at = document.positions.position(span.start + 1);
          const shown = await hover(b.workspace, document, at, plainClient);
          const { value } = shown!.contents as { value: string };
          for (const result of own) {
            const text = shownValue(result);
            assert.ok(value.includes(text), `${result.id} ${text} in ${value}`);
            const row = printed.some((l) => l.startsWith(`${result.id} `) && l.includes(text));
            assert.ok(row, `${result.id} ${text} printed`);
            compared += 1;
          }
        }
      }
      assert.ok(name === 'limestone.gloss' ? compared === 0 : compared > 2, `${compared}`);
    });
  }
});

describe('hover anywhere', () => {
  it('survives every prefix of the examples', async function () {
    this.timeout(120_000);
    for (const { text } of examples()) {
      for (const source of prefixes(text)) {
        const { workspace, document, cursor } = await still(source);
        await hover(workspace, document, cursor, fullClient);
      }
    }
  });

  it('answers at every place of the examples with their results', async function () {
    this.timeout(120_000);
    for (const [folder, name] of [
      ['limestone', 'vq217-1.gloss'],
      ['preform', 'pet-07.gloss'],
    ] as const) {
      const b = exampleBench(folder, name);
      await b.settled();
      const document = await b.document();
      const { text } = document.tree;
      for (let offset = 0; offset <= text.length; offset += 3) {
        const shown = await hover(b.workspace, document, document.positions.position(offset), fullClient);
        if (shown === null) continue;
        const at = document.positions.span(shown.range!);
        assert.ok(at.start <= offset && offset <= at.end);
        assert.ok((shown.contents as { value: string }).value.length > 3);
      }
    }
  });
});
