import type { ClauseRecord } from '../../language/vocabulary/record';
import { signalRecord } from '../../language/vocabulary/signals';
import { writeText } from '../../language/writing/writeText';
import type { LineToken } from '../lineTokens';
import { isWord, type CompletionContext } from './context';
import { word } from './heads';
import { value, type Offer } from './offer';
import { plainUnit, unitsOf } from './units';

/** The columns of the file by their headers, or by number where they have none. */
export async function columnOffers(
  context: CompletionContext,
  clause: ClauseRecord,
  args: readonly LineToken[],
  units: (of: readonly string[]) => Offer[],
): Promise<Offer[]> {
  const { cursor, document } = context;
  const statement = cursor.owner?.statement ?? null;
  const of = statement?.kind === 'columns' ? statement.of : null;
  const last = args.at(-1);
  if (isWord(last, 'in')) {
    return units([
      ...unitsOf(signalRecord(clause.word)?.measures ?? []),
      ...(clause.word === 'time' ? [] : [plainUnit]),
    ]);
  }
  if (args.length > 0 && !isWord(last, 'column'))
    return args.some((t) => isWord(t, 'in')) ? [] : [word('in', 'its unit')];
  const columns = await document.project.engine.columns(document.path, document.text, of);
  return columns.flatMap(({ number, header, unitText }): Offer[] => {
    const told = [header === '' ? 'no header' : header, unitText].filter((t) => t !== '').join(', ');
    if (isWord(last, 'column')) return [value(`${number}`, told)];
    const text = writeText(header);
    const byName: Offer = {
      label: text,
      kind: 'value',
      detail: `column ${number}`,
      insert: cursor.quoted === null ? text : text.slice(1, -1),
      filter: cursor.quoted === null ? text : header,
      replace: cursor.quoted ?? cursor.typed,
    };
    const byNumber: Offer[] = cursor.quoted === null ? [value(`column ${number}`, told)] : [];
    return header === '' ? byNumber : [byName, ...byNumber];
  });
}
