import assert from 'node:assert/strict';
import { format } from '../../server/src/language/format';
import { writeStatement } from '../../server/src/language/writing/writeStatement';
import { expectFindings, expectFix, expectSilent } from './support/check';

const run = 'run "a.csv"\n';
const hex = '3f2a91c07be45d6618f0a2c49d7e5b13';
const line = `approved by "M. Ruiz" on 2026-10-02 digest ${hex}`;

describe('approved', () => {
  it('is read with its name, its day, its digest and its reason', () => {
    const { tree } = expectSilent(`${run}${line}\n  because "trial batch"\n`);
    const node = tree.statements[1]!;
    assert.deepEqual(node.statement, {
      id: 'approved',
      override: false,
      because: 'trial batch',
      notes: [],
      allows: [],
      kind: 'approved',
      by: 'M. Ruiz',
      date: '2026-10-02',
      digest: hex,
    });
    for (const token of ['by', 'date', 'digest', 'because']) assert.ok(node.tokens.has(token), token);
  });

  it('may stand for each person who approves', () => {
    const { tree } = expectSilent(`${run}${line}\n${line.replace('M. Ruiz', 'A. Berg')}\n`);
    assert.deepEqual(
      tree.statements.map(({ id }) => id),
      ['run "a.csv"', 'approved', 'approved#2'],
    );
  });

  it('is written back as it was, its digest never taken for a number', () => {
    for (const digest of [hex, '00000000000000000000000000000000', '1234567890123456789012345678e100']) {
      const text = `${run}\napproved by "M. \\"R\\"" on 2026-10-02 digest ${digest}\n  because "x"\n`;
      const { tree } = expectSilent(text);
      assert.equal(format(text), text);
      assert.equal(`${run}\n${writeStatement(tree.statements[1]!.statement!)}\n`, text);
    }
  });

  it('without a name, a day of the calendar or a whole digest is no approval, and says what is due', () => {
    const bad = (rest: string): void => void expectFindings(`${run}approved ${rest}`, ['unexpected-text']);
    bad('«on» 2026-10-02');
    bad('by «M»');
    bad('by «""» on 2026-10-02');
    bad('by "M" on «12»');
    bad('by "M" on «2026-02-30» digest');
    bad(`by "M" on 2026-10-02 digest «3f2a»`);
    bad(`by "M" on 2026-10-02 digest «${hex.toUpperCase().slice(0, 4)}» `.trimEnd());
    bad(`by "M" on 2026-10-02 digest «${hex}0»`);
  });

  it('takes no clause of an evaluation, and its reason belongs to no other statement', () => {
    expectFindings(`${run}${line}\n  «span» 10 K`, ['unknown-clause']);
    expectFindings(`${run}step First 640..800 °C\n  «because» "x"`, ['unknown-clause']);
    expectFix(`${run}${line}\n«because» "x"`, `${run}${line}\n  because "x"`);
  });
});
