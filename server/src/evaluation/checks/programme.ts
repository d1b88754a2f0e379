import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { numberText } from '../../findings/numberText';
import { fixedLimit } from '../../findings/table';
import type { Amount, ProgrammeStatement } from '../../language/model';
import type { Segment } from '../../runs/run';
import { celsiusOf } from '../place';
import type { CheckContext } from './context';
import { percent, replaceToken } from './wording';

type Part = ProgrammeStatement['parts'][number];

/** The segments of the run against the programme stated, part by part. */
export function checkProgramme(context: CheckContext): Finding[] {
  const programme = context.program.programme;
  if (programme === null || programme.failed !== null) return [];
  const findings: Finding[] = [];
  let next = 0;
  for (const part of programme.statement.parts) {
    const index = context.run.segments.findIndex((s, i) => i >= next && s.direction === directionOf(part));
    if (index < 0) {
      findings.push(
        makeFinding(
          'programme-mismatch',
          { statement: programme.id, token: part.token },
          `The run has no ${directionOf(part)} for this part; it has ${context.run.segments.map((s) => s.name).join(', ')}.`,
        ),
      );
      continue;
    }
    next = index + 1;
    if (part.part !== 'hold') findings.push(...compare(context, programme.id, part, context.run.segments[index]));
  }
  return findings;
}

function directionOf(part: Part): Segment['direction'] {
  return part.part === 'heat' ? 'heating' : part.part === 'cool' ? 'cooling' : 'hold';
}

function compare(
  context: CheckContext,
  id: string,
  part: Extract<Part, { rate: Amount }>,
  segment: Segment,
): Finding[] {
  const differences: string[] = [];
  const nominal = Math.abs(part.rate.value * (part.rate.unit?.factor ?? 1 / 60) * 60);
  const measured = Math.abs(segment.rate ?? 0);
  const off = 100 * (measured / nominal - 1);
  const limit = context.limit('programme-mismatch');
  const wrongRate = Math.abs(off) > limit;
  if (wrongRate) {
    differences.push(
      `runs at ${numberText(measured, 2)} K/min instead of ${numberText(nominal, 2)} K/min (${percent(Math.abs(off))} off, limit ${percent(limit)})`,
    );
  }
  const end = celsiusOf(part.to);
  const tolerance = fixedLimit('programme-mismatch', 1);
  const wrongEnd = Math.abs(segment.to - end) > tolerance;
  if (wrongEnd) {
    differences.push(
      `ends at ${numberText(segment.to, 1)} °C instead of ${numberText(end, 1)} °C (limit ${numberText(tolerance, 1)} K)`,
    );
  }
  if (differences.length === 0) return [];
  const from = part.from === null ? '' : `${part.from.text} `;
  const to = wrongEnd ? `${numberText(segment.to, 0)} °C` : part.to.text;
  const rate = wrongRate ? `${numberText(measured, 2)} K/min` : part.rate.text;
  const where = { statement: id, token: `${part.token}.value` };
  return [
    makeFinding(
      'programme-mismatch',
      { statement: id, token: part.token },
      `${segment.name} ${differences.join(' and ')}.`,
      {
        fixes: [replaceToken('Write what was run', where, `${from}to ${to} at ${rate}`)],
      },
    ),
  ];
}
