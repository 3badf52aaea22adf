/// Unpacks gzip.
export async function unpacked(packed: Uint8Array): Promise<Uint8Array> {
  // Some browsers cannot read a blob on a page opened as a file, so the bytes are written to the stream directly.
  const unpacking = new DecompressionStream('gzip');
  const writer = unpacking.writable.getWriter();
  void writer.write(packed as BufferSource).then(() => writer.close());
  const chunks: Uint8Array[] = [];
  const reader = unpacking.readable.getReader();
  for (let read = await reader.read(); !read.done; read = await reader.read()) chunks.push(read.value);
  const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}

/// Bytes from text: five letters for four bytes, a sixteenth shorter than base64. The first letter says how many bytes
/// the last group has too many.
export function fromText(text: string): Uint8Array {
  const letters = text.trim();
  const words = new Uint32Array((letters.length - 1) / 5);
  for (let i = 0; i < words.length; i++) {
    let word = 0;
    for (let k = 5 * i + 1; k < 5 * i + 6; k++) {
      const code = letters.charCodeAt(k);
      word = word * 85 + code - (code > 92 ? 37 : code > 60 ? 36 : 35);
    }
    words[i] = word;
  }
  const bytes = new DataView(new ArrayBuffer(4 * words.length));
  words.forEach((word, i) => bytes.setUint32(4 * i, word));
  return new Uint8Array(bytes.buffer, 0, bytes.byteLength - Number(letters[0]));
}
