import type { ReportParams } from '../../../server/src/protocol/compare';
import { lastPart } from '../text/fileName';

/** `a.report.html` for `/lab/a.gloss`: beside the gloss and its data, told apart from both. */
export function reportName(path: string, format: ReportParams['format']): string {
  const stem = lastPart(path).replace(/\.gloss$/, '');
  return `${stem}.report.${format === 'html' ? 'html' : 'md'}`;
}
