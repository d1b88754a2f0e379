import type { FromView, KeptView, ToView } from '../../server/src/protocol/messages';
import type { Port } from './port';
import { openSheet } from './sheet';
import { useWords } from './words';

/** What the editor gives a page to talk to it with. */
interface Host {
  postMessage(message: FromView): void;
  getState(): unknown;
  setState(kept: KeptView): void;
}

declare function acquireVsCodeApi(): Host;

const host = acquireVsCodeApi();
const port: Port = {
  post: (message) => host.postMessage(message),
  onMessage(handler) {
    window.addEventListener('message', (event: MessageEvent<unknown>) => {
      const { data } = event;
      if (typeof data === 'object' && data !== null && 'type' in data) handler(data as ToView);
    });
  },
  getState: () => host.getState(),
  setState: (kept) => host.setState(kept),
};
const fault = (what: unknown): void => {
  port.post({ type: 'fault', message: what instanceof Error ? (what.stack ?? what.message) : String(what) });
};
window.addEventListener('error', (event) => fault(event.error ?? event.message));
window.addEventListener('unhandledrejection', (event) => fault(event.reason));

useWords(words());
openSheet(document.getElementById('view') ?? document.body.appendChild(document.createElement('div')), port, {
  after(ms, work) {
    const id = setTimeout(work, ms);
    return () => clearTimeout(id);
  },
});

/** Words of another language, where the page brings them. */
function words(): unknown {
  try {
    return JSON.parse(document.body.dataset.words ?? 'null');
  } catch {
    return null;
  }
}
