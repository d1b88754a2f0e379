import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { numberText } from '../../findings/numberText';
import type { CheckContext } from './context';

/** One data text under two names, and joined files that do not belong to the run. */
export function checkFiles(context: CheckContext): Finding[] {
  return [...sameContent(context), ...joins(context)];
}

function sameContent(context: CheckContext): Finding[] {
  const findings: Finding[] = [];
  context.files.forEach((file, index) => {
    const twin = context.files.slice(0, index).find((f) => f.identity === file.identity && f.display !== file.display);
    if (twin === undefined) return;
    findings.push(
      makeFinding(
        'content-twice',
        { statement: file.statement, token: file.token },
        `${file.display} holds the same data as ${twin.display} (SHA-256 ${file.identity.slice(0, 12)}…).`,
        {
          related: [
            { at: { statement: twin.statement, token: twin.token }, message: `the same data, as ${twin.display}` },
          ],
        },
      ),
    );
  });
  return findings;
}

function joins(context: CheckContext): Finding[] {
  const limit = context.limit('join-mismatch');
  return context.joins
    .filter((j) => j.temperatureDifference !== null && j.temperatureDifference > limit)
    .map((j) =>
      makeFinding(
        'join-mismatch',
        { statement: j.id, token: 'head' },
        `At equal times the temperature of ${j.display} differs from that of the run by up to ${numberText(j.temperatureDifference!, 1)} K (limit ${numberText(limit, 1)} K).`,
      ),
    );
}
