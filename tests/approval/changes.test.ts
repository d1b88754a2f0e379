import assert from 'node:assert/strict';
import { parse } from '../../server/src/language/syntax/parse';
import { statementChanges } from '../../server/src/presentation/diff/changes';
import { aboutApprovals, byRuiz, gloss, Lab, record } from './support/lab';

type Change = (lab: Lab) => void;

/** Replaces the first of a text in a file; a change that finds nothing to change is a fault of the test. */
const swap =
  (path: string, from: string | RegExp, to: string): Change =>
  (lab) => {
    const before = lab.text(path);
    const after = before.replace(from, to);
    assert.notEqual(after, before, `${path} holds no ${String(from)}`);
    lab.put(path, after);
  };
const edit =
  (path: string, change: (text: string) => string): Change =>
  (lab) =>
    swap(path, lab.text(path), change(lab.text(path)))(lab);
const inGloss = (from: string | RegExp, to: string): Change => swap(gloss, from, to);
const inMethod = (from: string | RegExp, to: string): Change => swap('m.gloss', from, to);
const added = (line: string): Change => edit(gloss, (text) => `${text}${line}\n`);
const crlf = (text: string): string => text.replaceAll('\n', '\r\n');
const marked = (text: string): string => `\uFEFF${text}`;

// What an approval lets be (language.md, section 4: no comments, statements sorted by text, clauses by word, one blank
// between tokens, literals without exponent and outer zeros, one spelling of a unit; data by their decoded text).
const harmless: readonly (readonly [what: string, change: Change])[] = [
  ['a comment', inGloss('# Invented.', '# Invented, as is everything here.')],
  ['a comment behind a line', inGloss('let double = 2 * First.loss', 'let double = 2 * First.loss # twice')],
  ['a comment in the method', inMethod('step First', '# The loss.\nstep First')],
  ['blanks and empty lines', inGloss('\nlet double = 2 * First.loss', '\n\n\nlet  double  =  2*First.loss')],
  ['another order of statements', edit(gloss, (t) => t.replace(/(let .*\n)(require .*\n)/, '$2$1'))],
  ['another order of clauses', edit(gloss, (t) => t.replace(/( {2}mass .*\n)( {2}crucible .*\n)/, '$2$1'))],
  ['another order of the method', edit('m.gloss', (t) => t.replace(/(require .*\n)(rule .*\n)/, '$2$1'))],
  ['line ends of another system in the gloss', edit(gloss, crlf)],
  ['line ends of another system in the method', edit('m.gloss', crlf)],
  ['line ends of another system in the data', edit('series/b.csv', crlf)],
  ['line ends of another system in the record', edit(record, crlf)],
  ['a byte order mark at the gloss', edit(gloss, marked)],
  ['a byte order mark at the data', edit('series/b.csv', marked)],
  ['a zero at the end of a number', inGloss('32.0 %', '32 %')],
  ['a number with an exponent', inGloss('20.000 ± 0.010 mg', '2.0e1 ± 1e-2 mg')],
  ['another spelling of a unit', inGloss('repeatability 4 µg', 'repeatability 4 ug')],
  ['another spelling of degrees', inMethod('380..620 °C', '380 °C..620 degC')],
  ['another sign for at most', inGloss('<=', '≤')],
  ['another way to write an accent', swap(gloss, 'A. Bérg', 'A. Be\u0301rg')],
  ['what a note is about as it was, the line broken otherwise', inGloss('"\n  on First', '"\n\n  on   First')],
  ['the record with other blanks', edit(record, (t) => JSON.stringify(JSON.parse(t)))],
  ['a file that takes no part', (lab) => lab.put('series/c.csv', 'x')],
  ['a comment in the gloss of a blank', swap('blanks/z.gloss', 'run', '# Empty.\nrun')],
];

const broken = (words: RegExp): readonly [string, RegExp] => ['approval-broken', words];
const moved = (words: RegExp): readonly [string, RegExp] => ['approved-result-moved', words];

// What breaks it, with what the message must say: from what to what.
const changes: readonly (readonly [what: string, change: Change, ...found: (readonly [string, RegExp])[]])[] = [
  [
    'a window of the method',
    inMethod('380..620', '440..620'),
    broken(/step First 380..620 °C → step First 440..620 °C/),
    moved(/First\.loss from 15\.\d+ ± 0\.\d+ % \(initial\) to 14\.\d+ ± 0\.\d+ % \(initial\), -0\.\d+ %/),
  ],
  [
    'a window of an override',
    inGloss('250..800', '251..800'),
    broken(/step Whole 250..800 °C → step Whole 251..800 °C/),
    moved(/Whole\.loss from 15\.019 .* to 15\.021 /),
  ],
  [
    'a clause of the method',
    inMethod('span 12 K', 'span 12.1 K'),
    broken(/: step First 380..620 °C: span 12 K → span 12.1 K\./),
  ],
  [
    'a clause taken away',
    inMethod('  span 12 K\n', ''),
    broken(/step First 380..620 °C: span 12 K removed/),
    moved(/First\./),
  ],
  [
    'a cell of the data',
    swap('series/b.csv', '0.08333,30.833,', '0.08333,30.834,'),
    broken(/the content of run b\.csv changed, identity [0-9a-f]{8}… → [0-9a-f]{8}…/),
  ],
  [
    'a cell of the blank',
    edit('blanks/z.csv', (t) => t.replace(/,\d+\.\d+\n$/, ',0.01300\n')),
    broken(/the content of blank \.\.\/blanks\/z\.csv changed, identity/),
  ],
  [
    'another blank',
    (lab) => {
      lab.put('blanks/y.csv', lab.text('blanks/z.csv').replace('0.00000', '0.00001'));
      swap('blanks/z.gloss', '"z.csv"', '"y.csv"')(lab);
    },
    broken(/blank \.\.\/blanks\/z\.csv → \.\.\/blanks\/y\.csv, identity .*: run "z\.csv" → .*: run "y\.csv"/),
    moved(/First\.departure from/),
  ],
  [
    'what the gloss of a blank says of it',
    swap('blanks/z.gloss', 'alumina 85 µL', 'alumina 86 µL'),
    broken(/crucible alumina 85 µL, no lid → crucible alumina 86 µL, no lid/),
    moved(/First\.loss 15\.\d+ .* \(was a number, is apparent \(blank-mismatch/),
  ],
  [
    'a blank taken away',
    edit(gloss, (t) => t.replace(/blank .*\n.*\n/, '')),
    broken(/blank .* is not read now.*removed/),
    moved(/First/),
  ],
  [
    'the mass',
    inGloss('20.000 ±', '20.100 ±'),
    broken(/mass 20 ± 0\.01 mg → mass 20\.1 ± 0\.01 mg/),
    moved(/First\.loss from .* to /),
  ],
  [
    'the uncertainty of the mass',
    inGloss('± 0.010', '± 0.011'),
    broken(/mass 20 ± 0\.01 mg → mass 20 ± 0\.011 mg/),
    moved(/First\.remaining .*its standard uncertainty was 0\.0511 %, is 0\.0547 %/),
  ],
  [
    'a limit of a requirement',
    inGloss('32.0 %', '33 %'),
    broken(/require double <= 32 % as Double → require double <= 33 % as Double/),
  ],
  [
    'a limit of the method',
    inMethod('14..16', '14..15.5'),
    broken(/require First\.loss in 14..16 % as Loss → require First\.loss in 14..15\.5 % as Loss/),
  ],
  [
    'a verdict',
    inGloss('<= 32.0 %', '<= 29 %'),
    broken(/<= 32 % .* → .* <= 29 %/),
    moved(/Double from met to not met/),
  ],
  [
    'an override added',
    added('override step First 381..620 °C\n  because "x"'),
    broken(/step First 380..620 °C → step First 381..620 °C; because "x" added/),
    moved(/First\.loss from .* to /),
  ],
  [
    'the reason of an override',
    inGloss('the first part drifts', 'noise'),
    broken(/because "the first part drifts" → because "noise"/),
  ],
  ['a statement removed', inGloss(/require double.*\n/, ''), broken(/require double <= 32 % as Double removed/)],
  ['a statement added', added('step More 820..880 °C'), broken(/step More 820..880 °C added/)],
  ['a name', edit('m.gloss', (t) => t.replaceAll('as Loss', 'as Lost')), broken(/as Loss → require .* as Lost/)],
  [
    'a limit of a finding',
    inMethod('sensitive 5 %', 'sensitive 6 %'),
    broken(/sensitive 5 % because .* → rule window-edge-sensitive 6 %/),
  ],
  [
    'a limit the run overrules',
    added('rule window-edge-sensitive 7 % because "x"'),
    broken(/sensitive 5 % .* → .* 7 % because "x"/),
  ],
  ['an allowance added', added('allow gap-in-data because "x"'), broken(/allow gap-in-data because "x" added/)],
  ['a note', inGloss('ground by hand', 'ground'), broken(/note "ground by hand" → note "ground"/)],
  ['the specimen', inGloss('  mass', '  sample "S 2"\n  mass'), broken(/sample "S 2" added/)],
  [
    'a line that can no longer be read',
    inGloss('let double =', 'let double'),
    broken(/let double = 2 \* First\.loss removed.*added/),
    moved(/double/),
  ],
  [
    'the data taken away',
    (lab) => lab.put('series/b.csv', null),
    broken(/run b\.csv \(identity [0-9a-f]{8}…\) is not read now/),
    moved(/First\.loss .* is not computed now/),
  ],
  [
    'the data under another name',
    (lab) => {
      lab.put('series/c.csv', lab.text('series/b.csv'));
      inGloss('"b.csv"', '"c.csv"')(lab);
    },
    broken(/run b\.csv → c\.csv, identity .*; run "b\.csv" → run "c\.csv"/),
  ],
  [
    'the method taken away',
    (lab) => lab.put('m.gloss', null),
    broken(/require First\.loss .* removed; rule .* removed/),
    moved(/First/),
  ],
  [
    'a result in the record',
    swap(record, /"value": 15\.\d+/, '"value": 15.5'),
    broken(
      /the record series\/b\.gloss\.approved\.json or this line was changed.* its digest is [0-9a-f]{32}, the line has [0-9a-f]{32}/,
    ),
  ],
  ['a statement in the record', swap(record, '380..620', '381..620'), broken(/the record .* was changed/)],
  ['a finding in the record', swap(record, '"code": "confusing-name"', '"code": "below-noise"'), broken(/was changed/)],
  ['an identity in the record', swap(record, /"identity": "(.)/, '"identity": "0$1'), broken(/was changed/)],
  ['the digest of the line', inGloss(/digest [0-9a-f]{32}/, `digest ${'0'.repeat(32)}`), broken(/the line has 0{32}/)],
  ['the name of the line', inGloss('"M. Ruiz"', '"C. Lund"'), broken(/the record names M\. Ruiz, the line C\. Lund/)],
  [
    'the day of the line',
    inGloss('2026-10-02', '2026-10-03'),
    broken(/the record has the day 2026-10-02, the line 2026-10-03/),
  ],
  ['a reason of the line', added('  because "late"'), broken(/the record has the reason none, the line "late"/)],
  [
    'the record, no JSON any more',
    edit(record, (t) => t.slice(1)),
    broken(/is no record of an approval: it is no JSON/),
  ],
  [
    'the record without its approval',
    edit(record, (t) => t.replace('thermogloss-approval/1', 'x')),
    broken(/it holds no thermogloss-approval\/1/),
  ],
  [
    'the record taken away',
    (lab) => lab.put(record, null),
    [
      'approval-record-missing',
      /There is no file series\/b\.gloss\.approved\.json: what M\. Ruiz approved on 2026-10-02/,
    ],
  ],
];

describe('an approval', () => {
  const approved = async (): Promise<Lab> => {
    const lab = new Lab();
    inGloss('A. Berg', 'A. Bérg')(lab);
    await lab.approve();
    assert.deepEqual(aboutApprovals(await lab.checked()), []);
    return new Lab(lab.all());
  };

  for (const [what, change] of harmless) {
    it(`stands through ${what}`, async () => {
      const lab = await approved();
      change(lab);
      assert.deepEqual(aboutApprovals(await lab.checked()), []);
      assert.deepEqual(
        (await lab.states()).map(({ state }) => state),
        ['holds'],
      );
    });
  }

  for (const [what, change, ...expected] of changes) {
    it(`does not stand through ${what}, which it names`, async () => {
      const lab = await approved();
      change(lab);
      const found = aboutApprovals(await lab.checked());
      assert.equal(found.length, expected.length, found.join('\n'));
      for (const [i, [code, words]] of expected.entries()) {
        assert.ok(found[i].startsWith(`${code}: `), found[i]);
        assert.match(found[i], words);
      }
    });
  }

  it('stands in a folder that is opened from further up, for its paths begin at the gloss', async () => {
    const lab = await approved();
    const further = Object.entries(lab.all()).map(([path, text]) => [`2026/${path}`, text] as const);
    const above = new Lab(Object.fromEntries(further));
    const snapshot = await above.engine.evaluate(`/lab/2026/${gloss}`);
    assert.deepEqual(aboutApprovals((await above.approvals.checked(snapshot)).findings), []);
    assert.equal(snapshot.run?.display, '2026/series/b.csv');
  });

  it('says the same of every line, each where it stands, and only what it is about', async () => {
    const lab = await approved();
    await lab.approve({ ...byRuiz, by: 'C. Lund' });
    inMethod('span 12 K', 'span 12.1 K')(lab);
    const found = (await lab.checked()).filter((f) => f.code === 'approval-broken');
    const lines = found.map((f) => lab.text(gloss).slice(0, f.span.start).split('\n').length);
    const text = lab.text(gloss).split('\n');
    assert.deepEqual(
      lines.map((line) => /^approved by "(.*?)"/.exec(text[line - 1])?.[1]),
      ['M. Ruiz', 'C. Lund'],
    );
  });

  it('costs a gloss without one no reading of any file', async () => {
    const lab = new Lab();
    const snapshot = await lab.evaluated();
    const before = lab.host.counts.of('read');
    assert.equal(await lab.approvals.checked(snapshot), snapshot);
    assert.equal(lab.host.counts.of('read'), before);
  });
});

describe('a comparison of two revisions', () => {
  it('takes no approval for a change that could have moved a result', () => {
    const line = 'approved by "M. Ruiz" on 2026-10-02 digest 3f2a91c07be45d6618f0a2c49d7e5b13\n';
    const side = (text: string) => ({ gloss: parse(text), method: null });
    const plain = 'run "b.csv"\nstep First 380..620 °C\n';
    assert.deepEqual(statementChanges(side(plain), side(plain + line)), []);
    const moved = statementChanges(side(plain + line), side(plain.replace('380', '385')));
    assert.deepEqual(
      moved.map(({ text }) => text),
      ['step First 380..620 °C → step First 385..620 °C'],
    );
  });
});
