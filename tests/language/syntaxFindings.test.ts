import assert from 'node:assert/strict';
import { check, expectFindings, expectFix, expectSilent } from './support/check';

const run = 'run "a.csv"\n';

describe('unknown-statement', () => {
  it('points at the first word and proposes the nearest', () => {
    expectFindings(`${run}«stepp» First 640..800 °C`, ['unknown-statement']);
    expectFix(`${run}«stepp» First 640..800 °C`, `${run}step First 640..800 °C`);
  });

  it('takes its clauses along', () => {
    expectFindings(`${run}«frobnicate» First\n  by nothing at all\n  span 5 mgx\nstep First 640..800 °C`, [
      'unknown-statement',
    ]);
  });

  it('is what a line that begins with no word is', () => {
    expectFindings(`${run}«12» mg`, ['unknown-statement']);
    expectFindings(`${run}«"text"»`, ['unknown-statement']);
  });

  it('says where a statement may stand', () => {
    expectFindings('method "M"\n«blank» "z.csv"', ['unknown-statement']);
    expectFindings('method "M"\n«override» step First 640..800 °C', ['unknown-statement']);
    expectFindings('method "M"\n«approved» by "M" on 2026-10-02 digest 00', ['unknown-statement']);
    expectFindings('method "M"\n«mask» 1..2 °C because "x"', ['unknown-statement']);
    expectFindings('method "M"\n«run» "a.csv"', ['unknown-statement']);
  });

  it('is not what a word of the trade in a name is: no word is reserved', () => {
    expectSilent(`${run}step step 640..800 °C\nlet let = step.loss\nlet in = let\nrequire in in 1..2 % as as`);
    expectSilent(`${run}step around around 640 °C in heating 1\nlet mean = mean(around.loss, around.loss)`);
  });
});

describe('unknown-clause', () => {
  it('points at the word, proposes the nearest and names the statements that have it', () => {
    expectFindings(`${run}peak Melting 215..262 °C\n  «basline» sigmoidal`, ['unknown-clause']);
    expectFix(
      `${run}peak Melting 215..262 °C\n  «basline» sigmoidal`,
      `${run}peak Melting 215..262 °C\n  baseline sigmoidal`,
    );
    const { findings } = expectFindings(`${run}step First 640..800 °C\n  «baseline» linear`, ['unknown-clause']);
    assert.match(findings[0]!.message, /`peak`/);
  });

  it('is what an indented statement is, which is moved to the first column', () => {
    expectFindings(`${run}  «step» First 640..800 °C`, ['unknown-clause']);
    expectFix(`${run}  «step» First 640..800 °C`, `${run}step First 640..800 °C`);
  });

  it('is `because` where nothing is overridden, and a column that is computed', () => {
    expectFindings(`${run}step First 640..800 °C\n  «because» "x"`, ['unknown-clause']);
    expectFindings(`${run}columns\n  «rate» column 3`, ['unknown-clause']);
    expectFindings(`${run}  «"x"»`, ['unknown-clause']);
  });

  it('leaves the rest of the statement', () => {
    const { program } = check(`${run}step First 640..800 °C\n  spann 12 K\n  by tangents`);
    const [first] = program.order;
    assert.equal(first!.statement.kind === 'step' && first!.statement.by, 'tangents');
    assert.equal(first!.failed, null);
  });
});

describe('clause-without-statement', () => {
  it('is said once for the lines before the first statement', () => {
    expectFindings('  «mass» 20.052 mg\n  sample "x"\nrun "a.csv"', ['clause-without-statement']);
    expectFix('  «run» "a.csv"\n', 'run "a.csv"\n');
  });

  it('is not what a clause after blank and comment lines is', () => {
    expectSilent(`${run}\n    # remark\n\n\t mass 20.052 mg\n# another\n      sample "x"\n`);
  });
});

describe('clause-not-indented', () => {
  it('belongs to the statement above, whose further clauses still count', () => {
    expectFindings(`${run}«mass» 20.052 mg\n  sample "x"`, ['clause-not-indented']);
    expectFix(`${run}«mass» 20.052 mg\n  sample "x"`, `${run}  mass 20.052 mg\n  sample "x"`);
    const { program } = check(`${run}mass 20.052 mg\n  sample "x"`);
    assert.equal(program.run!.statement.sample, 'x');
  });

  it('is a broken head where the statement above has no such clause', () => {
    expectFindings(`${run}step First 640..800 °C\n«baseline» linear\n  whatever`, ['clause-not-indented']);
    expectFindings(`${run}«because» "x"`, ['clause-not-indented']);
  });

  it('is not what a word is that is statement and clause', () => {
    expectSilent(`${run}note "a remark"\nallow window-overlap because "nested on purpose"`);
  });
});

describe('clause-twice', () => {
  it('points at the second, which is ignored', () => {
    const { program } = expectFindings(`${run}step First 640..800 °C\n  span 10 K\n  «span» 20 K`, ['clause-twice']);
    const [first] = program.order;
    assert.equal(first!.statement.kind === 'step' && first!.statement.span!.value, 10);
    expectFix(
      `${run}step First 640..800 °C\n  span 10 K\n  «span» 20 K\n  by levels`,
      `${run}step First 640..800 °C\n  span 10 K\n  by levels`,
    );
  });

  it('is also two of which one excludes the other', () => {
    expectFindings(`${run}crossing Tx mass = 95 %\n  rising\n  «falling»`, ['clause-twice']);
    expectFindings(`${run}crossing Tx mass = 95 %\n  rising\n  «rising»`, ['clause-twice']);
    expectFindings(`${run}step Aa 1..9 °C\nallow window-overlap on Aa because "x"\n  «on» Aa`, ['clause-twice']);
  });

  it('is not what clauses are that may be repeated, nor columns of different channels', () => {
    expectSilent(
      `${run}  hazard "one"\n  hazard "two"\n  atmosphere nitrogen\n  atmosphere air from 20 min\n  note "a"\n  note "b"`,
    );
    expectSilent(`${run}columns\n  ion(18) column 3\n  ion(44) column 4`);
    expectFindings(`${run}columns\n  ion(18) column 3\n  «ion(18)» column 4`, ['clause-twice']);
  });
});

describe('decimal-comma', () => {
  for (const [name, line, fixed] of [
    ['a mass', '  mass «20,052» mg', '  mass 20.052 mg'],
    ['a window', 'step Aa «640,5»..800 °C', 'step Aa 640.5..800 °C'],
    ['the second end', 'step Aa 640..«800,5» °C', 'step Aa 640..800.5 °C'],
    ['an expression', 'let x = 2 * «0,5»', 'let x = 2 * 0.5'],
    ['an uncertainty', '  mass 20.05 ± «0,01» mg', '  mass 20.05 ± 0.01 mg'],
    ['a number with thousands', 'let x = «1,234.5»', 'let x = 1234.5'],
    ['a number with several thousands', 'let x = «1,234,567»', 'let x = 1234567'],
  ] as const) {
    it(`is found in ${name} and mended`, () => {
      expectFindings(run + line, ['decimal-comma']);
      expectFix(run + line, run + fixed);
    });
  }

  it('is also a comma without a blank between the values of a function', () => {
    expectFindings(`${run}let x = mean(«1,2»)`, ['decimal-comma']);
    expectFix(`${run}let x = mean(«1,2»)`, `${run}let x = mean(1, 2)`, 1);
  });

  it('is not what a comma between other things is', () => {
    expectSilent(`${run}  crucible alumina 85 µL, no lid\n  sample "20,5 mg"\nlet x = mean(1 , 2, 3) # 1,5`);
  });
});

describe('range-with-hyphen', () => {
  for (const [line, fixed] of [
    ['step Aa «640-790 °C»', 'step Aa 640..790 °C'],
    ['step Aa «640 - 790 °C» in heating 1', 'step Aa 640..790 °C in heating 1'],
    ['step Aa «640–790 °C»', 'step Aa 640..790 °C'],
    ['step Aa «640−790 °C»', 'step Aa 640..790 °C'],
    ['step Aa «640 °C-790 °C»', 'step Aa 640 °C..790 °C'],
    ['step Aa «640 to 790 °C»', 'step Aa 640..790 °C'],
    ['mask «20-25 min» because "x"', 'mask 20..25 min because "x"'],
    ['require 5 % in «1-9 %»', 'require 5 % in 1..9 %'],
  ] as const) {
    it(`is found in \`${line.replace(/[«»]/g, '')}\` and mended`, () => {
      expectFindings(run + line, ['range-with-hyphen']);
      expectFix(run + line, run + fixed);
    });
  }

  it('is not what a negative end or a difference is', () => {
    expectSilent(`${run}step Aa -50..-20 °C\nlet x = 790 °C - 640 °C\nstep Bb −10..5 °C`);
  });
});

describe('role-missing', () => {
  it('points at the first statement', () => {
    expectFindings('«step» First 640..800 °C\n', ['role-missing']);
    expectFindings('«»\n# only a remark\n', ['role-missing']);
    expectFindings('«let» x = 5\nstep Aa 640..800 °C\nrun "a.csv"', ['role-missing']);
  });

  it('is not said where the word for it is only misspelt', () => {
    expectFindings('«rum» "a.csv"\nstep Aa 640..800 °C', ['unknown-statement']);
    expectSilent('# remark\n\nrun "a.csv"');
  });
});

describe('later-word', () => {
  it('is the first word of a head or a clause that a later release reads', () => {
    expectFindings(`${run}«kinetics» Kk\n  whatever\n«instrument» "x"`, ['later-word', 'later-word']);
    expectFindings(`${run}  «standard» "x"`, ['later-word']);
  });

  it('is not what such a word is elsewhere', () => {
    expectSilent(`${run}  atmosphere gas 50 mL/min purity 99.99 %\nstep purity 640..800 °C\nlet study = purity.loss`);
  });
});

describe('unexpected-text', () => {
  for (const [what, line] of [
    ['text behind a complete line', 'step Aa 640..800 °C «abc» def'],
    ['a missing window', 'step «Aa»'],
    ['a missing name', 'step «640»..800 °C'],
    ['a number without its first digit', 'let x = «.5»'],
    ['a date in an expression', 'let x = «2026-10-02»'],
    ['a function with too few values', 'let x = «sd(1)»'],
    ['a function with too many values', 'let x = «abs(1, 2)»'],
    ['a sign of products of other notations', 'let x = 2 «×» 3'],
    ['a bracket that is not closed', 'let x = (1 + «2»'],
    ['a text that is not closed', 'note «"abc»'],
    ['a text that is not quoted', 'note «abc» def'],
    ['a sign that texts do not have', 'note "a«\\x»b"'],
    ['a segment without its number', 'step Aa in «heating»'],
    ['a segment of number zero', 'step Aa in heating «0»'],
    ['a limit without its bound', 'require 5 % «<» 7 %'],
    ['an empty reason', 'mask 1..2 °C because «" "»'],
    ['an empty file name', 'join «""»'],
    ['a number out of all proportion', 'let x = «1e999»'],
    ['a share of no bound', 'crossing Tx rate = 10 % of «average»'],
    ['an uncertainty where none counts', 'step Aa around 930 °C within 100 K «±» 5 K'],
    ['digits grouped by blanks', 'let x = 1 «000»'],
    ['a second method', 'method "m.gloss"\n«method» "n.gloss"'],
    ['a override of something else', 'override «mask» 1..2 °C because "x"'],
    ['a molar mass with a blank', 'let x = «M» (CaCO3)'],
  ] as const) {
    it(`is ${what}`, () => {
      expectFindings(run + line, ['unexpected-text']);
    });
  }

  for (const [what, line, fixed, which] of [
    ['removes the rest of the line', 'step Aa 640..800 °C «abc» def', 'step Aa 640..800 °C', 0],
    ['writes the first digit', 'let x = «.5»', 'let x = 0.5', 0],
    ['closes a text', 'note «"abc»', 'note "abc"', 0],
    ['quotes a file', 'join «b».csv', 'join "b.csv"', 0],
    ['doubles a backslash', 'note "a«\\x»b"', 'note "a\\\\xb"', 0],
    ['writes a product', 'let x = 2 «×» 3', 'let x = 2 * 3', 0],
    ['writes a closed limit', 'require 5 % «<» 7 %', 'require 5 % <= 7 %', 0],
    ['writes a molar mass', 'let x = «M» (CaCO3)', 'let x = M(CaCO3)', 0],
    ['writes a difference of numbers', 'let x = «2026-10-02»', 'let x = 2026 - 10 - 02', 0],
    ['removes an uncertainty', 'step Aa around 930 °C within 100 K «±» 5 K', 'step Aa around 930 °C within 100 K', 0],
  ] as const) {
    it(`is mended: ${what}`, () => {
      expectFix(run + line, run + fixed, which);
    });
  }

  it('is found in clauses, and the clause then counts as not read', () => {
    for (const clause of [
      'by «halves»',
      'per «nothing»',
      'per dried mass after «1»',
      'smooth «never»',
      'encloses First «Second»',
      'span 10 K «more»',
      'allow «Window» because "x"',
      'allow window-overlap «"x"»',
    ]) {
      const { tree } = expectFindings(`${run}step Aa 640..800 °C\n  ${clause}`, ['unexpected-text']);
      assert.deepEqual(tree.statements[1]!.unread, [clause.split(' ')[0]]);
    }
  });

  it('is found in the clauses of a run', () => {
    for (const clause of [
      'measured «2026-02-30»',
      'measured «yesterday»',
      'endothermic «upp»',
      'crucible «85» µL',
      'contains dolomite, «12»',
      'sample «nothing»',
      'calibrated temperature «twice»',
      'atmosphere nitrogen 80 % + «oxygen» 50 mL/min',
      'atmosphere nitrogen from «never»',
    ]) {
      expectFindings(`${run}  ${clause}`, ['unexpected-text']);
    }
    expectFix(`${run}  endothermic «upp»`, `${run}  endothermic up`);
  });

  it('asks from when a second atmosphere flows', () => {
    expectFindings(`${run}  atmosphere nitrogen\n  atmosphere «air 50 mL/min»`, ['unexpected-text']);
    expectSilent(`${run}  atmosphere nitrogen from heating 1\n  atmosphere air 50 mL/min from hold 2`);
  });

  it('is found in the clauses of data statements', () => {
    for (const text of [
      'join "b.csv"\n  on «mass»',
      'columns\n  mass «third»',
      'columns\n  mass column «0»',
      'columns\n  ion(18 «column» 3',
      'reading\n  skip 2 «rows»',
      'reading\n  encoding «utf-9»',
      'reading «from» "b.csv"',
      'blank "z.csv"\n  subtract mass, «rate»',
      'blank "z.csv"\n  subtract mass, «mass»',
      'programme\n  heat «fast»',
      'programme\n  heat to 900 °C «10» K/min',
      '«run» "b.csv"',
    ]) {
      expectFindings(run + text, ['unexpected-text']);
    }
  });
});

describe('the first line', () => {
  it('may name the language', () => {
    expectSilent(`language 1\n${run}`);
    expectFindings(`language «2»\n${run}`, ['unexpected-text']);
    expectFindings(`${run}«language» 1\n`, ['unknown-statement']);
  });
});
