/**
 * Files read through the client, for a server that has no disk of its own: one in a Worker, or one beside a workspace that
 * is not on this machine. Requests go from the server to the client; addresses are URIs, and only those below a workspace
 * folder, or in the folder of an open gloss, are answered.
 */
export const fileMethod = {
  /** Request: `{ uri }` → `FileBytes`. */
  read: 'thermogloss/files/read',
  /** Request: `{ uri }` → `{ names }`: sorted names in a folder; empty where there is none. */
  list: 'thermogloss/files/list',
  /** Request: `{}` → `{ uris }`: glosses below the workspace folders, sorted. */
  glosses: 'thermogloss/files/glosses',
} as const;

export type FileBytes =
  | { readonly ok: true; readonly base64: string }
  | { readonly ok: false; readonly reason: 'missing' | 'outside' | 'unreadable'; readonly message: string };
