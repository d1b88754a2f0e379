import assert from 'node:assert/strict';
import { fullClient, plainClient } from '../../server/src/features/abilities';
import { signatureHelp } from '../../server/src/features/signature/signature';
import { statements } from '../../server/src/language/vocabulary/statements';
import { examples, prefixes, still } from './support/examples';
import { bench } from './support/fixture';

/** The form told at `|` with the active part in marks: `step «NAME» PLACE`. */
async function told(source: string): Promise<string | null> {
  const b = bench(source);
  const help = signatureHelp(await b.document(), b.marks.cursor, fullClient);
  if (help === null) return null;
  const { label, parameters } = help.signatures[0]!;
  const active = help.activeParameter;
  if (active === null || active === undefined) return label;
  const [start, end] = parameters![active]!.label as [number, number];
  return `${label.slice(0, start)}«${label.slice(start, end)}»${label.slice(end)}`;
}

describe('signature help', () => {
  const head = 'run "a.csv"\n';

  it('tells the form of the statement and the place in it that is being written', async () => {
    assert.equal(await told(`${head}step |`), 'step «NAME» [= A + B] PLACE');
    assert.equal(await told(`${head}step Fir|`), 'step «NAME» [= A + B] PLACE');
    assert.equal(await told(`${head}step First |`), 'step NAME [= A + B] «PLACE»');
    assert.equal(await told(`${head}step Both = First + |`), 'step NAME [= «A + B»] PLACE');
    assert.equal(await told(`${head}step Both = First + Second 200..|`), 'step NAME [= A + B] «PLACE»');
    assert.equal(await told(`${head}crossing T95 |`), 'crossing NAME «SIGNAL» = Q | N % of maximum|minimum [PLACE]');
    assert.equal(
      await told(`${head}crossing T95 mass = |`),
      'crossing NAME SIGNAL = «Q» | N % of maximum|minimum [PLACE]',
    );
    assert.equal(
      await told(`${head}crossing T95 mass = 95 % |`),
      'crossing NAME SIGNAL = Q | N % of maximum|minimum [«PLACE»]',
    );
    assert.equal(await told(`${head}residue Ash at end of |`), 'residue NAME at Q [in «SEGMENT»] | end of SEGMENT');
    assert.equal(await told(`${head}let x = |`), 'let NAME = «EXPRESSION»');
    assert.equal(
      await told(`${head}require x in |`),
      'require EXPRESSION in «RANGE» | <= EXPRESSION | >= EXPRESSION [as NAME]',
    );
    assert.equal(await told(`${head}rule window-ov|`), 'rule «CODE» Q because TEXT');
    assert.equal(await told(`${head}rule window-overlap 2 |`), 'rule CODE «Q» because TEXT');
    assert.equal(await told(`${head}allow window-overlap on |`), 'allow CODE [on «NAME»] because TEXT');
    assert.equal(await told('run |'), 'run "«FILE»"');
  });

  it('has no active place where all are written', async () => {
    assert.equal(await told('run "a.csv" |'), 'run "FILE"');
  });

  it('tells a clause, part by part where it has several', async () => {
    const run = `${head}  `;
    assert.equal(await told(`${run}mass |`), 'mass «Q»');
    const gas = 'atmosphere WORDS [N % {+ WORDS N %}] [FLOW] [purity N %] [from TIME|SEGMENT]';
    assert.equal(await told(`${run}atmosphere |`), gas.replace('WORDS', '«WORDS»'));
    assert.equal(
      await told(`${run}atmosphere nitrogen 80 % + |`),
      gas.replace('[N % {+ WORDS N %}]', '«[N % {+ WORDS N %}]»'),
    );
    assert.equal(await told(`${run}atmosphere nitrogen 50 mL/min |`), gas.replace('[FLOW]', '«[FLOW]»'));
    assert.equal(await told(`${run}atmosphere nitrogen purity |`), gas.replace('[purity N %]', '«[purity N %]»'));
    assert.equal(
      await told(`${run}atmosphere air 50 mL/min from |`),
      gas.replace('[from TIME|SEGMENT]', '«[from TIME|SEGMENT]»'),
    );
    assert.equal(await told(`${run}calibrated temperature 0..300 °C u |`), 'calibrated SIGNAL RANGE «[u Q]»');
    assert.equal(await told(`${head}columns\n  mass column 3 in |`), 'mass TEXT|column N «[in UNIT]»');
    assert.equal(await told(`${head}columns\n  ion(18) |`), 'ion(N) «TEXT|column N» [in UNIT]');
    assert.equal(await told(`${head}programme\n  heat 30 °C to 600 °C at |`), 'heat [T] to T at «RATE»');
    assert.equal(
      await told(`${head}peak P 1..2 °C\n  baseline tangent |`),
      'baseline «linear|tangent left|tangent right|sigmoidal»',
    );
  });

  it('tells the innermost function with the argument being written, also of many', async () => {
    assert.equal(await told(`${head}let x = mean(|`), 'mean(«x», …)');
    assert.equal(await told(`${head}let x = mean(1 %, 2 %, |`), 'mean(x, «…»)');
    assert.equal(await told(`${head}let x = mean(1 %, abs(|`), 'abs(«x»)');
    assert.equal(await told(`${head}let x = mean(1 %, abs(2 %), |`), 'mean(x, «…»)');
    assert.equal(await told(`${head}let x = (1 % + |`), 'let NAME = «EXPRESSION»');
    assert.equal(await told(`${head}let x = 1 % * M(Ca|)`), 'M(«FORMULA»)');
    assert.equal(await told(`${head}let x = abs(1 %, |`), 'abs(x)');
  });

  it('is silent in comments, at the start of a line and under what is no statement', async () => {
    for (const source of [
      '|',
      `${head}st|`,
      `${head}# step |`,
      `${head}nonsense |`,
      `${head}nonsense\n  by |`,
      `${head}step A 1..2 °C\n  |`,
    ]) {
      assert.equal(await told(source), null, source);
    }
  });

  it('gives every parameter of the vocabulary a place in its form', async () => {
    for (const record of statements.filter((s) => s.parameters.length > 0 && s.kind !== 'run' && s.kind !== 'method')) {
      const role = record.roles.includes('run') ? head : 'method "M"\n';
      const b = bench(`${role}${record.keyword} |`);
      const help = signatureHelp(await b.document(), b.marks.cursor, fullClient);
      const { label, parameters } = help!.signatures[0]!;
      assert.deepEqual(
        parameters!.map((p) => label.slice(...(p.label as [number, number]))),
        record.parameters.map((p) => p.name),
      );
    }
  });

  it('names parameters by their text and says nothing of none for clients that know no more', async () => {
    const b = bench('run "a.csv" |');
    const help = signatureHelp(await b.document(), b.marks.cursor, plainClient)!;
    assert.deepEqual(
      help.signatures[0]!.parameters!.map((p) => p.label),
      ['FILE'],
    );
    assert.ok(!('activeParameter' in help) && !('activeParameter' in help.signatures[0]!));
  });

  it('survives every prefix of the examples', async function () {
    this.timeout(60_000);
    for (const { text } of examples()) {
      for (const source of prefixes(text)) {
        const { document, cursor } = await still(source);
        const help = signatureHelp(document, cursor, fullClient);
        const active = help?.activeParameter ?? null;
        if (help !== null && active !== null) assert.ok(active < help.signatures[0]!.parameters!.length, source);
      }
    }
  });
});
