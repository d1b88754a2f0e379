import { commands } from 'vscode';
import type { ObservedPanel, Observation } from '../../../client/src/observation';
import type { FromView, ToView } from '../../../server/src/protocol/messages';
import type { ViewState } from '../../../server/src/protocol/view';
import { until } from './extension';

export interface Watched {
  readonly messages: readonly { readonly panel: string; readonly message: ToView }[];
  /** The newest state that was sent to a view. */
  state(panel: string): ViewState | undefined;
  stop(): void;
}

/** Notes what is sent to the views. */
export function watch(extension: Observation): Watched {
  const messages: { readonly panel: string; readonly message: ToView }[] = [];
  const listening = extension.onPosted((posted) => messages.push(posted));
  return {
    messages,
    state(panel) {
      const last = messages.filter((m) => m.panel === panel && m.message.type === 'state').at(-1)?.message;
      return last?.type === 'state' ? last.state : undefined;
    },
    stop: () => listening.dispose(),
  };
}

export function view(extension: Observation, id: string): ObservedPanel | undefined {
  return extension.panels().find((p) => p.id === id);
}

/** Shows the curves of the active gloss and waits until its page has said that it is there. */
export async function showCurves(extension: Observation): Promise<ObservedPanel> {
  const before = new Set(extension.panels().map((p) => p.id));
  await commands.executeCommand('thermogloss.showCurves');
  return until('the page of the view', () => {
    const panels = extension.panels();
    return (panels.find((p) => !before.has(p.id)) ?? panels.find((p) => p.visible && p.ready))?.ready === true
      ? (panels.find((p) => !before.has(p.id)) ?? panels.find((p) => p.visible && p.ready))
      : undefined;
  });
}

/** A state that is current, of a text version or later. */
export async function current(watched: Watched, panel: string, version = 0): Promise<ViewState> {
  const standing = (): ViewState | undefined => {
    const state = watched.state(panel);
    return state?.freshness.state === 'current' && state.generation.version >= version ? state : undefined;
  };
  return until(`a current picture of version ${version}`, standing).catch(() => {
    const state = watched.state(panel);
    const seen = state === undefined ? 'none' : `${state.freshness.text}, version ${state.generation.version}`;
    throw new Error(`No current picture of version ${version}, but ${seen}`);
  });
}

/** Sends what the page of a view would send, and gives the answer to it. */
export async function ask<T extends ToView['type']>(
  extension: Observation,
  watched: Watched,
  panel: string,
  message: FromView & { readonly call: number },
): Promise<Extract<ToView, { readonly type: T }>> {
  await extension.take(panel, message);
  const found = watched.messages.map((m) => m.message).filter((m) => 'call' in m && m.call === message.call);
  return found.at(-1) as Extract<ToView, { readonly type: T }>;
}
