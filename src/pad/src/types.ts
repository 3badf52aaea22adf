// The types exchanged with the library; the door crate uses the same names.
export type Way = 'back' | 'right' | 'front' | 'left';
export type How = 'measured' | 'closing' | 'about';
export type Place = [number, number];
export type Shape =
  | { is: 'straight' | 'other' }
  | { is: 'bay'; out: string; flat: string }
  | { is: 'round'; out: string }
  | { is: 'slant'; to: Way; leg: string };

export interface Piece {
  to: Place;
  curve: [number, boolean] | null;
}

export interface Row {
  line: number;
  number: number;
  sides: number;
  way: Way | null;
  shape: Shape;
  typed: string;
  length: string;
  /// The length of a wall that could not be reached, as it follows from the others.
  found: string;
  parts: [string, string, string] | null;
  how: How;
  picture: string | null;
  is_read: boolean;
  /// The direction of a wall inserted after it.
  then: Way;
  from: Place;
  to: Place;
  pieces: Piece[];
}

export interface Walk {
  line: number;
  kind: string;
  name: string;
  level: string;
  within: string | null;
  start: Place;
  corner: [string, number] | null;
  /// The ways and lengths from where its level begins to where it begins, if not at a corner.
  off: [Way, string][];
  rows: Row[];
  gap: string;
  is_closed: boolean;
  is_near: boolean;
}

export type Heads = Record<'property' | 'account' | 'record' | 'listing' | 'plan' | 'veneer' | 'units', string>;

export interface Notice {
  word: string;
  is_error: boolean;
  line: number;
  from: number;
  to: number;
  message: string;
  helps: string[];
  mends: [number, number, string][];
  form: Form;
}

/// A part of a text; one that names a wall has the indices of its walk and row.
export interface Part {
  text: string;
  row: [number, number] | null;
}

/// A wall to measure again.
export interface Again {
  line: number;
  place: string;
  label: string;
  parts: Part[];
  mend: Mend | null;
}

/// A notice as the rows show it.
export interface Form {
  place: string;
  at: [number, number] | null;
  field: keyof Heads | null;
  walk: number | null;
  message: string;
  helps: string[];
  /// The message, then each help.
  parts: Part[][];
  again: Again[];
  mends: Mend[];
  is_early: boolean;
  /// Of several, the one with the least is resolved first.
  rank: number;
}

export interface Mend {
  from: number;
  to: number;
  text: string;
  label: string;
  /// Of several of one kind, what the buttons say that show them, from the outside in.
  group: string[];
  /// The row that has the focus afterwards.
  at: [number, number] | null;
}

export interface Question {
  about: 'inside' | 'level';
  walk: number;
  text: string;
  why: string;
  yes: string;
  no: string;
}

export interface Look {
  rows: { heads: Heads; compass: [string, string, string, string]; levels: string[]; walks: Walk[] };
  kinds: string[];
  questions: Question[];
  said: { state: string; unchecked: string; compass: string; back: string[] };
  notices: Notice[];
  opening: Part[][];
  unrounded: string | null;
  /// Each with whether it is how a level was counted.
  likely: [Part[], boolean][];
  state: Part[];
  unchecked: Part[];
  report: string | null;
  paper: 'letter' | 'a4' | null;
  caution: string | null;
}

export interface Verified {
  is_genuine: boolean;
  why: string;
  sides: string | null;
  fingerprint: string | null;
  message: string | null;
}

export interface Made {
  is_draft: boolean;
  missing: string[];
  svg: string[];
}

export interface Opened {
  text: string;
  genuine?: boolean;
}

/// Where a space begins: a corner of another, or a distance from where its level begins.
export interface Beginning {
  corner: [string, number] | null;
  start: [Way, string][];
}

export type Edit =
  | { edit: 'side'; line: number; way: Way; length: string; how: How; shape: Shape }
  | { edit: 'add'; after: number; way: Way; length: string; how: How; shape: Shape }
  | { edit: 'remove' | 'drop'; line: number }
  | { edit: 'house' }
  | { edit: 'swap'; line: number; with: number }
  | { edit: 'head'; field: keyof Heads; value: string }
  | ({
      edit: 'space';
      kind: string;
      name: string;
      within: string | null;
      level: string;
    } & Beginning)
  | ({ edit: 'begin'; line: number } & Beginning)
  | { edit: 'picture'; line: number; caption: string; file: string }
  | { edit: 'name'; line: number; kind: string; name: string };
