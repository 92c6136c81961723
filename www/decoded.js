// @ts-check
// Files as texts, in the characters in which they were written.

/** Bytes in which an XML declaration stands. */
const HEAD = 200;
const BY_START = { 'utf-16le': /^(\xff\xfe|<\0)/, 'utf-16be': /^(\xfe\xff|\0<)/ };

/** @param {ArrayBuffer} bytes */
export function decoded(bytes) {
  const head = String.fromCharCode(...new Uint8Array(bytes.slice(0, HEAD)));
  for (const [encoding, start] of Object.entries(BY_START)) {
    if (start.test(head)) return new TextDecoder(encoding).decode(bytes);
  }
  return named(head).decode(bytes);
}

/**
 * What an XML declaration names, unless nobody knows it or the declaration could not be read in it.
 * @param {string} head
 */
function named(head) {
  const [, name = 'utf-8'] = /^<\?xml[^>]*encoding=["'](?!utf-?16)([\w-]+)/i.exec(head) ?? [];
  try {
    return new TextDecoder(name);
  } catch {
    return new TextDecoder();
  }
}
