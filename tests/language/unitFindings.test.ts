import { expectFindings, expectFix, expectSilent } from './support/check';

const run = 'run "a.csv"\n';
const first = 'step First 640..800 °C\n';
const heat = 'peak Heat 640..800 °C\n';

describe('unit-missing', () => {
  for (const [line, fixed] of [
    ['  mass «20.052»', '  mass 20.052 mg'],
    ['  mass «20.052 ± 0.010»', '  mass 20.052 ± 0.010 mg'],
    ['  mass 20.052 mg ± «0.010»', '  mass 20.052 mg ± 0.010 mg'],
    ['  atmosphere nitrogen «50»', '  atmosphere nitrogen 50 mL/min'],
    ['  atmosphere nitrogen 50 mL/min purity «99.9»', '  atmosphere nitrogen 50 mL/min purity 99.9 %'],
    ['  crucible alumina «85»', '  crucible alumina 85 µL'],
    ['  rate «10»', '  rate 10 K/min'],
    ['  calibrated temperature 150..«660»', '  calibrated temperature 150..660 °C'],
    ['  calibrated temperature 150..660 °C u «0.5»', '  calibrated temperature 150..660 °C u 0.5 K'],
    ['step Aa 640..«800»', 'step Aa 640..800 °C'],
    ['step Aa 640 °C..«800»', 'step Aa 640 °C..800 °C'],
    ['step Aa around «930»', 'step Aa around 930 °C'],
    ['step Aa 640..800 °C\n  span «10»', 'step Aa 640..800 °C\n  span 10 K'],
    ['step Aa 2..30 min in hold 1\n  span «10»', 'step Aa 2..30 min in hold 1\n  span 10 min'],
    ['crossing Tx mass = «95»', 'crossing Tx mass = 95 mg'],
    ['residue Ash at «850»', 'residue Ash at 850 °C'],
    ['mask 611..«613» because "x"', 'mask 611..613 °C because "x"'],
    ['rule programme-mismatch «5» because "x"', 'rule programme-mismatch 5 % because "x"'],
    ['programme\n  heat to «900» at 10 K/min', 'programme\n  heat to 900 °C at 10 K/min'],
    ['programme\n  hold «20»', 'programme\n  hold 20 min'],
    [`${first}require First.midpoint in 700..«720»`, `${first}require First.midpoint in 700..720 °C`],
    [`${first}let x = First.midpoint - «5»`, `${first}let x = First.midpoint - 5 K`],
    [`${heat}require Heat.enthalpy <= «5»`, `${heat}require Heat.enthalpy <= 5 J/g`],
  ] as const) {
    it(`is found in \`${line.replace(/[«»]/g, '').replace(/\n/g, ' / ')}\` and mended`, () => {
      expectFindings(run + line, ['unit-missing']);
      expectFix(run + line, run + fixed);
    });
  }

  it('is not said where one unit serves both numbers, nor of plain numbers', () => {
    expectSilent(
      `${run}  mass 20.052 ± 0.010 mg\n  calibrated temperature 150..660 °C u 0.5 K\nlet x = 3 / 4\nrule signal-saturated 7 because "x"`,
    );
  });
});

describe('unknown-unit', () => {
  for (const [line, fixed] of [
    ['  mass 20.052 «gram»', '  mass 20.052 g'],
    ['let x = 5 «sec»', 'let x = 5 s'],
    ['let x = 5 «J/g/K»', 'let x = 5 J/(g·K)'],
    ['step Aa 640..800 «deg»', 'step Aa 640..800 °C'],
    ['given x in «celsius»', null],
    ['let x = 2 «abc»', null],
  ] as const) {
    it(`is found in \`${line.replace(/[«»]/g, '')}\``, () => {
      expectFindings(run + line, ['unknown-unit']);
      if (fixed !== null) expectFix(run + line, run + fixed);
    });
  }

  it('is not said of units of the grammar in any of their spellings', () => {
    expectSilent(
      `${run}  mass 20.052 mg\nlet x = 5 J/(g*K)\nlet y = 5 degC - 3 C\nlet z = 20 ug\nlet w = 20 μg\nlet v = 10 K^2\nlet u1 = 2 1/min`,
    );
  });

  it('is not said of a name behind a blank or a stroke: those divide', () => {
    expectSilent(`${run}let gg = 2\nlet x = 12 mW / gg\nlet nn = 3\nlet y = 12 mg/nn`);
  });
});

describe('wrong-dimension', () => {
  for (const line of [
    '  mass «20.052 K»',
    '  mass 20.052 mg «± 0.1 %»',
    '  crucible alumina «85 mg»',
    '  atmosphere nitrogen «50 mL»',
    '  atmosphere nitrogen 50 mL/min from «20 °C»',
    '  rate «10 K»',
    '  calibrated temperature 150..«660 mg»',
    '  calibrated heatflow 150..660 °C u «5 K»',
    'join "b.csv"\n  offset «3 K»',
    'columns\n  mass column 3 in «K»',
    'columns\n  heatflow column 3 in «mg»',
    'blank "z.csv"\n  repeatability «5 K»',
    'step Aa 640..«800 mg»',
    'step Aa «640 °C..20 min»',
    'step Aa 640..«800 °C» in hold 1',
    'step Aa 640..800 °C\n  span «30 s»',
    'step Aa 2..30 min in hold 1\n  span «10 K»',
    'step Aa 2..30 min in hold 1\n  smooth «10 K»',
    'step Aa around 930 °C within «10 min»',
    'crossing Tx temperature = «5 %»',
    'crossing Tx rate = «5 mg»',
    'crossing Tx rate = «10 mg» of maximum',
    'residue Ash at «5 mg»',
    'residue Ash at end of hold 1\n  over «2 K»',
    'residue Ash at end of heating 1\n  over «30 s»',
    'mask 1..«2 mg» because "x"',
    'rule programme-mismatch «5 K» because "x"',
    'rule signal-saturated «5 %» because "x"',
    'programme\n  heat to 900 °C at «10 K»',
    'let x = «5 mg + 3 K»',
    'let x = «5 mg + 3 %»',
    'let x = 5 mg\n  show «K»',
    'let x = ln(«5 mg»)',
    'let x = exp(«5 K»)',
    'let x = sqrt(«5 mg»)',
    'let x = (5 mg) ^ «3 K»',
    'let nn = 2\nlet x = (5 mg) ^ «nn»',
    'let x = absolute(«5 mg»)',
    'let x = mean(5 mg, «3 K»)',
    'require 5 mg in 1..«3 K»',
    'require 5 mg <= «3 K»',
  ]) {
    it(`is found in \`${line.replace(/[«»]/g, '').replace(/\n/g, ' / ')}\``, () => {
      expectFindings(run + line, ['wrong-dimension']);
    });
  }

  it('is not said of what fits', () => {
    expectSilent(
      `${run}  mass 0.02 g\n  atmosphere air 3 L/h from 20 min\n  calibrated mass 0..50 mg u 0.1 %\njoin "b.csv"\n  offset -3 s\n` +
        'columns\n  mass column 3 in 1\n  time column 1 in h\n  temperature column 2 in K\n  heatflow column 4 in µV\n' +
        'step Aa 900..1100 K\n  span 3 K\nstep Bb 2..30 min in hold 1\n  span 1 min\nstep Cc 2..30 min\n  span 1 min\nstep Dd 2..30 min in heating 1\n  span 5 K\n' +
        'crossing Tx rate = 1 mg/min\ncrossing Ty rate = 1 %/min\ncrossing Tz heatflow = 0.05 W/g\nresidue Ash at end of hold 1\n  over 20 s\n' +
        'let x = 5 mg + 3 µg\n  show g\nlet y = sqrt(4 K^2) + 1 K\nlet z = (2 mg) ^ 2 / 1 mg^2\nlet w = (4 mg^2) ^ (1 / 2) + 1 mg\nrule programme-mismatch 5 % because "x"',
    );
  });

  it('is said of a value that is not what the method asks for', () => {
    expectFindings(
      `${run}method "m.gloss"\nlet filler = «5 mg»`,
      ['wrong-dimension'],
      'method "M"\ngiven filler in %\n',
    );
    expectFindings(`${run}method "m.gloss"\nlet filler = «5»`, ['unit-missing'], 'method "M"\ngiven filler in mg\n');
  });
});

describe('point-for-difference', () => {
  for (const [line, fixed] of [
    ['step Aa 640..800 °C\n  smooth «5 °C»', 'step Aa 640..800 °C\n  smooth 5 K'],
    ['step Aa 640..800 °C\n  span «5 degC»', 'step Aa 640..800 °C\n  span 5 K'],
    ['step Aa around 930 °C within «50 °C»', 'step Aa around 930 °C within 50 K'],
    ['residue Ash at 850 °C\n  over «2 °C»', 'residue Ash at 850 °C\n  over 2 K'],
    ['  calibrated temperature 1..9 °C u «0.5 °C»', '  calibrated temperature 1..9 °C u 0.5 K'],
    [`${first}let x = First.end - First.start\n  show «°C»`, `${first}let x = First.end - First.start\n  show K`],
    [`${heat}require Heat.width <= «20 °C»`, `${heat}require Heat.width <= 20 K`],
    [`${first}require First.end - First.start <= «20 °C»`, `${first}require First.end - First.start <= 20 K`],
    ['rule join-mismatch «3 °C» because "x"', 'rule join-mismatch 3 K because "x"'],
  ] as const) {
    it(`is found in \`${line.replace(/[«»]/g, '').replace(/\n/g, ' / ')}\` and mended`, () => {
      expectFindings(run + line, ['point-for-difference']);
      expectFix(run + line, run + fixed);
    });
  }

  it('is not said of K where a temperature is due', () => {
    expectSilent(
      `${run}step Aa 900 K..1000 K\nrequire Aa.midpoint in 950..960 K\nrequire Aa.midpoint <= 960 K\nrequire absolute(Aa.midpoint) <= 960 K`,
    );
  });
});

describe('point-arithmetic', () => {
  for (const line of [
    'let x = «First.start + First.end»',
    'let x = «First.start + 5 °C»',
    'let x = «5 K - First.start»',
    'let x = 2 * «First.start»',
    'let x = «First.start» / 2',
    'let x = «First.start» / «First.end»',
    'let x = -«First.start»',
    'let x = «First.start» ^ 2',
    'let x = abs(«First.start»)',
    'let x = sqrt(«First.start»)',
    'let x = rsd(«First.start», First.end)',
    'let x = 2 ^ «First.start»',
  ]) {
    it(`is found in \`${line.replace(/[«»]/g, '')}\``, () => {
      const count = line.split('«').length - 1;
      expectFindings(
        run + first + line,
        Array.from({ length: count }, () => 'point-arithmetic'),
      );
    });
  }

  it('is mended by kelvin, or by `absolute`', () => {
    expectFix(`${run}${first}let x = «First.start + 5 °C»`, `${run}${first}let x = First.start + 5 K`);
    expectFix(`${run}${first}let x = 2 * «First.start»`, `${run}${first}let x = 2 * absolute(First.start)`);
  });

  it('is not what differences, means and shifts of temperatures are', () => {
    expectSilent(
      `${run}${first}let x = First.end - First.start + 5 K\nlet y = mean(First.end, First.start) - 3 K\nlet z = 5 K + First.start\n` +
        'let w = sd(First.end, First.start) + 1 K\nlet v = max(First.end, 700 °C) - First.start\nlet u1 = 1 / absolute(First.end)\nlet t1 = -20 °C - -25 °C + 1 K',
    );
  });
});

describe('bare-number-with-fraction', () => {
  for (const [line, fixed] of [
    ['let x = «100» - First.loss', 'let x = 100 % - First.loss'],
    ['let x = First.loss + «1»', 'let x = First.loss + 1 %'],
    ['let x = «100» - 5 %', 'let x = 100 % - 5 %'],
    ['require First.loss <= «5»', 'require First.loss <= 5 %'],
    ['require First.loss in 2..«3»', null],
    ['let x = max(First.loss, «3»)', 'let x = max(First.loss, 3 %)'],
    ['let half = 0.5\nlet x = First.loss - «half»', null],
  ] as const) {
    it(`is found in \`${line.replace(/[«»]/g, '').replace(/\n/g, ' / ')}\``, () => {
      expectFindings(run + first + line, ['bare-number-with-fraction']);
      if (fixed !== null) expectFix(run + first + line, run + first + fixed);
    });
  }

  it('is not said of products, of 100 %, and of a computed number compared with a literal in %', () => {
    expectSilent(
      `${run}${first}let x = 2 * First.loss\nlet y = 100 % - First.loss\nlet z = First.loss / First.remaining\nrequire z <= 10 %\nrequire z in 0.1..0.2`,
    );
  });
});

describe('basis-mixed', () => {
  const steps = `step Water 40..180 °C\n${first}  per dried mass after Water\nstep Second 800..950 °C\n`;

  it('is found in sums, limits and functions of values over different masses', () => {
    expectFindings(`${run}${steps}let x = «First.loss + Second.loss»`, ['basis-mixed']);
    expectFindings(`${run}${steps}require First.loss <= «Second.loss»`, ['basis-mixed']);
    expectFindings(`${run}${steps}let x = mean(First.loss, «Second.loss»)`, ['basis-mixed']);
  });

  it('is found in values over masses of their own windows', () => {
    expectFindings(
      `${run}step Aa 1..9 °C\n  per mass at start\nstep Bb 1..9 °C\n  per mass at start\nlet x = «Aa.loss + Bb.loss»`,
      ['basis-mixed'],
    );
  });

  it('is found in heats over different masses', () => {
    expectFindings(`${run}peak Aa 1..9 °C\n  per mass lost\npeak Bb 1..9 °C\nlet x = «Aa.enthalpy - Bb.enthalpy»`, [
      'basis-mixed',
    ]);
  });

  it('is not said of one basis, of literals, and of products', () => {
    expectSilent(
      `${run}${steps}let x = Water.loss + Second.loss + 1 %\nlet y = First.loss * Second.loss\nlet z = First.loss / Second.loss\nrequire First.loss in 1..2 %`,
    );
    expectSilent(`${run}${steps}let x = First.loss * M(CaCO3) / M(CO2) + First.loss`);
    expectFindings(`${run}${steps}let x = «First.loss * M(CaCO3) / M(CO2) + Second.loss»`, ['basis-mixed']);
  });
});

describe('bad-formula', () => {
  for (const line of ['let x = M(Ca«Xx»O3)', 'let x = M(«Me»OH)', 'let x = «M(Ca(CO3)»', 'let x = M(SO4«²»⁻)']) {
    it(`is found in \`${line.replace(/[«»]/g, '')}\``, () => {
      expectFindings(run + line, ['bad-formula']);
    });
  }

  it('is not said of the formulas of the design page', () => {
    expectSilent(
      `${run}let a1 = M(CaSO4.2H2O) - M(CaSO4·2H2O)\nlet b1 = M(CaMg(CO3)2)\nlet c1 = M(Fe0.95O)\nlet d1 = M(CuSO4*5H2O)`,
    );
  });
});
