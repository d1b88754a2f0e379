/** How the language server stands, as the client sees it. */
export type ServerState = 'starting' | 'running' | 'lost' | 'back' | 'failed' | 'stopped';
