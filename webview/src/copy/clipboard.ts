/** Puts pictures and tables on the clipboard of the page. Empty: done; else why not. */
export async function toClipboard(
  items: Readonly<Record<string, Promise<Blob> | Blob>>,
  otherwise: string,
): Promise<string> {
  // An editor over plain HTTP and some frames have no clipboard of their own.
  const clipboard = (navigator as { clipboard?: Partial<Clipboard> }).clipboard;
  if (clipboard?.write === undefined || typeof ClipboardItem === 'undefined') return otherwise;
  try {
    await clipboard.write.call(clipboard, [new ClipboardItem({ ...items })]);
    return '';
  } catch (error) {
    return error instanceof Error && error.message !== '' ? error.message : otherwise;
  }
}

/** UTF-8 text as base64. */
export function textBase64(text: string): string {
  return bytesBase64(new TextEncoder().encode(text));
}

export async function blobBase64(blob: Blob): Promise<string> {
  return bytesBase64(new Uint8Array(await blob.arrayBuffer()));
}

function bytesBase64(bytes: Uint8Array): string {
  let binary = '';
  // More arguments than this are too many for one call.
  for (let i = 0; i < bytes.length; i += 8192) binary += String.fromCharCode(...bytes.subarray(i, i + 8192));
  return btoa(binary);
}
