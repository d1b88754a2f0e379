import type { Event } from 'vscode';
import { EventEmitter } from 'vscode';
import type { FromView, ToView } from '../../server/src/protocol/messages';
import type { Comparing } from './compare/comparing';
import type { CurvesPanels } from './curves/curvesPanels';
import type { LanguageServer } from './server/languageServer';
import type { ServerState } from './server/serverState';
import type { StatusItem } from './status/statusItem';

export interface ObservedPanel {
  readonly id: string;
  readonly uri: string;
  readonly pinned: boolean;
  readonly visible: boolean;
  readonly ready: boolean;
  readonly revision: number | null;
  readonly title: string;
  readonly html: string;
}

/** What tests in a running editor see of the extension. Not there in an installed one. */
export interface Observation {
  serverId(): number | null;
  serverState(): ServerState;
  readonly onServerState: Event<ServerState>;
  status(): StatusItem['shown'];
  /** The tree of the last comparison. */
  changes(): Comparing['view']['shown'];
  panels(): readonly ObservedPanel[];
  readonly onPosted: Event<{ readonly panel: string; readonly message: ToView }>;
  /** As if the page of a view had sent it. */
  take(panel: string, message: FromView): Promise<void>;
  closePanel(panel: string): void;
}

export function observation(
  server: LanguageServer,
  panels: CurvesPanels,
  status: StatusItem,
  comparing: Comparing,
): Observation {
  const posted = new EventEmitter<{ readonly panel: string; readonly message: ToView }>();
  panels.posted = (panel, message) => posted.fire({ panel: panel.id, message });
  const find = (id: string): CurvesPanels['registry']['all'][number] | undefined =>
    panels.registry.all.find((p) => p.id === id);
  return {
    serverId: () => server.pid,
    serverState: () => server.state,
    onServerState: server.onState,
    status: () => status.shown,
    changes: () => comparing.view.shown,
    panels: () =>
      panels.registry.all.map((p) => ({
        id: p.id,
        uri: p.uri,
        pinned: p.pinned,
        visible: p.tab.visible,
        ready: p.session.ready,
        revision: p.session.revision,
        title: p.tab.title,
        html: p.tab.webview.html,
      })),
    onPosted: posted.event,
    take: async (id, message) => find(id)?.session.take(message),
    closePanel: (id) => find(id)?.tab.dispose(),
  };
}
