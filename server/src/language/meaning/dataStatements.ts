import type { ProgrammeStatement, RunStatement, Statement } from '../model';
import type { Effective } from '../program';
import { possibleAllows, type Computed } from './checker';
import { effective } from './effective';
import { itemOf, keywordOf, unreadCode, unreadDecisions, type Item, type PlacedNode, type Source } from './item';
import type { Report } from './report';
import { amountProblems } from './statementProblems';

/** What the run rests on: every one of these, misread, would give other numbers. */
const dataKinds = ['run', 'join', 'columns', 'reading', 'blank', 'mask'] as const;
type DataKind = (typeof dataKinds)[number];

/**
 * The statements about data. One that cannot be read as written must not be passed over: a blank that is not subtracted
 * or a mass that is not known changes every number, so that the values fail that rest on it.
 */
export class DataStatements {
  readonly run: Effective<RunStatement> | null;
  readonly programme: Effective<ProgrammeStatement> | null;
  private readonly read: Effective<Statement>[] = [];
  private broken = false;
  private massBroken = false;
  private directionBroken = false;

  constructor(sources: readonly Source[], report: Report) {
    for (const source of sources) {
      for (const node of source.tree.statements) this.take({ node, source }, report);
    }
    this.run = this.of('run')[0] ?? null;
    // The run's programme takes the place of the method's.
    const programmes = this.of('programme');
    this.programme = programmes.find((programme) => programme.file === 'gloss') ?? programmes[0] ?? null;
  }

  of<K extends DataKind | 'programme'>(kind: K): readonly Effective<Extract<Statement, { kind: K }>>[] {
    return this.read.filter((one): one is Effective<Extract<Statement, { kind: K }>> => one.statement.kind === kind);
  }

  /** Whether a value of this statement rests on something that could not be read. */
  isBrokenFor(statement: Computed): boolean {
    switch (statement.kind) {
      case 'let':
        return false;
      case 'onset':
        return this.broken;
      case 'peak':
      case 'glass':
        return this.broken || this.massBroken || this.directionBroken;
      default:
        return this.broken || this.massBroken;
    }
  }

  private take(placed: PlacedNode, report: Report): void {
    const keyword = keywordOf(placed);
    const data = (dataKinds as readonly string[]).includes(keyword);
    if (!data && keyword !== 'programme') return;
    const item = itemOf(placed.node, placed.source);
    if (item === null) {
      // A second `run` is ignored, not misread.
      if (data && !(keyword === 'run' && this.of('run').length > 0)) this.broken = true;
      return;
    }
    const problems = amountProblems(item.statement);
    for (const found of problems) report.add(item, found);
    if (keyword === 'run')
      this.lost(
        placed,
        problems.map((found) => found.token),
      );
    else if (data && (problems.some((found) => decides(found.token)) || unreadCode(item) !== null)) this.broken = true;
    const failed = problems.find((found) => decides(found.token))?.code ?? unreadCode(item);
    this.read.push(effective(item as Item, [], failed, possibleAllows(item, report)));
  }

  private lost({ node }: PlacedNode, tokens: readonly string[]): void {
    const wrong = (word: string): boolean =>
      unreadDecisions(node, (unread) => unread === word).length > 0 ||
      tokens.some((token) => token.startsWith(`${word}.`));
    this.massBroken ||= wrong('mass');
    this.directionBroken ||= wrong('endothermic');
    this.broken ||= wrong('rate');
  }
}

/** Crucible, gas and calibration are compared and shown, they do not enter the values. */
function decides(token: string): boolean {
  return !/^(?:crucible|atmosphere|calibrated)\b/.test(token);
}
