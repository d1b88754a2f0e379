import { method, type StateParams } from '../../../server/src/protocol/messages';
import type { ViewState } from '../../../server/src/protocol/view';
import type { TestClient } from './client';

/** The states of a client's views as they come; `next` waits for the first that is as wanted. */
export function gatheredViews(client: TestClient): {
  readonly seen: readonly ViewState[];
  next(wanted: (state: ViewState) => boolean): Promise<ViewState>;
} {
  const seen: ViewState[] = [];
  const waiting: ((state: ViewState) => void)[] = [];
  client.connection.onNotification(method.state, ({ state }: StateParams) => {
    seen.push(state);
    waiting.splice(0).forEach((call) => call(state));
  });
  return {
    seen,
    async next(wanted) {
      let state = seen.find(wanted);
      while (state === undefined) {
        const come = await new Promise<ViewState>((done) => waiting.push(done));
        state = wanted(come) ? come : undefined;
      }
      return state;
    },
  };
}
