import { commands, l10n, MarkdownString, StatusBarAlignment, window, workspace } from 'vscode';
import type { Disposable, ExtensionContext } from 'vscode';
import { method, type StatusParams } from '../../../server/src/protocol/messages';
import { isGloss } from '../server/documentSelector';
import type { LanguageServer } from '../server/languageServer';
import type { InlineSwitch } from '../server/middleware';
import { statusText } from './statusText';

const helpedKey = 'hintsHelpRead';

/** The one item in the status bar: how the active gloss stands. Shown with a gloss only. */
export class StatusItem implements Disposable {
  private readonly item = window.createStatusBarItem('thermogloss.status', StatusBarAlignment.Right, 90);
  private readonly heard = new Map<string, StatusParams>();
  private readonly disposables: Disposable[];

  constructor(
    private readonly context: ExtensionContext,
    private readonly server: LanguageServer,
    private readonly inline: InlineSwitch,
  ) {
    this.item.name = l10n.t('Thermogloss results');
    this.item.command = 'thermogloss.showCurves';
    server.onNotification<StatusParams>(method.status, (params) => {
      // Versions of one text come in order; an answer about an older one says nothing about this one.
      if ((this.heard.get(params.uri)?.version ?? -1) <= params.version) this.heard.set(params.uri, params);
      this.again();
    });
    this.disposables = [
      this.item,
      server.onState((state) => {
        if (state === 'starting' || state === 'back') this.heard.clear();
        this.again();
      }),
      window.onDidChangeActiveTextEditor(() => this.again()),
      workspace.onDidCloseTextDocument((d) => this.heard.delete(d.uri.toString())),
      workspace.onDidChangeConfiguration((e) => {
        if (e.affectsConfiguration('editor.inlayHints')) this.again();
      }),
      commands.registerCommand('thermogloss.hintsHelpRead', async () => {
        await context.globalState.update(helpedKey, true);
        this.again();
      }),
    ];
  }

  /** For tests in the editor. */
  get shown(): { readonly text: string; readonly help: boolean } {
    return { text: this.item.text, help: this.text().help };
  }

  again(): void {
    const document = window.activeTextEditor?.document;
    if (document === undefined || !isGloss(document)) return this.item.hide();
    const { text, lines, help } = this.text();
    this.item.text = text;
    this.item.tooltip = tooltip(lines, help);
    this.item.accessibilityInformation = { label: lines.join(' ') };
    this.item.show();
  }

  dispose(): void {
    this.disposables.forEach((d) => d.dispose());
  }

  private text(): ReturnType<typeof statusText> {
    const document = window.activeTextEditor?.document;
    return statusText(
      {
        server: this.server.state,
        gloss: document === undefined ? null : (this.heard.get(document.uri.toString()) ?? null),
        hints: workspace.getConfiguration('editor', document).get<string>('inlayHints.enabled', 'on'),
        helped: this.context.globalState.get(helpedKey, false),
        inline: this.inline.shown,
      },
      (message, ...args) => l10n.t(message, ...args),
    );
  }
}

function tooltip(lines: readonly string[], help: boolean): MarkdownString {
  const text = new MarkdownString('', true);
  const enabledCommands = [
    'thermogloss.showCurves',
    'thermogloss.showLog',
    'thermogloss.restartServer',
    'thermogloss.hintsHelpRead',
    'workbench.action.openSettings',
  ];
  text.isTrusted = { enabledCommands };
  for (const line of lines) text.appendText(line).appendMarkdown('\n\n');
  const links = [
    [l10n.t('Show Curves'), 'command:thermogloss.showCurves'],
    [l10n.t('Show Log'), 'command:thermogloss.showLog'],
    [l10n.t('Restart Server'), 'command:thermogloss.restartServer'],
    ...(help
      ? [
          [l10n.t('Open the Setting'), settingLink('editor.inlayHints.enabled')],
          [l10n.t('Understood'), 'command:thermogloss.hintsHelpRead'],
        ]
      : []),
  ];
  return text.appendMarkdown(links.map(([label, target]) => `[${label}](${target})`).join(' · '));
}

function settingLink(name: string): string {
  return `command:workbench.action.openSettings?${encodeURIComponent(JSON.stringify([name]))}`;
}
