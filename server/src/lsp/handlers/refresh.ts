/**
 * Asks the client to ask again, at most once at a time: what happens while an answer is awaited is one more question
 * behind it. So a burst of evaluations is two questions, whatever its length, and the last is never lost.
 */
export function coalesced(ask: () => Promise<unknown>, fault: (error: unknown) => void): () => void {
  let asking = false;
  let again = false;
  const run = async (): Promise<void> => {
    asking = true;
    do {
      again = false;
      try {
        await ask();
      } catch (error) {
        fault(error);
      }
    } while (again);
    asking = false;
  };
  return () => {
    if (asking) again = true;
    else void run();
  };
}
