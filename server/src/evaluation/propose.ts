import { detectSteps } from '../analysis/detectSteps';
import { heatEffects } from '../analysis/heatEffects';
import type { Window } from '../analysis/curve';
import { numberText } from '../findings/numberText';
import type { Segment } from '../runs/run';
import { levelSlope } from './massStepParts';
import type { Placed } from './outcome';
import { secondsPerKelvin } from './place';
import type { PreparedRun } from './preparedRun';
import { defaults, smoothing, widthOf } from './settings';

/** A statement that the curves suggest. */
export type Proposal =
  | {
      readonly kind: 'step' | 'peak' | 'glass';
      readonly name: string;
      /** As written: °C to whole kelvins, or min in a hold. */
      readonly from: string;
      readonly to: string;
      readonly unit: '°C' | 'min';
      /** Where the effect is strongest, as written: what `around` would be given. */
      readonly at: string;
      readonly segment: string;
      readonly clauses: readonly string[];
      readonly comment: string;
    }
  | { readonly kind: 'residue'; readonly name: string; readonly segment: string; readonly comment: string };

/** A smaller change of mass is no step worth a line (% of the initial mass; common practice). */
const leastPercent = 0.1;

/** The steps, effects and glass transitions that a run shows, segment by segment, each with a window that ends on levels. */
export function proposeEvaluations(run: PreparedRun): Proposal[] {
  const names = new Names();
  const proposals: Proposal[] = [];
  for (const segment of run.segments) {
    if (segment.end - segment.start < 60) continue;
    proposals.push(...stepsIn(run, segment, names), ...effectsIn(run, segment, names));
  }
  const residue = residueOf(run);
  if (residue !== null) proposals.push(residue);
  return proposals;
}

class Names {
  private readonly counts = new Map<string, number>();

  next(word: string): string {
    const count = (this.counts.get(word) ?? 0) + 1;
    this.counts.set(word, count);
    return `${word}${count}`;
  }
}

function stepsIn(run: PreparedRun, segment: Segment, names: Names): Proposal[] {
  const mass = run.signals.get('mass');
  const curve = mass?.curve(segment) ?? null;
  if (mass === undefined || curve === null) return [];
  const placed = whole(run, segment);
  const found = detectSteps(curve, mass.noise(segment), {
    span: widthOf(placed, null, defaults.span).from,
    smooth: smoothing(placed, null).seconds!,
    levelSlope: levelSlope(run, placed),
    relativeRate: 0.02,
    least: (leastPercent / 100) * run.mass.reference,
  });
  return found.map(({ window, change, at }) => {
    const percent = (100 * Math.abs(change)) / run.mass.reference;
    const kind = change >= 0 ? 'loss' : 'gain';
    return {
      kind: 'step',
      name: names.next(change >= 0 ? 'Loss' : 'Gain'),
      ...written(run, segment, window),
      at: pointNumber(run, segment, at),
      segment: segment.name,
      clauses: [],
      comment: `a ${kind} of about ${numberText(percent, 2)} %`,
    };
  });
}

function effectsIn(run: PreparedRun, segment: Segment, names: Names): Proposal[] {
  const heat = run.signals.get('heatflow');
  const curve = heat?.curve(segment) ?? null;
  if (heat === undefined || curve === null) return [];
  const placed = whole(run, segment);
  const found = heatEffects(curve, heat.noise(segment), {
    span: widthOf(placed, null, defaults.span).from,
    smooth: smoothing(placed, null).seconds!,
  });
  return found.map((effect) => {
    const where = { ...written(run, segment, effect.window), at: pointNumber(run, segment, effect.at) };
    const at = `about ${pointText(run, segment, effect.at)}`;
    if (effect.kind === 'glass') {
      return {
        kind: 'glass',
        name: names.next('Glass'),
        ...where,
        segment: segment.name,
        clauses: [],
        comment: `a step, midpoint ${at}`,
      };
    }
    const endothermic = effect.direction === 1;
    return {
      kind: 'peak',
      name: names.next(endothermic ? 'Endo' : 'Exo'),
      ...where,
      segment: segment.name,
      clauses: effect.steps ? ['baseline sigmoidal'] : [],
      comment: `${endothermic ? 'endothermic' : 'exothermic'}, peak ${at}`,
    };
  });
}

/** The mass left at the end of the last heating or the hold behind it, where it stands still. */
function residueOf(run: PreparedRun): Proposal | null {
  if (!run.signals.has('mass')) return null;
  const hottest = run.segments.map((s) => s.direction).lastIndexOf('heating');
  if (hottest < 0) return null;
  const after = run.segments.at(hottest + 1);
  const segment = after?.direction === 'hold' ? after : run.segments[hottest];
  const curve = run.signals.get('mass')!.curve(segment);
  if (curve === null || curve.x.length < 3) return null;
  return { kind: 'residue', name: 'Residue', segment: segment.name, comment: 'the mass left' };
}

function whole(run: PreparedRun, segment: Segment): Placed {
  const window = { from: segment.start, to: segment.end };
  return {
    segment,
    window,
    shown: { from: segment.from, to: segment.to, unit: '°C', rule: null },
    secondsPerKelvin: secondsPerKelvin(run, segment, {
      from: (segment.start + segment.end) / 2,
      to: (segment.start + segment.end) / 2,
    }),
  };
}

/** The window as text, rounded to whole kelvins (0.1 min in a hold), inside the segment. */
function written(run: PreparedRun, segment: Segment, window: Window): { from: string; to: string; unit: '°C' | 'min' } {
  const map = segment.direction === 'hold' ? null : run.map(segment);
  if (map === null) {
    const minutes = (t: number) => numberText((t - segment.start) / 60, 1);
    return { from: minutes(window.from), to: minutes(window.to), unit: 'min' };
  }
  const kelvins = (t: number) => numberText(Math.round(map.temperatureAt(t)), 0);
  return { from: kelvins(window.from), to: kelvins(window.to), unit: '°C' };
}

/** A point as a window would be written with it: whole kelvins, 0.1 min in a hold. */
function pointNumber(run: PreparedRun, segment: Segment, time: number): string {
  const map = segment.direction === 'hold' ? null : run.map(segment);
  return map === null ? numberText((time - segment.start) / 60, 1) : numberText(Math.round(map.temperatureAt(time)), 0);
}

function pointText(run: PreparedRun, segment: Segment, time: number): string {
  const map = segment.direction === 'hold' ? null : run.map(segment);
  return map === null
    ? `${numberText((time - segment.start) / 60, 1)} min`
    : `${numberText(map.temperatureAt(time), 1)} °C`;
}
