import assert from 'node:assert/strict';
import { check, expectFindings, expectFix, expectSilent } from './support/check';

const run = 'run "a.csv"\n';
const first = 'step First 640..800 °C\n';
const withMethod = `${run}method "m.gloss"\n`;
const method = `method "M"\n${first}residue Oxides at end of hold 1\n`;

describe('unknown-name', () => {
  it('points at the name and proposes the nearest', () => {
    expectFindings(`${run}${first}let x = «Frist».loss`, ['unknown-name']);
    expectFix(`${run}${first}let x = «Frist».loss`, `${run}${first}let x = First.loss`);
    expectFix(`${run}${first}let x = «first».loss`, `${run}${first}let x = First.loss`);
  });

  it('is found on both sides of a requirement and in functions', () => {
    expectFindings(`${run}require «a1» + 1 % <= max(«b1», «c1»)`, ['unknown-name', 'unknown-name', 'unknown-name']);
    expectFindings(`${run}let x = «maen»(1, 2)`, ['unknown-name']);
    expectFix(`${run}let x = «maen»(1, 2)`, `${run}let x = mean(1, 2)`);
  });

  it('is a basis, an enclosed statement, a part of a sum, a finding or a subject that does not exist', () => {
    expectFindings(`${run}${first}  per dried mass after «Moist»`, ['unknown-name']);
    expectFindings(`${run}${first}step Second 800..950 °C\n  per ignited mass at «First»`, ['unknown-name']);
    expectFindings(`${run}${first}  encloses «Second»`, ['unknown-name']);
    expectFindings(`${run}${first}step Both = First + «Second»`, ['unknown-name']);
    expectFindings(`${run}peak Heat 640..800 °C\n${first}step Both = First + «Heat» 640..900 °C`, ['unknown-name']);
    expectFindings(`${run}rule «programme-mismatsch» 5 % because "x"`, ['unknown-name']);
    expectFindings(`${run}rule «unknown-name» 5 % because "x"`, ['unknown-name']);
    expectFindings(`${run}note "x"\n  on «First»`, ['unknown-name']);
    expectFindings(`${run}allow window-overlap on «First» because "x"`, ['unknown-name']);
    expectFindings(`${run}require 5 % in 1..9 %\n  on «First»`, ['unknown-name']);
  });

  it('is a requirement used as a value', () => {
    expectFindings(`${run}${first}require First.loss <= 5 % as Low\nlet x = «Low»`, ['unknown-name']);
  });

  it('is not said of what a method defines, and not where the method could not be read', () => {
    expectSilent(`${withMethod}let x = First.loss\nnote "x"\n  on Oxides`, method);
    const { program } = expectSilent(
      `${withMethod}let x = First.loss\nrequire x <= 5 %\nstep Dry 1..9 °C\n  per dried mass after Water`,
    );
    assert.deepEqual(
      [...program.order, ...program.requires].map(({ failed }) => failed),
      ['dependency', 'dependency', 'dependency'],
    );
  });

  it('is not said of a name whose own line is broken, nor of what depends on it', () => {
    const { program } = expectFindings(`${run}step «First»\nlet x = First.loss\nlet y = 2 * x`, ['unexpected-text']);
    assert.deepEqual(
      program.order.map(({ id, failed }) => [id, failed]),
      [
        ['let x', 'dependency'],
        ['let y', 'dependency'],
      ],
    );
    expectFindings(`${run}step Both = First + Second «abc»\nlet x = First.loss`, ['unexpected-text']);
  });
});

describe('unknown-quantity', () => {
  it('points at the quantity and proposes the nearest', () => {
    expectFindings(`${run}${first}let x = First.«los»`, ['unknown-quantity']);
    expectFix(`${run}${first}let x = First.«los»`, `${run}${first}let x = First.loss`);
    expectFindings(`${run}${first}let x = First.«enthalpy»`, ['unknown-quantity']);
  });

  it('is a quantity of a `let`', () => {
    expectFindings(`${run}let x1 = 5 %\nlet y1 = x1.«loss»`, ['unknown-quantity']);
    expectFix(`${run}let x1 = 5 %\nlet y1 = x1.«loss»`, `${run}let x1 = 5 %\nlet y1 = x1`);
  });

  it('is a temperature in a hold, which has the time only', () => {
    const hold = 'step Burn 2..30 min in hold 2\n';
    expectFindings(`${run}${hold}let x = Burn.«midpoint»`, ['unknown-quantity']);
    expectFix(`${run}${hold}let x = Burn.«midpoint»`, `${run}${hold}let x = Burn.midpoint_time`);
    expectFix(
      `${run}crossing Half mass = 50 % in hold 1\nlet x = Half.«temperature»`,
      `${run}crossing Half mass = 50 % in hold 1\nlet x = Half.time`,
    );
    expectSilent(`${run}${first}let x = First.midpoint\nlet y = First.midpoint_time`);
  });

  it('is a heat of a peak in another signal', () => {
    const ion = 'peak Water 420..680 °C\n  of ion(18)\n';
    expectFindings(`${run}${ion}let x = Water.«enthalpy»`, ['unknown-quantity']);
    expectSilent(`${run}${ion}let x = Water.area\nrequire Water.height >= 1 nA`);
  });
});

describe('quantity-missing', () => {
  it('points at a bare statement and proposes the usual quantity', () => {
    for (const [statement, name, quantity] of [
      ['step First 640..800 °C', 'First', 'loss'],
      ['peak Heat 640..800 °C', 'Heat', 'enthalpy'],
      ['glass Tg 60..95 °C', 'Tg', 'midpoint'],
      ['onset On 60..95 °C\n  of mass', 'On', 'temperature'],
      ['crossing T5 mass = 95 %', 'T5', 'temperature'],
      ['residue Ash at end of hold 1', 'Ash', 'remaining'],
    ] as const) {
      expectFindings(`${run}${statement}\nlet x = 2 * «${name}»`, ['quantity-missing']);
      const fixed = `${run}${statement}\nlet x = ${name}.${quantity}`;
      expectFix(`${run}${statement}\nlet x = «${name}»`, fixed);
    }
  });

  it('is not a bare `let` or `given`', () => {
    expectSilent(`${run}let x = 5 %\nlet y = x`);
    expectSilent('method "M"\ngiven x in %\nlet y = x');
  });
});

describe('name-twice', () => {
  it('points at the second definition; the first stands', () => {
    const { program, tree } = expectFindings(`${run}${first}step «First» 800..950 °C\nlet x = First.loss`, [
      'name-twice',
    ]);
    assert.deepEqual(
      program.order.map(({ id }) => id),
      ['step First', 'let x'],
    );
    assert.equal(program.order[1]!.failed, null);
    assert.equal(tree.statements[2]!.id, 'step First#2');
  });

  it('holds over kinds, requirements, parts of sums and the method', () => {
    expectFindings(`${run}let x1 = 5 %\npeak «x1» 640..800 °C\nrequire 5 % <= 6 % as «x1»`, [
      'name-twice',
      'name-twice',
    ]);
    expectFindings(`${run}step Both = First + «First» 640..900 °C`, ['name-twice']);
    expectFindings(`${withMethod}step «First» 655..805 °C`, ['name-twice'], method);
    expectFindings(
      `${withMethod}override step First 655..805 °C\n  because "x"\noverride step «First» 650..805 °C\n  because "y"`,
      ['name-twice'],
      method,
    );
    expectFindings(`${run}rule programme-mismatch 5 % because "x"\nrule «programme-mismatch» 6 % because "y"`, [
      'name-twice',
    ]);
  });

  it('is mended by an override where the method has the statement', () => {
    const { findings } = check(`${withMethod}step First 655..805 °C`, method);
    assert.equal(findings[0]!.fixes[0]!.title, 'Change the statement of the method');
  });

  it('is not the `let` of a `given`, nor a limit of the run beside that of the method', () => {
    const { program } = expectSilent(
      `${withMethod}let filler = 5 %\nrule programme-mismatch 6 % because "y"`,
      `${method}given filler in %\nrule programme-mismatch 5 % because "x"\n`,
    );
    assert.deepEqual(
      program.rules.map(({ id, file }) => [id, file]),
      [['rule programme-mismatch', 'gloss']],
    );
    expectFindings(`method "M"\ngiven x1 in %\nlet «x1» = 5 %`, ['name-twice']);
  });
});

describe('cycle', () => {
  it('is said of its members; what depends on them fails silently', () => {
    const { program } = expectFindings(`${run}let aa = 2 * «bb»\nlet bb = «aa» + 1 %\nlet cc = aa\nlet dd = 5 %`, [
      'cycle',
      'cycle',
    ]);
    assert.deepEqual(
      program.order.map(({ id, failed }) => [id, failed]),
      [
        ['let aa', 'cycle'],
        ['let bb', 'cycle'],
        ['let cc', 'dependency'],
        ['let dd', null],
      ],
    );
  });

  it('is found in a statement that reads itself, in bases and in sums', () => {
    expectFindings(`${run}let aa = «aa» + 1`, ['cycle']);
    expectFindings(`${run}${first}  per dried mass after «First»`, ['cycle']);
    expectFindings(`${run}step One = «Two» + Three 1..9 °C\nstep Two = «One» + Four 1..9 °C`, ['cycle', 'cycle']);
  });

  it('is not what two ways to one value are', () => {
    expectSilent(`${run}let aa = 1\nlet bb = aa\nlet cc = aa\nlet dd = bb + cc`);
  });
});

describe('given-missing', () => {
  const asks = `${method}given filler in %\nlet corrected = First.loss / (100 % - filler)\n`;

  it('points at the method that asks; what uses the value fails silently', () => {
    const { program } = expectFindings(`${run}method «"m.gloss"»`, ['given-missing'], asks);
    assert.equal(program.order.find(({ id }) => id === 'method/let corrected')!.failed, 'dependency');
    expectFindings(`${run}given «filler» in %`, ['given-missing']);
  });

  it('is not said of a method alone, nor where a `let` gives the value', () => {
    expectSilent(asks);
    expectSilent(`${withMethod}let filler = 12.5 %`, asks);
    expectSilent(`${run}let filler = 12.5 %\ngiven filler in %`);
  });
});

describe('override-of-nothing', () => {
  it('points at a name the method does not have, proposes the nearest, and fails what depends on it silently', () => {
    expectFindings(
      `${withMethod}override step «Frist» 655..805 °C\n  because "x"\nlet y = Frist.loss`,
      ['override-of-nothing'],
      method,
    );
    expectFix(
      `${withMethod}override step «Frist» 655..805 °C\n  because "x"`,
      `${withMethod}override step First 655..805 °C\n  because "x"`,
      0,
      method,
    );
  });

  it('is also another kind, a statement of the gloss itself, and a limit', () => {
    expectFindings(`${withMethod}override peak «First» 655..805 °C\n  because "x"`, ['override-of-nothing'], method);
    expectFindings(
      `${withMethod}step Own 1..9 °C\noverride step «Own» 1..8 °C\n  because "x"`,
      ['override-of-nothing'],
      method,
    );
    expectFindings(`${run}${first}override step «First» 1..8 °C\n  because "x"`, ['override-of-nothing']);
    expectFindings(`${withMethod}override «require» First.loss <= 5 %\n  because "x"`, ['override-of-nothing'], method);
    expectFindings(`${withMethod}override «rule» programme-mismatch 5 % because "x"`, ['override-of-nothing'], method);
  });

  it('is not said where the method could not be read', () => {
    expectSilent(`${withMethod}override step First 655..805 °C\n  because "x"\nlet y = First.loss`);
  });
});

describe('override-without-reason', () => {
  it('points at the override, or at its empty reason', () => {
    const { program } = expectFindings(
      `${withMethod}«override step First 655..805 °C»`,
      ['override-without-reason'],
      method,
    );
    assert.equal(program.order.find(({ id }) => id === 'override step First')!.failed, 'override-without-reason');
    expectFindings(
      `${withMethod}override step First 655..805 °C\n  because «"  "»`,
      ['override-without-reason'],
      method,
    );
  });

  it('is not said of an override with its reason', () => {
    expectSilent(`${withMethod}override step First 655..805 °C\n  because "coarse"`, method);
  });
});

describe('confusing-name', () => {
  it('remarks units and names that differ by capitals only', () => {
    const { program, findings } = expectFindings(
      `${run}step «K» 1..9 °C\nlet «mg» = 5 %\nlet «loss» = 1 %\nlet Loss = 2 %`,
      ['confusing-name', 'confusing-name', 'confusing-name'],
    );
    assert.deepEqual(
      findings.map(({ severity }) => severity),
      ['note', 'note', 'note'],
    );
    assert.deepEqual(
      program.order.map(({ failed }) => failed),
      [null, null, null, null],
    );
  });

  it('is not said of names of functions, keywords and quantities', () => {
    expectSilent(`${run}let mean = 1\nlet step = 2\nlet loss = 3\nlet Heating = 4`);
  });
});

describe('allow-not-possible', () => {
  it('is said of syntax, names, units, and of codes that do not exist', () => {
    for (const code of ['unexpected-text', 'unknown-name', 'unit-missing', 'window-overlaps']) {
      const { program } = expectFindings(`${run}allow «${code}» because "x"\n${first}  allow «${code}» because "y"`, [
        'allow-not-possible',
        'allow-not-possible',
      ]);
      assert.deepEqual(program.allows, []);
      assert.deepEqual(program.order[0]!.allows, []);
      assert.equal(program.order[0]!.failed, null);
    }
  });

  it('says of a finding about approvals and allowances what is done instead', () => {
    for (const [code, words] of [
      ['approval-broken', 'an approval that no longer holds is made again'],
      ['approved-by-evaluator', 'somebody else looks and approves, or the clause `evaluator` names who evaluated'],
      ['allow-unused', 'an allowance that accepts nothing goes'],
    ] as const) {
      const { findings } = expectFindings(`${run}allow «${code}» because "x"`, ['allow-not-possible']);
      const said = findings.map(({ message }) => message.slice(0, -1));
      assert.deepEqual(said, [`\`${code}\` cannot be accepted: ${words}`]);
    }
  });

  it('is not said of what may be accepted', () => {
    const { program } = expectSilent(
      `${run}${first}  allow window-overlap because "y"\nallow window-overlap on First because "x"`,
    );
    assert.equal(program.order[0]!.allows[0]!.token, 'allow');
    assert.equal(program.allows[0]!.statement.on, 'First');
  });
});

describe('an imported file', () => {
  it('that is a run gloss is no method', () => {
    expectFindings(`${run}method «"m.gloss"»\nlet x = First.loss`, ['role-missing'], 'run "b.csv"\n');
  });
});

describe('signal-missing', () => {
  it('is said of an onset that names no signal, and mended', () => {
    expectFindings(`${run}«onset On 60..95 °C»\n  span 5 K`, ['signal-missing']);
    expectFix(`${run}«onset On 60..95 °C»`, `${run}onset On 60..95 °C\n  of mass`);
    expectSilent(`${run}onset On 60..95 °C\n  of heatflow`);
  });
});
