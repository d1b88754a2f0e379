import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { decimalText } from '../../findings/numberText';
import type { StatementOutcome } from '../outcome';
import { temperatureAt } from './buoyancy';
import type { CheckContext } from './context';
import { at, insertClause, kelvin, moveEdge, percent, placeText } from './wording';

/** Windows of one kind on one signal and segment that overlap without saying so. */
export function checkOverlap(context: CheckContext): Finding[] {
  const counted = [...context.outcomes.values()].filter(
    (o) =>
      o.placed !== null &&
      o.placed.segment !== null &&
      (o.source.statement.kind === 'step' || o.source.statement.kind === 'peak'),
  );
  return counted.flatMap((later, index) =>
    counted.slice(0, index).flatMap((earlier) => (related(earlier, later) ? [] : compare(context, earlier, later))),
  );
}

/** Nested on purpose, a sum and its part, or on other data. */
function related(a: StatementOutcome, b: StatementOutcome): boolean {
  if (a.source.statement.kind !== b.source.statement.kind || a.signal !== b.signal) return true;
  if (a.placed!.segment!.name !== b.placed!.segment!.name) return true;
  return names(a).includes(b.name) || names(b).includes(a.name);
}

function names({ source }: StatementOutcome): readonly string[] {
  const { statement } = source;
  return statement.kind === 'step' || statement.kind === 'peak'
    ? [...statement.encloses, ...(statement.sumOf ?? [])]
    : [];
}

/** Two windows found by rule share so much of the smaller one that they found the same effect. */
const SAME = 0.8;

function compare(context: CheckContext, a: StatementOutcome, b: StatementOutcome): Finding[] {
  const [one, two] = [a.placed!, b.placed!];
  const from = Math.max(one.window.from, two.window.from);
  const to = Math.min(one.window.to, two.window.to);
  const perKelvin = two.secondsPerKelvin?.from ?? null;
  const size = perKelvin === null ? (to - from) / 60 : (to - from) / perKelvin;
  // Edges written alike are resolved to times that agree only to rounding.
  if (!(size > Math.max(context.limit('window-overlap'), 1e-3))) return [];
  const smaller = Math.min(one.window.to - one.window.from, two.window.to - two.window.from);
  const share = (to - from) / smaller;
  const byRule = one.shown.rule?.startsWith('around') === true && two.shown.rule?.startsWith('around') === true;
  const place = `${placeText(context.run, two.segment, from)} to ${placeText(context.run, two.segment, to)}`;
  if (byRule && share > SAME) {
    return [a, b].map((own) => {
      const other = own === a ? b : a;
      return makeFinding(
        'around-same-effect',
        at(own, 'window'),
        `${own.name} and ${other.name} were found at the same place: ${percent(100 * share)} of the smaller window, ${place}, lies in both.`,
        { about: own.name, related: [{ at: at(other, 'window'), message: 'the other window' }] },
      );
    });
  }
  const length = perKelvin === null ? `${decimalText(size, 1)} min` : kelvin(size);
  return [a, b].map((own) => {
    const other = own === a ? b : a;
    return makeFinding(
      'window-overlap',
      at(own, 'window'),
      `${own.name} and ${other.name} overlap by ${length}, from ${place}: what lies there counts twice.`,
      {
        about: own.name,
        related: [{ at: at(other, 'window'), message: 'the other window' }],
        fixes: fixes(context, own, other, (from + to) / 2),
      },
    );
  });
}

function fixes(context: CheckContext, own: StatementOutcome, other: StatementOutcome, middle: number) {
  const [mine, theirs] = [own.placed!, other.placed!];
  if (mine.window.from <= theirs.window.from && mine.window.to >= theirs.window.to) {
    return [insertClause(own.source.id, `encloses ${other.name}`)];
  }
  if (mine.shown.unit !== '°C') return [];
  const edge = mine.window.from > theirs.window.from ? 'start' : 'end';
  return moveEdge(own, mine, edge, Math.round(temperatureAt(context, middle)));
}
