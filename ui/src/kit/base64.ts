// Bytes as text (RFC 4648, section 4), as a file is handed to the core.

/** Bytes in base64. */
export function toBase64(bytes: Uint8Array): string {
  let text = '';
  // In pieces: a call takes only so many arguments.
  for (let i = 0; i < bytes.length; i += 8192) text += String.fromCharCode(...bytes.subarray(i, i + 8192));
  return btoa(text);
}
