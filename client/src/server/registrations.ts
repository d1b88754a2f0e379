import { record } from './rpc';

interface Registration {
  readonly id: string;
  readonly method: string;
  readonly registerOptions?: unknown;
}

/**
 * What a server registered with the editor while running. A server that is started again registers the same things under
 * new ids: the editor keeps what it has, so that nothing shown by it goes away, and the new ids stand for the old ones.
 */
export class Registrations {
  /** Id the editor knows, by what was registered. */
  private readonly known = new Map<string, string>();
  /** Id the editor knows, by the id of the running server. */
  private readonly ids = new Map<string, string>();

  /** Parameters of `client/registerCapability` to pass on; null: the editor has all of it already. */
  register(params: unknown): { readonly registrations: readonly Registration[] } | null {
    const all = (record(params)['registrations'] ?? []) as readonly Registration[];
    const fresh = all.filter((registration) => {
      const what = `${registration.method} ${JSON.stringify(registration.registerOptions ?? null)}`;
      const id = this.known.get(what);
      if (id === undefined) this.known.set(what, registration.id);
      this.ids.set(registration.id, id ?? registration.id);
      return id === undefined;
    });
    return fresh.length === 0 ? null : { registrations: fresh };
  }

  /** Parameters of `client/unregisterCapability` with the ids that the editor knows. */
  unregister(params: unknown): unknown {
    // The protocol spells it so (LSP 3.17).
    const all = (record(params)['unregisterations'] ?? []) as readonly Registration[];
    const unregisterations = all.map(({ id, method }) => ({ id: this.ids.get(id) ?? id, method }));
    for (const { id } of unregisterations) {
      for (const [what, known] of this.known) if (known === id) this.known.delete(what);
    }
    return { unregisterations };
  }
}
