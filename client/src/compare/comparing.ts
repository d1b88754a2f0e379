import { l10n, Uri, window, type Disposable } from 'vscode';
import {
  compareMethod,
  type CompareAnswer,
  type CompareParams,
  type ComparedWith,
  type Comparison,
} from '../../../server/src/protocol/compare';
import type { CurvesPanels } from '../curves/curvesPanels';
import { isGloss } from '../server/documentSelector';
import type { LanguageServer } from '../server/languageServer';
import { ChangesView } from './changesView';
import { chooseOther } from './chooseOther';
import type { ChangeNode } from './nodes';
import { openChange } from './openChange';
import { provideOldTexts } from './oldTexts';

interface Last {
  readonly asked: CompareParams;
  readonly comparison: Comparison;
}

/** Compares the results of a gloss, as it stands in the editor, and keeps the last comparison in sight. */
export class Comparing implements Disposable {
  readonly view = new ChangesView();
  private readonly texts: Disposable;
  private last: Last | null = null;
  private count = 0;

  constructor(
    private readonly server: LanguageServer,
    private readonly panels: CurvesPanels,
  ) {
    this.texts = provideOldTexts(server);
  }

  /** True once a comparison is shown. */
  async compare(gloss?: Uri, other?: ComparedWith): Promise<boolean> {
    const active = window.activeTextEditor?.document;
    const uri = gloss ?? (active !== undefined && isGloss(active) ? active.uri : undefined);
    if (uri === undefined) {
      void window.showInformationMessage(l10n.t('Open a gloss first: its results are compared.'));
      return false;
    }
    const by = other ?? (await chooseOther(this.server, uri));
    return by === undefined ? false : this.ask({ uri: uri.toString(), with: by });
  }

  /** The same again, with the texts as they stand now. */
  async again(): Promise<boolean> {
    return this.last === null ? this.compare() : this.ask(this.last.asked);
  }

  async openChange(node?: ChangeNode): Promise<void> {
    const place = node?.row?.place ?? null;
    if (place !== null && this.last !== null) await openChange(place, this.last.comparison.from, this.count);
  }

  /** Lays the old side over the curves of the gloss. */
  showInCurves(node?: ChangeNode): void {
    const gloss = node?.gloss ?? this.last?.comparison.glosses.find((g) => g.over !== null);
    if (gloss === undefined || gloss.uri === null || gloss.over === null) {
      void window.showInformationMessage(l10n.t('There are no curves of the other side to show.'));
      return;
    }
    const panel = this.panels.show(Uri.parse(gloss.uri));
    const { over } = gloss;
    if (over.kind === 'against') panel?.session.choose({ against: over.name });
    else panel?.session.choose({ overlays: [over.uri] });
  }

  dispose(): void {
    this.view.dispose();
    this.texts.dispose();
  }

  private async ask(asked: CompareParams): Promise<boolean> {
    const title = l10n.t('Comparing results');
    const answer = await window.withProgress({ location: { viewId: 'thermogloss.changes' }, title }, () =>
      this.server.request<CompareAnswer>(compareMethod.compare, asked),
    );
    if (answer === null || !answer.ok) {
      const reason = answer?.message ?? l10n.t('The language server gave no answer.');
      void window.showErrorMessage(l10n.t('The results could not be compared: {0}', reason));
      return false;
    }
    this.last = { asked, comparison: answer.comparison };
    this.count += 1;
    await this.view.show(answer.comparison);
    return true;
  }
}
