// Runs the library in a worker, so that typing never waits for it.
import { decompress } from 'brotli/decompress.js';

interface Door {
  memory: WebAssembly.Memory;
  input(length: number): number;
  run(): number;
  part(index: number): number;
  part_len(index: number): number;
}

let door: Promise<Door>;

async function started(packed: ArrayBuffer): Promise<Door> {
  // Few browsers can unpack this themselves.
  const bytes = decompress(new Uint8Array(packed));
  const { instance } = await WebAssembly.instantiate(bytes as BufferSource, {});
  return instance.exports as unknown as Door;
}

function parts(door: Door, count: number): Uint8Array[] {
  const all: Uint8Array[] = [];
  for (let i = 0; i < count; i++) {
    all.push(new Uint8Array(door.memory.buffer, door.part(i), door.part_len(i)).slice());
  }
  return all;
}

function asked(door: Door, request: object, file: Uint8Array): Uint8Array[] {
  const head = new TextEncoder().encode(JSON.stringify(request));
  const at = door.input(head.length + 1 + file.length);
  const room = new Uint8Array(door.memory.buffer, at, head.length + 1 + file.length);
  room.set(head);
  room[head.length] = 0;
  room.set(file, head.length + 1);
  return parts(door, door.run());
}

onmessage = async (event: MessageEvent) => {
  const { packed, id, request, file } = event.data;
  if (packed) {
    door = started(packed);
    return;
  }
  let answer: Uint8Array[];
  try {
    answer = asked(await door, request, file);
  } catch (error) {
    // After a trap the module is not used again; the page starts a new one.
    postMessage({ id, trap: String(error) });
    return;
  }
  postMessage({ id, answer });
};
