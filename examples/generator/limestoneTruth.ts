import { simulateLimestone, trueMass } from './limestoneRun';
import { illite, limestoneRuns, moisture, molar, reactions, type LimestoneRun } from './limestoneScenario';

/** Rounded for the file: more digits would say nothing. */
function digits(value: number, count: number): number {
  return Number(value.toFixed(count));
}

/** What went into the records of the limestone. Losses in % of the true mass, temperatures in °C. */
export function limestoneTruth(): object {
  return {
    about:
      'Invented scenario: what the generator put into the records. Losses in % of the true mass; heats in J per g of specimen, endothermic positive; temperatures of the largest rate in °C of the specimen and as the instrument writes them.',
    runs: Object.fromEntries(limestoneRuns.filter((r) => r.specimen !== null).map((run) => [run.name, runTruth(run)])),
  };
}

function runTruth(run: LimestoneRun): object {
  const specimen = run.specimen!;
  const all = reactions(specimen, run.gas);
  const loss = (name: string): number => all.find((r) => r.name === name)!.loss;
  const simulated = simulateLimestone(run, { scatter: false, reactionHeat: true });
  const peaks = all.map((reaction) => {
    const alpha = simulated.conversions.get(reaction.name)!;
    let fastest = 1;
    for (let i = 1; i + 1 < alpha.length; i++) {
      if (alpha[i + 1] - alpha[i - 1] > alpha[fastest + 1] - alpha[fastest - 1]) fastest = i;
    }
    return [
      reaction.name,
      {
        loss: digits(reaction.loss, 4),
        heat: digits(reaction.heat, 2),
        fastest: digits(simulated.temperature[fastest], 1),
        fastestIndicated: digits(simulated.indicated[fastest], 1),
      },
    ] as const;
  });
  const residue = 100 - all.reduce((sum, r) => sum + r.loss, 0);
  return {
    gas: run.gas,
    weighedMass: specimen.weighed,
    trueMass: digits(trueMass(run), 4),
    dolomite: specimen.dolomite,
    calcite: specimen.calcite,
    moisture,
    illite,
    magnesia: digits((specimen.dolomite * molar.magnesia) / molar.dolomite, 3),
    lime: digits(((loss('first') + (loss('second') - loss('first'))) * molar.lime) / molar.carbonDioxide, 3),
    carbonDioxide: digits(loss('first') + loss('second'), 4),
    residue: digits(residue, 4),
    reactions: Object.fromEntries(peaks),
  };
}
