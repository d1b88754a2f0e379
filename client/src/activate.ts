import { commands, ExtensionMode, l10n, Uri, window, type ExtensionContext } from 'vscode';
import type { ComparedWith } from '../../server/src/protocol/compare';
import { method } from '../../server/src/protocol/messages';
import { approveGloss, type Said } from './commands/approveWorld';
import { copyResults, type TableFormat } from './commands/copyResults';
import { draftGloss } from './commands/draftGloss';
import { InlineResults } from './commands/inlineResults';
import { openExample } from './commands/openExample';
import { writeReport, type ReportWishes } from './commands/writeReport';
import { Comparing } from './compare/comparing';
import type { ChangeNode } from './compare/nodes';
import { CurvesPanels } from './curves/curvesPanels';
import type { Writable } from './curves/editable';
import { observation, type Observation } from './observation';
import { serveFiles } from './files/serveFiles';
import { watchCommits } from './files/watchCommits';
import { watchFiles } from './files/watchFiles';
import { isGloss } from './server/documentSelector';
import { LanguageServer, type ServerEntry } from './server/languageServer';
import { tellOfLosses } from './status/losses';
import { StatusItem } from './status/statusItem';

/** What differs between a desktop editor and a browser. */
export interface Platform extends ServerEntry {
  readonly writable: Writable;
}

/** Wires the parts together and starts the server without waiting for it. */
export function activateWith(
  context: ExtensionContext,
  platform: Platform,
): { readonly server: LanguageServer; readonly observed: Observation | undefined } {
  const log = window.createOutputChannel('Thermogloss', { log: true });
  const inline = new InlineResults(context.workspaceState);
  const server = new LanguageServer(platform, log, inline);
  const panels = new CurvesPanels(context, server, platform.writable, (message) => log.error(`Curves: ${message}`));
  const comparing = new Comparing(server, panels);
  const status = new StatusItem(context, server, inline);
  serveFiles(server);
  const showLog = (): void => log.show(true);
  const tools = { server, note: (line: string) => log.info(line), showLog };
  const entries: readonly (readonly [string, (...args: never[]) => unknown])[] = [
    ['draft', (run?: unknown) => draftGloss(tools, address(run))],
    ['showCurves', (gloss?: unknown) => panels.show(address(gloss)) !== null],
    ['keepCurves', () => panels.pinActive(true)],
    ['followCurves', () => panels.pinActive(false)],
    ['restartServer', () => server.restart()],
    ['copyResults', (gloss?: unknown, form?: TableFormat) => copyResults(server, address(gloss), form)],
    ['compareResults', (gloss?: unknown, other?: ComparedWith) => comparing.compare(address(gloss), other)],
    ['compareAgain', () => comparing.again()],
    ['openChange', (node?: ChangeNode) => comparing.openChange(node)],
    ['compareInCurves', (node?: ChangeNode) => comparing.showInCurves(node)],
    ['writeReport', (gloss?: unknown, wishes?: ReportWishes) => writeReport(server, address(gloss), wishes)],
    ['evaluate', (gloss?: unknown) => evaluate(server, address(gloss))],
    ['toggleInline', () => toggleInline(inline, server, status)],
    ['approve', (gloss?: unknown, said?: Said) => approveGloss(server, platform.writable, address(gloss), said)],
    ['openExample', (folder?: unknown) => openExample(context, address(folder))],
    ['showLog', showLog],
  ];
  context.subscriptions.push(
    log,
    server,
    panels,
    comparing,
    status,
    tellOfLosses(server, showLog),
    watchFiles(server, (uri) => panels.lookFor(uri)),
    watchCommits(server),
    ...entries.map(([name, call]) => commands.registerCommand(`thermogloss.${name}`, call as () => unknown)),
  );
  server.start();
  status.again();
  const watched = context.extensionMode !== ExtensionMode.Production;
  return { server, observed: watched ? observation(server, panels, status, comparing) : undefined };
}

/** Commands come with addresses from menus, with texts from the curves view, and with nothing from the palette. */
function address(value: unknown): Uri | undefined {
  if (value instanceof Uri) return value;
  return typeof value === 'string' && value !== '' ? Uri.parse(value) : undefined;
}

async function evaluate(server: LanguageServer, gloss: Uri | undefined): Promise<void> {
  const active = window.activeTextEditor?.document;
  const uri = gloss ?? (active !== undefined && isGloss(active) ? active.uri : undefined);
  if (uri !== undefined) await server.request(method.evaluate, { uri: uri.toString() });
}

async function toggleInline(inline: InlineResults, server: LanguageServer, status: StatusItem): Promise<void> {
  await inline.toggle();
  await server.refreshInline();
  status.again();
  const words = inline.shown ? l10n.t('Inline results are shown.') : l10n.t('Inline results are hidden.');
  window.setStatusBarMessage(words, 4000);
}
