import { TextDocument, type TextDocumentContentChangeEvent } from 'vscode-languageserver-textdocument';
import { record, type RpcMessage, type RpcNotification } from './rpc';

const synchronisation = new Set(['textDocument/didOpen', 'textDocument/didChange', 'textDocument/didClose']);

/**
 * The open texts as the server was told of them. The editor's own documents may be ahead of what was sent; a new server
 * must be given exactly what the next change builds on.
 */
export class TextMirror {
  private readonly texts = new Map<string, TextDocument>();

  /** True where the notification is about the open texts, and was taken in. */
  take(message: RpcNotification): boolean {
    if (!synchronisation.has(message.method)) return false;
    const params = record(message.params);
    const document = record(params['textDocument']);
    const uri = String(document['uri']);
    if (message.method === 'textDocument/didClose') this.texts.delete(uri);
    else if (message.method === 'textDocument/didOpen') this.open(uri, document);
    else this.change(uri, Number(document['version']), params['contentChanges'] as TextDocumentContentChangeEvent[]);
    return true;
  }

  /** Notifications that open every text in a new server. */
  opening(): RpcMessage[] {
    return [...this.texts.values()].map((text) => ({
      jsonrpc: '2.0',
      method: 'textDocument/didOpen',
      params: {
        textDocument: {
          uri: text.uri,
          languageId: text.languageId,
          version: text.version,
          text: text.getText(),
        },
      },
    }));
  }

  private open(uri: string, document: Readonly<Record<string, unknown>>): void {
    const { languageId, version, text } = document;
    this.texts.set(uri, TextDocument.create(uri, String(languageId), Number(version), String(text)));
  }

  private change(uri: string, version: number, changes: TextDocumentContentChangeEvent[]): void {
    const text = this.texts.get(uri);
    if (text !== undefined) TextDocument.update(text, changes, version);
  }
}
