import type { FromView, KeptView, ToView } from '../../server/src/protocol/messages';

/** The only way out of the page: messages, and a small JSON that the host keeps for it. */
export interface Port {
  post(message: FromView): void;
  onMessage(handler: (message: ToView) => void): void;
  /** What was kept last, of unknown age and shape; undefined where nothing was. */
  getState(): unknown;
  setState(kept: KeptView): void;
}
