// The pictures of walls, kept on this device beside the text.
const PLACE = 'fairfoot';
const STORE = 'pictures';

/// Runs one request on the pictures kept; nothing where this device keeps none, as in a private window.
function kept<T>(mode: IDBTransactionMode, work: (store: IDBObjectStore) => IDBRequest<T>): Promise<T | null> {
  return new Promise((resolve) => {
    const give = () => resolve(null);
    try {
      const opening = indexedDB.open(PLACE, 1);
      opening.onupgradeneeded = () => opening.result.createObjectStore(STORE);
      opening.onerror = give;
      opening.onsuccess = () => {
        const asked = work(opening.result.transaction(STORE, mode).objectStore(STORE));
        asked.onsuccess = () => {
          resolve(asked.result);
          opening.result.close();
        };
        asked.onerror = give;
      };
    } catch {
      give();
    }
  });
}

export const all = new Map<string, Uint8Array>();

/// Takes up what was kept at an earlier visit.
export async function takeUp(): Promise<void> {
  const names = (await kept('readonly', (store) => store.getAllKeys())) ?? [];
  for (const name of names) {
    const bytes = await kept('readonly', (store) => store.get(name));
    if (bytes instanceof Uint8Array && !all.has(String(name))) all.set(String(name), bytes);
  }
}

/// A name for a file that stands for no other picture here, of letters that any device can keep.
export function nameOf(file: string, bytes: Uint8Array): string {
  const [, stem, ending] = /^(.*?)(\.\w+)?$/.exec(file.replace(/[^\w.-]+/g, '-')) ?? [];
  const named = (n: number) => `${stem || 'picture'}${n > 1 ? `-${n}` : ''}${(ending ?? '.jpg').toLowerCase()}`;
  const isOther = (name: string) => {
    const old = all.get(name);
    return old !== undefined && (old.length !== bytes.length || old.some((byte, i) => byte !== bytes[i]));
  };
  let n = 1;
  while (isOther(named(n))) n++;
  return named(n);
}

export function put(name: string, bytes: Uint8Array): void {
  all.set(name, bytes);
  void kept('readwrite', (store) => store.put(bytes, name));
}

export async function forget(): Promise<void> {
  all.clear();
  await kept('readwrite', (store) => store.clear());
}
