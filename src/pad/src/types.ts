// The types exchanged with the library; the door crate uses the same names.
export type Way = 'back' | 'right' | 'front' | 'left';
export type How = 'measured' | 'closing' | 'about';
export type Place = [number, number];

export interface Row {
  line: number;
  way: Way | null;
  typed: string;
  length: string;
  parts: [string, string, string] | null;
  how: How;
  is_read: boolean;
  from: Place;
  to: Place;
  curve: [number, boolean] | null;
}

export interface Walk {
  line: number;
  kind: string;
  name: string;
  level: string;
  within: string | null;
  start: Place;
  rows: Row[];
  gap: string;
  is_closed: boolean;
}

export type Heads = Record<'property' | 'account' | 'record' | 'listing' | 'plan' | 'veneer', string>;

export interface Notice {
  word: string;
  is_error: boolean;
  line: number;
  from: number;
  to: number;
  message: string;
  helps: string[];
  mends: [number, number, string][];
}

export interface Look {
  rows: { heads: Heads; walks: Walk[] };
  kinds: string[];
  notices: Notice[];
  opening: string[];
  report: string | null;
  caution: string | null;
}

export interface Verified {
  is_genuine: boolean;
  why: string;
  sides: string | null;
  fingerprint: string | null;
  message: string | null;
}

export interface Opened {
  text: string;
  genuine?: boolean;
}

export type Edit =
  | { edit: 'side'; line: number; way: Way; length: string; how: How }
  | { edit: 'add'; after: number; way: Way; length: string; how: How }
  | { edit: 'remove'; line: number }
  | { edit: 'swap'; line: number; with: number }
  | { edit: 'head'; field: keyof Heads; value: string }
  | { edit: 'space'; kind: string; name: string; within: string | null; corner: [string, number] | null }
  | { edit: 'name'; line: number; kind: string; name: string };
