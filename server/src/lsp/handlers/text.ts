import type { Connection, ServerCapabilities } from 'vscode-languageserver';
import type { ClientState } from '../clientState';
import type { LiveWorkspace } from '../liveWorkspace';
import type { Guard } from './guard';

export const textCapabilities: ServerCapabilities = {};

export function registerText(
  connection: Connection,
  workspace: LiveWorkspace,
  guard: Guard,
  client: ClientState,
): void {
  void [connection, workspace, guard, client];
}
