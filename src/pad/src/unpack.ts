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

export const fromBase64 = (text: string) => Uint8Array.from(atob(text.trim()), (c) => c.charCodeAt(0));
