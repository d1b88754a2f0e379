import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { numberText } from '../../findings/numberText';
import { fixedLimit } from '../../findings/table';
import type { CheckContext } from './context';
import { massQuantities, percent, perMassQuantities, placeText, replaceToken, segmentAt } from './wording';

/** The specimen mass: stated, plausible, and that of the specimen on the balance. */
export function checkMasses(context: CheckContext): Finding[] {
  // An empty crucible has no specimen whose mass could be doubted.
  if (context.program.run?.statement.sampleIsNone === true) return [];
  return [...missing(context), ...implausible(context), ...mismatch(context), ...aboveInitial(context)];
}

function missing(context: CheckContext): Finding[] {
  const { program, run } = context;
  if (program.run === null || program.run.statement.mass !== null) return [];
  const unit = run.signals.get('mass')?.unit;
  const heat = run.signals.get('heatflow')?.unit;
  const kinds = new Set([...context.outcomes.values()].map((o) => o.source.statement.kind));
  const needsMass = unit === 'mg' && ['step', 'residue', 'crossing'].some((k) => kinds.has(k as 'step'));
  const needsHeat = heat === 'mW' && (kinds.has('peak') || kinds.has('glass'));
  if (!needsMass && !needsHeat) return [];
  const what = needsMass
    ? `percentages refer to the first reading, ${numberText(run.signals.get('mass')!.first, 3)} mg`
    : 'a heat flow in mW gives no J/g';
  return [
    makeFinding(
      'mass-missing',
      { statement: program.run.id, token: 'head' },
      `No mass is stated: ${what}. Write "mass" with the weighed mass of the specimen.`,
    ),
  ];
}

function implausible(context: CheckContext): Finding[] {
  const weighed = context.run.mass.source === 'weighed' ? context.run.mass.milligrams : null;
  if (weighed === null || context.program.run === null) return [];
  const low = context.limit('mass-implausible');
  const high = fixedLimit('mass-implausible', 1);
  if (weighed.value >= low && weighed.value <= high) return [];
  return [
    makeFinding(
      'mass-implausible',
      { statement: context.program.run.id, token: 'mass.value' },
      `A specimen of ${numberText(weighed.value, 3)} mg lies outside ${numberText(low, 3)} to ${numberText(high, 1)} mg.`,
      { only: perMassQuantities },
    ),
  ];
}

function mismatch(context: CheckContext): Finding[] {
  const { program, run } = context;
  const signal = run.signals.get('mass');
  if (program.run === null || signal === undefined || signal.unit !== 'mg' || run.mass.source !== 'weighed') return [];
  const weighed = run.mass.reference;
  // A mass of nothing or less is implausible, and no share of it is a number.
  if (!(weighed > 0)) return [];
  const difference = (100 * (signal.first - weighed)) / weighed;
  const limit = context.limit('mass-mismatch');
  if (Math.abs(difference) <= limit) return [];
  return [
    makeFinding(
      'mass-mismatch',
      { statement: program.run.id, token: 'mass.value' },
      `The first reading is ${numberText(signal.first, 3)} mg, ${percent(Math.abs(difference))} ${difference > 0 ? 'above' : 'below'} the ${numberText(weighed, 3)} mg stated (limit ${percent(limit)}).`,
      {
        only: [...perMassQuantities, ...massQuantities.filter((q) => !perMassQuantities.includes(q))],
        fixes: [
          replaceToken(
            `Take the first reading, ${numberText(signal.first, 3)} mg`,
            { statement: program.run.id, token: 'mass.value' },
            `${numberText(signal.first, 3)} mg`,
          ),
        ],
      },
    ),
  ];
}

function aboveInitial(context: CheckContext): Finding[] {
  const { program, run } = context;
  const limit = context.limit('mass-above-initial');
  const top = context.facts.signal('mass')?.topAbove(run.mass.reference * (1 + limit / 100)) ?? null;
  if (program.run === null || top === null || !(run.mass.reference > 0)) return [];
  for (const outcome of context.outcomes.values()) {
    const gain = outcome.analysis?.of === 'step' ? -outcome.analysis.step.change.value : 0;
    if ((100 * gain) / run.mass.reference > limit) return [];
  }
  const excess = (100 * (top.mean - run.mass.reference)) / run.mass.reference;
  if (!(excess > limit)) return [];
  return [
    makeFinding(
      'mass-above-initial',
      { statement: program.run.id, token: program.run.statement.mass === null ? 'file' : 'mass.value' },
      `At ${placeText(run, segmentAt(run.segments, top.time), top.time)} the mass is ${percent(excess)} above the initial mass (limit ${percent(limit)}), and no step evaluates a gain.`,
      { only: massQuantities },
    ),
  ];
}
