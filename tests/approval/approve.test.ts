import assert from 'node:assert/strict';
import { readRecord, type ApprovalRecord } from '../../server/src/approval/record';
import { aboutApprovals, byRuiz, files, gloss, Lab, record } from './support/lab';

const approvers = (lab: Lab): string[] =>
  (readRecord(lab.text(record)) as ApprovalRecord).approvers.map(({ by, on }) => `${by} ${on}`);
const lines = (lab: Lab): string[] =>
  lab
    .text(gloss)
    .split('\n')
    .filter((line) => line.startsWith('approved'));
const refused = async (lab: Lab, approver = byRuiz): Promise<string> => {
  const answer = await lab.ask(approver);
  assert.ok(!answer.ok);
  return `${answer.needs}: ${answer.message}`;
};
const with_ = (change: (text: string) => string): Lab => new Lab({ ...files, [gloss]: change(files[gloss]) });

describe('approving', () => {
  it('adds one line at the end and leaves every other byte of the gloss as it is', async () => {
    for (const text of [files[gloss], files[gloss].trimEnd(), files[gloss].replaceAll('\n', '\r\n')]) {
      const lab = new Lab({ ...files, [gloss]: text });
      const { digest } = await lab.approve();
      const eol = text.includes('\r\n') ? '\r\n' : '\n';
      const gap = /\n$/.test(text) ? '' : eol;
      assert.equal(lab.text(gloss), `${text}${gap}approved by "M. Ruiz" on 2026-10-02 digest ${digest}${eol}`);
    }
  });

  it('by a second person puts a line beside the first, with the same digest', async () => {
    const lab = new Lab();
    const first = await lab.approve();
    const second = await lab.approve({ by: 'C. Lund', on: '2026-10-04', because: null });
    assert.equal(second.digest, first.digest);
    assert.deepEqual(approvers(lab), ['M. Ruiz 2026-10-02', 'C. Lund 2026-10-04']);
    assert.equal(lines(lab).length, 2);
    assert.deepEqual(aboutApprovals(await lab.checked()), []);
  });

  it('by the same person again takes the place of that line alone', async () => {
    const lab = new Lab();
    await lab.approve();
    await lab.approve({ by: 'C. Lund', on: '2026-10-04', because: null });
    const again = await lab.approve({ by: 'm.  ruiz', on: '2026-10-05', because: 'seen again' });
    assert.deepEqual(
      again.replaced.map(({ by }) => by),
      ['M. Ruiz'],
    );
    assert.deepEqual(
      lines(lab).map((line) => line.slice(0, 33)),
      ['approved by "m.  ruiz" on 2026-10', 'approved by "C. Lund" on 2026-10-'],
    );
    assert.deepEqual(aboutApprovals(await lab.checked()), []);
  });

  it('what no longer holds replaces every line that stood for it, where the first of them was', async () => {
    const lab = new Lab();
    await lab.approve({ ...byRuiz, because: 'a trial' });
    await lab.approve({ by: 'C. Lund', on: '2026-10-04', because: null });
    lab.put(gloss, `${lab.text(gloss)}# the end\n`.replace('32.0 %', '33 %'));
    const before = lab.text(gloss);
    const { digest, replaced } = await lab.approve({ by: 'D. Moss', on: '2026-10-06', because: null });
    assert.deepEqual(
      replaced.map(({ by }) => by),
      ['M. Ruiz', 'C. Lund'],
    );
    const [head] = before.split('approved by');
    assert.equal(lab.text(gloss), `${head}approved by "D. Moss" on 2026-10-06 digest ${digest}\n# the end\n`);
    assert.deepEqual(aboutApprovals(await lab.checked()), []);
  });

  it('keeps the lines of others that hold, and replaces a broken one beside them', async () => {
    const lab = new Lab();
    await lab.approve();
    await lab.approve({ by: 'C. Lund', on: '2026-10-04', because: null });
    lab.put(gloss, lab.text(gloss).replace('on 2026-10-04', 'on 2026-10-03'));
    assert.deepEqual(
      (await lab.states()).map(({ state }) => state),
      ['holds', 'broken'],
    );
    const before = lab.text(gloss);
    const { digest, replaced } = await lab.approve({ by: 'D. Moss', on: '2026-10-06', because: null });
    assert.deepEqual(
      replaced.map(({ by, on }) => `${by} ${on}`),
      ['C. Lund 2026-10-03'],
    );
    const [head] = before.split('approved by "C. Lund"');
    assert.equal(lab.text(gloss), `${head}approved by "D. Moss" on 2026-10-06 digest ${digest}\n`);
    assert.deepEqual(approvers(lab), ['M. Ruiz 2026-10-02', 'D. Moss 2026-10-06']);
    assert.deepEqual(aboutApprovals(await lab.checked()), []);
  });

  it('gives the same record and digest for the same inputs, and another for others', async () => {
    const [a, b] = [await new Lab().approve(), await new Lab().approve()];
    assert.deepEqual([a.record, a.digest], [b.record, b.digest]);
    const other = with_((t) => t.replace('32.0 %', '33 %'));
    assert.notEqual((await other.approve()).digest, a.digest);
  });

  it('asks for a reason where an error stands, a requirement is not met or inconclusive, and takes it then', async () => {
    const cases: readonly (readonly [Lab, RegExp])[] = [
      [with_((t) => t.replace('<= 32.0 %', '<= 29 %')), /^reason: .*with a reason only: line 17: requirement-not-met$/],
      [with_((t) => t.replace('<= 32.0 %', '<= 30.03 %')), /line 17: requirement-inconclusive$/],
      [with_((t) => `${t}step More 2000..2100 °C\n`), /line 20: window-outside-run$/],
      [
        new Lab({ ...files, 'm.gloss': files['m.gloss'].replace('14..16', '1..2') }),
        /with a reason only: m\.gloss line 6: requirement-not-met$/,
      ],
      [with_((t) => `${t}require More.loss <= 1 %\n`), /line 20: unknown-name$/],
      [
        with_((t) => `${t}step More 2000..2100 °C\nrequire More.loss <= 1 % as Little\n`),
        /line 20: window-outside-run; Little is not evaluated$/,
      ],
      [with_((t) => `${t}stepp More 700..800 °C\n`), /line 20: unknown-statement$/],
    ];
    for (const [lab, words] of cases) {
      assert.match(await refused(lab), words);
      await lab.approve({ ...byRuiz, because: 'for a trial "only"' });
      assert.match(lab.text(gloss), /digest [0-9a-f]{32}\n {2}because "for a trial \\"only\\""\n$/);
      assert.deepEqual(aboutApprovals(await lab.checked()), []);
    }
  });

  it('asks for none where what stands was allowed with one, nor for warnings and notes', async () => {
    const allowed = with_((t) => `${t.replace('<= 32.0 %', '<= 29 %')}allow requirement-not-met because "a trial"\n`);
    assert.equal((await allowed.ask(byRuiz)).ok, true);
    const warned = with_((t) => `${t}allow gap-in-data because "none"\n`);
    assert.ok((await warned.checked()).some((f) => f.severity === 'warning'));
    assert.equal((await warned.ask(byRuiz)).ok, true);
  });

  it('does not ask for a reason because of the approval that it renews', async () => {
    const lab = new Lab();
    await lab.approve();
    lab.put('m.gloss', lab.text('m.gloss').replace('span 12 K', 'span 12.1 K'));
    assert.equal(aboutApprovals(await lab.checked()).length, 1);
    assert.equal((await lab.ask(byRuiz)).ok, true);
  });

  it('is refused, with or without a reason, where there is nothing to stand for', async () => {
    const because = { ...byRuiz, because: 'a trial' };
    const missing = new Lab(files);
    missing.put('series/b.csv', null);
    assert.match(
      await refused(missing, because),
      /^other: .* has no run that can be read: There is no file series\/b\.csv/,
    );
    assert.match(
      await refused(new Lab({ ...files, [gloss]: files['m.gloss'] }), because),
      /is a method and has no results/,
    );
    const empty = new Lab({ ...files, [gloss]: 'run "b.csv"\n' });
    assert.match(await refused(empty, because), /evaluates nothing/);
  });

  it('refuses names, days and reasons that a line cannot hold', async () => {
    const lab = new Lab();
    assert.match(await refused(lab, { ...byRuiz, by: ' ' }), /the name is empty/);
    assert.match(await refused(lab, { ...byRuiz, by: 'M\nRuiz' }), /line end/);
    assert.match(await refused(lab, { ...byRuiz, because: '' }), /the reason is empty/);
    for (const on of ['2026-02-30', '2026-10-02"', ' 2026-10-02 ', '2026-10-02 # x', '']) {
      assert.match(await refused(lab, { ...byRuiz, on }), /no day of the calendar/, on);
    }
    await lab.approve({ ...byRuiz, by: 'M. "Mia" Ruiz \\ Ø' });
    assert.deepEqual(aboutApprovals(await lab.checked()), []);
  });
});

describe('approved-by-evaluator', () => {
  const found = async (by: string, evaluator: string | null, author: string | null): Promise<string[]> => {
    const clause = evaluator === null ? '' : `  evaluator "${evaluator}"\n`;
    const lab = new Lab({ ...files, [gloss]: files[gloss].replace('  evaluator "A. Berg"\n', clause) }, author);
    await lab.approve({ ...byRuiz, by });
    return aboutApprovals(await lab.checked());
  };

  it('is who the clause names, however the name is written', async () => {
    for (const by of ['A. Berg', 'a. berg', ' A.  Berg ']) {
      assert.match((await found(by, 'A. Berg', null)).join(), /approved-by-evaluator: .* \(the clause evaluator\)/, by);
    }
  });

  it('is nobody else, and the clause counts before what git says', async () => {
    assert.deepEqual(await found('M. Ruiz', 'A. Berg', 'M. Ruiz'), []);
  });

  it('is, without the clause, the author that git names; and nobody where git names none', async () => {
    assert.match(
      (await found('M. Ruiz', null, 'M. Ruiz')).join(),
      /author of the last change to the statements in git/,
    );
    assert.deepEqual(await found('M. Ruiz', null, 'A. Berg'), []);
    assert.deepEqual(await found('M. Ruiz', null, null), []);
  });
});
