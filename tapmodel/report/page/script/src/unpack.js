/** What comes packed as gzip in base64. */

/**
 * @param {string} text
 * @returns {Promise<ArrayBuffer>}
 */
export async function unpacked(text) {
  const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Response(stream).arrayBuffer();
}

export const CAN_UNPACK = "DecompressionStream" in globalThis;
