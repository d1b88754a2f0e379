import { StillSource } from '../base/source';
import { Repository } from '../host/repository';
import { SourceHost } from '../host/sourceHost';
import { WorkSource } from '../host/workSource';
import { historyCsv } from '../presentation/history/historyCsv';
import { historyJson } from '../presentation/history/historyJson';
import { historyMarkdown } from '../presentation/history/historyMarkdown';
import { historyText } from '../presentation/history/historyText';
import type { HistoryModel, HistoryRow } from '../presentation/history/model';
import { unpainted } from '../presentation/paint';
import { historyOf } from '../revisions/history';
import { statementOf, writtenNames, type WrittenNames } from '../revisions/names';
import { RevisionEngine } from '../revisions/revisionEngine';
import type { State } from '../revisions/states';
import { paintFor } from './colour';
import type { Context } from './context';
import { toleranceOf } from './diff';
import { writeResults } from './evaluateAll';
import { BadUsage, done, Trouble } from './exitCodes';
import { hint, historyWish, meant, wantedGloss } from './historyArguments';
import { wantedStates } from './historyStates';
import { Progress } from './progress';

/** `thermogloss history`: one result through the revisions that touched its gloss or a file that takes part in it. */
export async function history(context: Context): Promise<number> {
  const { typed, terminal } = context;
  const wish = historyWish(context);
  const tolerance = toleranceOf(typed.values.get('tolerance'));
  const repository = await Repository.open(terminal.cwd);
  if (repository === null) throw new Trouble('there is no git repository here, or no git program');
  const work = new StillSource(new WorkSource(repository.top));
  const engine = new RevisionEngine(new SourceHost(repository.top, work));
  const progress = new Progress(terminal);
  try {
    const path = await wantedGloss(wish, terminal.cwd, engine, work);
    const display = engine.host.display(path);
    progress.now(display);
    const { states, asked, end } = await wantedStates(engine, repository, work, path, wish);
    await checkName(wish.name, display, engine, states);
    const tell = (n: number, of: number): void => progress.now(`${n} of ${of}: ${display}`);
    const options = { tolerance, bytes: (text: string) => Buffer.from(text, 'utf8'), causes: true };
    const { rows, ids } = await historyOf(engine, wish.name, states, asked, options, tell);
    if (ids.length > 0 && rows.every((r) => r.result === null && r.diff === null)) {
      throw new BadUsage(`${display} has no result ${wish.name} in these revisions${meant(wish.name, ids)}`);
    }
    const known = end.kind === 'shallow' || end.kind === 'content' ? rows.map(oldestHere) : rows;
    writeResults(context, shown(context, { name: wish.name, gloss: display, rows: known, end }));
    return done;
  } finally {
    progress.end();
    repository.rest();
  }
}

/** Where commits are missing nobody knows what the first one was. */
function oldestHere(row: HistoryRow): HistoryRow {
  return row.status === 'first' ? { ...row, status: 'oldest here' } : row;
}

/** A name that no text ever had is refused before anything is computed. */
async function checkName(
  name: string,
  display: string,
  engine: RevisionEngine,
  states: readonly State[],
): Promise<void> {
  const all: WrittenNames[] = [];
  let isThere = false;
  let unread: string | null = null;
  for (const { source, path, ...state } of states) {
    unread ??= state.unread;
    isThere ||= (await source.contentId(path)) !== null;
    const names = await writtenNames(engine, source, path);
    if (names.results.has(statementOf(name))) return;
    all.push(names);
  }
  if (unread !== null) throw new Trouble(unread);
  if (!isThere) throw new Trouble(`there is no gloss ${display}, and no revision here has one`);
  throw new BadUsage(`${display} has no result ${name} in these revisions${hint(name, all)}`);
}

function shown({ typed, terminal }: Context, model: HistoryModel): string {
  switch (typed.values.get('format')) {
    case 'json':
      return `${JSON.stringify(historyJson(model))}\n`;
    case 'csv':
      return historyCsv(model);
    case 'markdown':
      return historyMarkdown(model);
    default:
      return historyText(model, typed.values.has('output') ? unpainted : paintFor(terminal, terminal.outIsTerminal));
  }
}
