import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import type { Amount } from '../../language/model';
import type { StatementOutcome } from '../outcome';
import { isTime } from '../place';
import { defaults } from '../settings';
import { temperatureAt } from './buoyancy';
import type { CheckContext } from './context';
import { at, count, kelvin, minutes, moveEdge, replaceToken } from './wording';

/** Where a window lies in its segment, before anything is said about the curve in it. */
export function checkWindow(context: CheckContext, outcome: StatementOutcome): Finding[] {
  return [
    ...crossesSegments(context, outcome),
    ...inTransient(context, outcome),
    ...kelvinInHold(outcome),
    ...edgeAtEnd(context, outcome),
  ];
}

function crossesSegments(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const { placed, source } = outcome;
  const { kind } = source.statement;
  if (placed === null || placed.segment !== null || kind === 'residue') return [];
  const crossed = context.run.segments.filter((s) => s.end > placed.window.from + 1 && s.start < placed.window.to - 1);
  if (crossed.length < 2) return [];
  const inner = crossed[0].end;
  return [
    makeFinding(
      'window-crosses-segments',
      at(outcome, 'window'),
      `The window ${minutes(placed.window.from)} to ${minutes(placed.window.to)} spans ${crossed.map((s) => s.name).join(', ')}; ${crossed[0].name} ends at ${minutes(inner)}.`,
      { about: outcome.name, severity: kind === 'step' ? 'warning' : 'error' },
    ),
  ];
}

function inTransient(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const { placed, source, signal } = outcome;
  const { kind } = source.statement;
  if (!placed?.segment || signal !== 'heatflow' || kind === 'crossing') return [];
  const limit = 60 * context.limit('window-in-transient');
  const since = placed.window.from - placed.segment.start;
  if (since >= limit) return [];
  const later = placed.segment.start + limit;
  const fixes =
    placed.shown.unit === '°C' && later < placed.window.to
      ? moveEdge(outcome, placed, 'start', Math.round(temperatureAt(context, later)))
      : [];
  return [
    makeFinding(
      'window-in-transient',
      at(outcome, 'window'),
      `The window begins ${minutes(since)} after the start of ${placed.segment.name} (limit ${minutes(limit)}): the heat flow is still settling.`,
      { about: outcome.name, fixes },
    ),
  ];
}

function kelvinInHold(outcome: StatementOutcome): Finding[] {
  const { placed, source } = outcome;
  const { statement } = source;
  if (placed?.segment?.direction !== 'hold') return [];
  const widths: readonly (readonly [string, Amount | 'none' | null, number])[] = [
    ['span', 'span' in statement ? statement.span : null, defaults.span.seconds],
    ['smooth', 'smooth' in statement ? statement.smooth : null, defaults.smooth.seconds],
    ['over', 'over' in statement ? statement.over : null, defaults.over.seconds],
  ];
  return widths.flatMap(([word, width, seconds]) => {
    if (width === null || width === 'none' || isTime(width)) return [];
    return [
      makeFinding(
        'kelvin-in-hold',
        at(outcome, `${word}.value`),
        `${placed.segment!.name} stays at one temperature: ${width.text} is no length there. Write a time, such as ${count(seconds)} s.`,
        {
          about: outcome.name,
          fixes: [replaceToken(`Write ${count(seconds)} s`, at(outcome, `${word}.value`), `${count(seconds)} s`)],
        },
      ),
    ];
  });
}

function edgeAtEnd(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const { placed, source } = outcome;
  const { kind } = source.statement;
  if (!placed?.segment || placed.secondsPerKelvin === null || kind === 'residue' || kind === 'crossing') return [];
  const limit = context.limit('edge-not-budgeted');
  const { segment, window, secondsPerKelvin } = placed;
  const edges = [
    { name: 'start', room: (window.from - segment.start) / secondsPerKelvin.from },
    { name: 'end', room: (segment.end - window.to) / secondsPerKelvin.to },
  ];
  return edges
    .filter(({ room }) => room < limit)
    .map(({ name, room }) =>
      makeFinding(
        'edge-not-budgeted',
        at(outcome, 'window'),
        `The ${name} of the window lies ${kelvin(Math.max(room, 0))} from the ${name} of ${segment.name}: it could not be moved by ${kelvin(limit)} both ways, so its part in the uncertainty may be too small.`,
        { about: outcome.name },
      ),
    );
}
