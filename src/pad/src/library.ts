// Sends requests to the library one at a time, with a time limit.
import type { Edit, Look, Made, Opened, Verified } from './types';

declare const WORKER: string;

const LIMIT_MS = 120_000;

interface Waiting {
  resolve(parts: Uint8Array[]): void;
  reject(error: Error): void;
  timer: number;
}

export type Pictures = Map<string, Uint8Array>;

const lengths = (pictures: Pictures) => [...pictures].map(([name, bytes]) => [name, bytes.length]);

/// A text and then its pictures, as the library takes them.
function joined(text: string, pictures: Pictures): Uint8Array {
  const parts = [new TextEncoder().encode(text), ...pictures.values()];
  const all = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

export class Library {
  private worker!: Worker;
  private waiting = new Map<number, Waiting>();
  private last = 0;

  constructor(private packed: Uint8Array) {
    this.start();
  }

  private start(): void {
    const place = URL.createObjectURL(new Blob([WORKER], { type: 'text/javascript' }));
    this.worker = new Worker(place);
    this.worker.onmessage = (event) => this.answered(event.data);
    this.worker.onerror = (event) => this.again(event.message);
    this.worker.postMessage({ packed: this.packed.slice().buffer });
  }

  /// Replaces a worker that failed; waiting requests are told.
  private again(why = ''): void {
    this.worker.terminate();
    const waiting = [...this.waiting.values()];
    this.waiting.clear();
    this.start();
    for (const one of waiting) {
      clearTimeout(one.timer);
      one.reject(new Error('stopped', { cause: why }));
    }
  }

  private answered(data: { id: number; answer?: Uint8Array[]; trap?: string }): void {
    const one = this.waiting.get(data.id);
    if (!one) return;
    if (!data.answer) {
      this.again(data.trap);
      return;
    }
    this.waiting.delete(data.id);
    clearTimeout(one.timer);
    one.resolve(data.answer);
  }

  private ask(request: object, file: string | Uint8Array): Promise<Uint8Array[]> {
    const id = ++this.last;
    const bytes = typeof file === 'string' ? new TextEncoder().encode(file) : file;
    return new Promise((resolve, reject) => {
      const timer = window.setTimeout(() => this.again(), LIMIT_MS);
      this.waiting.set(id, { resolve, reject, timer });
      this.worker.postMessage({ id, request, file: bytes });
    });
  }

  private async value<T>(request: object, file: string | Uint8Array): Promise<T> {
    const [first] = await this.ask(request, file);
    const value = JSON.parse(new TextDecoder().decode(first));
    if (value && typeof value === 'object' && 'failed' in value) throw new Error(value.failed);
    return value as T;
  }

  look(name: string, text: string, columns: number): Promise<Look> {
    return this.value({ ask: 'look', name, columns }, text);
  }

  edit(text: string, edit: Edit): Promise<string> {
    return this.value({ ask: 'edit', edit }, text);
  }

  async svg(name: string, text: string, a4: boolean, pictures: Pictures = new Map()): Promise<Made> {
    return this.value({ ask: 'svg', name, a4, pictures: lengths(pictures) }, joined(text, pictures));
  }

  async json(name: string, text: string): Promise<string> {
    const [first] = await this.ask({ ask: 'json', name }, text);
    return new TextDecoder().decode(first);
  }

  async pdf(name: string, text: string, a4: boolean, pictures: Pictures = new Map()): Promise<Made & { pdf: Uint8Array }> {
    const request = { ask: 'pdf', name, a4, pictures: lengths(pictures) };
    const [first, pdf] = await this.ask(request, joined(text, pictures));
    const told = JSON.parse(new TextDecoder().decode(first));
    if (!pdf) throw new Error(told.failed);
    return { ...told, pdf };
  }

  verify(file: Uint8Array): Promise<Verified> {
    return this.value({ ask: 'verify' }, file);
  }

  open(name: string, file: Uint8Array): Promise<Opened> {
    return this.value({ ask: 'open', name }, file);
  }
}
