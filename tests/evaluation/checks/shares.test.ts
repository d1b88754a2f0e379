import { checked, columns, fires, silent } from './checked';
import { programme, rise, signalOf } from './curves';

const p = programme(30, [{ to: 1000, rate: 10 }]);

function run(first: number, lets: string) {
  const of = (T: number) => 100 - first * rise(T, 400, 8);
  const data = columns(p, [{ signal: 'mass', unit: 'mg', values: signalOf(p, of, 0.0004) }]);
  return checked(data, `run "a.csv"\n  mass 100 mg\nstep First 330..480 °C\n${lets}`);
}

// CO2 takes 43.971 % of calcite and 52.197 % of magnesite (stoichiometry with IUPAC 2021 weights).
const calcite = 'let calcite = First.loss * M(CaCO3) / M(CO2)';

describe('checks of shares', () => {
  it('see a phase of more than 100 %, and not one just below', () => {
    fires(run(44.5, calcite), 'fraction-impossible', /calcite is 101 % with U = 0\.\d+ %, above 100 %/);
    silent(run(43.5, calcite), 'fraction-impossible');
  });

  it('see two phases that were each given the whole step, and not two that share it', () => {
    const magnesite = (share: number) => `let magnesite = First.loss * ${share} * M(MgCO3) / M(CO2)`;
    fires(
      run(25, `${calcite}\n${magnesite(1)}`),
      'fraction-impossible',
      /calcite \+ magnesite is 105 % with U = 0\.\d+ %, above 100 %/,
    );
    silent(run(25, `${calcite}\n${magnesite(0.5)}`), 'fraction-impossible');
  });

  it('do not count an oxide beside the mineral it is part of', () => {
    // 85 % magnesite holds 41 % magnesium oxide: together 126 %, and nothing is wrong.
    const lets = 'let magnesite = First.loss * M(MgCO3) / M(CO2)\nlet magnesia = First.loss * M(MgO) / M(CO2)';
    silent(run(44.5, lets), 'fraction-impossible');
  });

  it('see a share below zero', () => {
    fires(
      run(10, 'let rest = 5 % - First.loss'),
      'fraction-impossible',
      /rest is -5(\.\d+)? % with U = 0\.\d+ %, below zero/,
    );
    silent(run(10, 'let rest = 15 % - First.loss'), 'fraction-impossible');
  });
});
