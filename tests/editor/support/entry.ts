/** Which entry of the manifest this host has started: there is no Node in a browser's worker. */
export const entryInUse: 'main' | 'browser' =
  typeof process === 'object' && typeof process.versions?.node === 'string' ? 'main' : 'browser';
