const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

/** Bytes as text that may stand in a link: base64url without padding, RFC 4648 §5. */
export function toBase64url(bytes: Uint8Array): string {
  let text = '';
  for (let i = 0; i < bytes.length; i += 3) {
    const left = Math.min(3, bytes.length - i);
    const group = (bytes[i] << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    for (let j = 0; j <= left; j++) text += alphabet[(group >> (18 - 6 * j)) & 63];
  }
  return text;
}

/** The bytes back, or undefined where the text is not base64url. */
export function fromBase64url(text: string): Uint8Array | undefined {
  if (text.length % 4 === 1) return undefined;
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  let group = 0;
  let bits = 0;
  let at = 0;
  for (const character of text) {
    const value = alphabet.indexOf(character);
    if (value < 0) return undefined;
    group = ((group << 6) | value) & 0xffffff;
    bits += 6;
    if (bits >= 8) {
      bits -= 8;
      bytes[at++] = (group >> bits) & 255;
    }
  }
  return bytes;
}
