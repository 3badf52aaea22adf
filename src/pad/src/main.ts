// The page: one text, shown both as rows and as a file. Everything said about the house comes from the library.
import { drawing } from './drawing';
import { Editor } from './editor';
import { FRACTIONS, NEW } from './format';
import { Library } from './library';
import { h } from './page';
import type { Edit, Heads, How, Look, Row, Walk, Way } from './types';
import { say, words, type Words } from './words';

declare const EXAMPLE: string;
declare const LICENSES: string;

const KEEP = 'fairfoot';
const MOST_UNDONE = 500;
const WAYS: Way[] = ['back', 'right', 'front', 'left'];
const HOWS: How[] = ['measured', 'closing', 'about'];
const FIELDS: (keyof Heads)[] = ['record', 'listing', 'plan', 'property', 'account', 'veneer'];

const main = h('main', { id: 'page' });
const live = h('p', { role: 'status', class: 'aside', 'aria-live': 'polite' });
const picker = h('input', { type: 'file', class: 'hidden', tabindex: '-1', 'aria-hidden': 'true' });

let library: Library;
let text = '';
let name = 'house.sides';
let undone: string[] = [];
let look: Look | null = null;
let shown = '';
/// The text that the displayed rows belong to.
let painted = '';
let report = '';
/// The key of the focused row: the index of its walk, and its index there. Line numbers change; keys do not.
let focus: string | null = null;
let asText = false;
let editor: Editor | null = null;
let chosen: { walk: number; corner: number } | null = null;
let isAdding = false;
let a4 = false;
/// The input fields by line and part, since a house may have a thousand sides.
const fields = new Map<string, HTMLElement>();
/// The values each row was last filled with.
const filled = new Map<string, string>();
let isKept = true;
let isLooking = false;
let atWork = 0;
let edits: Promise<unknown> = Promise.resolve();
let focusNext: { key: string; part: string } | null = null;

const parts = {
  heads: h('section', { class: 'figures' }),
  walks: h('div', { class: 'walks' }),
  drawing: h('div', { class: 'drawing' }),
  gap: h('p', { class: 'still', 'aria-live': 'polite' }),
  caution: h('p', { class: 'caution', role: 'alert' }),
  opening: h('div', { class: 'opening', 'aria-live': 'polite' }),
  report: h('div', { class: 'report' }),
  notices: h('div', { class: 'notices' }),
  pages: h('section', { class: 'pages' }),
  text: h('section', { class: 'text' }),
  rows: h('section', { class: 'rows' }),
  views: h('div', { class: 'views', role: 'group', 'aria-label': say('view') }),
};

// ---- the one text

function become(next: string, from: 'rows' | 'editor' | 'file'): void {
  if (next === text) return;
  if (from !== 'file') undone = [...undone, text].slice(-MOST_UNDONE);
  text = next;
  keep();
  if (from !== 'editor') editor?.text(text);
  void refresh();
}

/// Edits are applied one after another. Line numbers refer to the text on the screen when the edit was requested.
function edit(one: Edit, focusAfter: string | null = null): Promise<void> {
  const base = painted;
  busy(+1);
  const done = edits.then(async () => {
    const now = moved(one, base);
    if (focusAfter !== null) {
      focus = focusAfter;
      focusNext = { key: focus, part: 'feet' };
    }
    become(await library.edit(text, now), 'rows');
  }).finally(() => busy(-1));
  edits = done.catch(failed);
  return done.catch(failed);
}

/// Whether updates are still pending; styles and tests read it.
function busy(by: number): void {
  atWork += by;
  document.documentElement.dataset.state = atWork > 0 ? 'busy' : 'ready';
}

/// Where a line of an earlier text is now: below a change it has moved by the number of lines added or removed.
function shifted(line: number, base: string): number {
  if (base === text) return line;
  const [old, now] = [base.split('\n'), text.split('\n')];
  let same = 0;
  while (same < old.length && same < now.length && old[same] === now[same]) same++;
  return line <= same ? line : line + now.length - old.length;
}

function moved(one: Edit, base: string): Edit {
  const next: Record<string, unknown> = { ...one };
  for (const key of ['line', 'after', 'with']) {
    if (typeof next[key] === 'number') next[key] = shifted(next[key] as number, base);
  }
  return next as Edit;
}

function undo(): void {
  const before = undone.pop();
  if (before === undefined) return;
  text = before;
  keep();
  editor?.text(text);
  void refresh();
}

function keep(): void {
  if (!isKept) return;
  try {
    localStorage.setItem(KEEP, JSON.stringify({ name, text }));
  } catch {
    // A private window stores nothing; the page still works.
  }
}

function kept(): { name: string; text: string } | null {
  try {
    return JSON.parse(localStorage.getItem(KEEP) ?? 'null');
  } catch {
    return null;
  }
}

function forget(): void {
  try {
    localStorage.removeItem(KEEP);
  } catch {
    // Nothing was stored.
  }
  isKept = false;
  live.textContent = say('forgotten');
}

function failed(error: unknown): void {
  const why = error instanceof Error && error.message !== 'stopped' ? error.message : say('stopped');
  live.textContent = why;
}

/// Processes the newest text; requests for older texts in between are dropped.
async function refresh(): Promise<void> {
  if (isLooking) return;
  isLooking = true;
  busy(+1);
  try {
    let next = look;
    while (shown !== text || !next) {
      const asked = text;
      next = await library.look(name, asked, columns());
      shown = asked;
    }
    look = next;
    painted = shown;
    paint(look);
  } catch (error) {
    shown = text;
    failed(error);
  } finally {
    isLooking = false;
    busy(-1);
  }
}

/// How many characters of the report fit on a line.
function columns(): number {
  const wide = parts.report.clientWidth || 600;
  return Math.max(34, Math.min(80, Math.floor((wide - 2) / (0.605 * 13.5))));
}

// ---- the screen

function paint(look: Look): void {
  paintHeads(look.rows.heads);
  paintWalks(look);
  paintDrawing(look);
  paintAnswer(look);
  editor?.notices(look.notices, mend);
}

function paintHeads(heads: Heads): void {
  if (!parts.heads.firstChild) {
    const fields = FIELDS.map((field) => {
      const input = h('input', {
        name: field,
        autocomplete: 'off',
        inputmode: field === 'record' || field === 'listing' || field === 'plan' ? 'decimal' : 'text',
        onchange: (event: Event) =>
          edit({ edit: 'head', field, value: (event.target as HTMLInputElement).value }),
      });
      return h('label', {}, h('span', {}, say(field)), input);
    });
    parts.heads.append(
      h('h2', {}, say('figures')),
      h('p', { class: 'aside' }, say('figuresHint')),
      h('div', { class: 'fields' }, ...fields),
    );
  }
  for (const field of FIELDS) {
    const input = parts.heads.querySelector<HTMLInputElement>(`[name=${field}]`);
    const value = field === 'veneer' || field === 'property' || field === 'account' ? heads[field] : heads[field].replace(/ *sq ft$/, '');
    if (input && document.activeElement !== input) input.value = value;
  }
}

function paintWalks(look: Look): void {
  const active = document.activeElement as HTMLElement | null;
  const at = active?.dataset.part ? { key: active.dataset.key ?? '', part: active.dataset.part } : null;
  const typed = active instanceof HTMLInputElement ? active.value : null;
  const shape = JSON.stringify(look.rows.walks.map((walk) => [walk.name, walk.kind, walk.rows.map((row) => row.way !== null || row.typed)]));
  const isNew = parts.walks.dataset.shape !== shape + focus + isAdding;
  if (isNew) {
    parts.walks.dataset.shape = shape + focus + isAdding;
    fields.clear();
    parts.walks.replaceChildren(...look.rows.walks.map((walk, i) => walked(walk, look, i)), adding(look));
  }
  for (const [w, walk] of look.rows.walks.entries()) {
    for (const [r, row] of walk.rows.entries()) fill(row, `${w} ${r}`, look, isNew);
  }
  if (isNew) {
    const wanted = focusNext ?? at;
    const found = wanted && field(wanted.key, wanted.part);
    // What is being typed is newer than what the library has seen.
    if (!focusNext && typed !== null && found instanceof HTMLInputElement) found.value = typed;
    focusNext = null;
    found?.focus();
  }
  const button = document.getElementById('undo') as HTMLButtonElement | null;
  if (button) button.disabled = undone.length === 0;
}

function field(key: string, part: string): HTMLElement | null {
  return fields.get(`${key} ${part}`) ?? null;
}

/// The row with this key on the screen.
function at(key: string): Row | undefined {
  const [w, r] = key.split(' ').map(Number);
  return look?.rows.walks[w]?.rows[r];
}

/// The key of the row on a line.
function keyOf(line: number): string | null {
  for (const [w, walk] of (look?.rows.walks ?? []).entries()) {
    const r = walk.rows.findIndex((row) => row.line === line);
    if (r >= 0) return `${w} ${r}`;
  }
  return null;
}

function walked(walk: Walk, shown: Look, index: number): HTMLElement {
  const lineOf = () => look?.rows.walks[index]?.line ?? 0;
  const kinds = shown.kinds.includes(walk.kind) ? shown.kinds : [...shown.kinds, walk.kind];
  const kind = select(kinds, walk.kind, say('kind'), (kind) => edit({ edit: 'name', line: lineOf(), kind, name: walk.name }));
  const called = h('input', {
    value: walk.name,
    'aria-label': say('called'),
    onchange: (event: Event) =>
      edit({ edit: 'name', line: lineOf(), kind: walk.kind, name: (event.target as HTMLInputElement).value }),
  });
  const rows = walk.rows.map((row, i) => rowed(walk, row, i, `${index} ${i}`));
  const last = () => at(`${index} ${walk.rows.length - 1}`)?.line ?? lineOf();
  const next = WAYS.map((way) =>
    h('button', { type: 'button', class: 'way', 'data-way': way, onclick: () => add(last(), way, `${index} ${walk.rows.length}`) }, say(way)),
  );
  return h(
    'section',
    { class: 'walk', 'aria-label': walk.name },
    h('h2', {}, index === 0 ? say('walk') : walk.name),
    index === 0 && h('p', { class: 'aside' }, say('walkHint')),
    h('div', { class: 'what' }, kind, called),
    h('ol', { class: 'sides' }, ...rows),
    h('div', { class: 'next', role: 'group', 'aria-label': say('nextWall') }, h('span', {}, say('nextWall')), ...next),
  );
}

function select(options: string[], value: string, label: string, chosen: (value: string) => void, named?: (value: string) => string): HTMLSelectElement {
  const list = options.map((option) => h('option', { value: option, selected: option === value }, named ? named(option) : option));
  return h('select', { 'aria-label': label, onchange: (event: Event) => chosen((event.target as HTMLSelectElement).value) }, ...list);
}

function rowed(walk: Walk, row: Row, index: number, key: string): HTMLElement {
  const n = index + 1;
  const number = h('span', { class: 'n', 'aria-hidden': 'true' }, String(n));
  const focused = key === focus;
  const tools = focused ? tooled(walk, row, index, key) : null;
  const listens = { onfocusin: () => focused || inFocus(key) };
  if (row.way === null) {
    return h('li', { class: 'side other', ...listens, tabindex: '0' }, number, h('code', {}, row.typed), h('span', { class: 'aside' }, say('shownOnly')), tools);
  }
  const way = select(WAYS, row.way, say('way', { n }), () => send(key), (way) => say(way as Words));
  const how = select(HOWS, row.how, say('how', { n }), () => send(key), (how) => say(how as Words));
  const feet = number_('feet', key, say('feet', { n }));
  const inches = number_('inches', key, say('inches', { n }));
  const fraction = select(FRACTIONS, '', say('fraction', { n }), () => send(key), (part) => part || '–');
  for (const [part, element] of [['way', way], ['how', how], ['fraction', fraction]] as const) mark(element, key, part);
  return h(
    'li',
    { class: focused ? 'side focus' : 'side', ...listens },
    number,
    way,
    h('span', { class: 'length' }, feet, h('span', { 'aria-hidden': 'true' }, '′'), inches, h('span', { 'aria-hidden': 'true' }, '″'), fraction),
    how,
    h('span', { class: 'wrong', id: wrongId(key) }),
    tools,
  );
}

const wrongId = (key: string) => `wrong-${key.replace(' ', '-')}`;

function mark(element: HTMLElement, key: string, part: string): void {
  fields.set(`${key} ${part}`, element);
  element.dataset.key = key;
  element.dataset.part = part;
}

function number_(part: string, key: string, label: string): HTMLInputElement {
  const input = h('input', {
    class: part,
    inputmode: 'decimal',
    autocomplete: 'off',
    enterkeyhint: 'next',
    'aria-label': label,
    'aria-describedby': wrongId(key),
    oninput: () => send(key),
    onkeydown: (event: KeyboardEvent) => hop(event, key, part),
  });
  mark(input, key, part);
  return input;
}

/// A foot mark or space after whole feet moves on to the inches, an inch mark to the fraction.
function hop(event: KeyboardEvent, key: string, part: string): void {
  const value = (event.target as HTMLInputElement).value;
  const isMark = ["'", '’', '′', ' '].includes(event.key) && part === 'feet' && /^\d+$/.test(value);
  const isInch = ['"', '”', '″', ' '].includes(event.key) && part === 'inches';
  if (isMark || isInch) {
    event.preventDefault();
    field(key, isMark ? 'inches' : 'fraction')?.focus();
  }
  if (event.key === 'Enter') {
    event.preventDefault();
    const row = (event.target as HTMLElement).closest('li');
    const next = row?.nextElementSibling?.querySelector<HTMLElement>('.feet');
    (next ?? row?.closest('section')?.querySelector<HTMLElement>('.way[data-way]'))?.focus();
  }
}

/// The contents of a row's fields, as written in the file.
function typed(key: string): string {
  const value = (part: string) => (field(key, part) as HTMLInputElement | null)?.value.trim() ?? '';
  const [feet, inches, fraction] = [value('feet'), value('inches'), value('fraction')];
  if (feet && !/^\d+$/.test(feet)) return feet;
  const inch = [inches, fraction].filter((part) => part && !(part === '0' && !fraction && feet)).join(' ');
  return [feet && `${feet}'`, inch && `${inch}"`].filter(Boolean).join(' ');
}

function send(key: string): void {
  const row = at(key);
  if (!row) return;
  const value = (part: string) => (field(key, part) as HTMLSelectElement).value;
  void edit({ edit: 'side', line: row.line, way: value('way') as Way, how: value('how') as How, length: typed(key) });
}

async function add(after: number, way: Way, key: string): Promise<void> {
  await edit({ edit: 'add', after, way, length: '', how: 'measured' }, key);
}

function inFocus(key: string): void {
  if (focus === key || !look) return;
  focus = key;
  paintWalks(look);
  paintDrawing(look);
}

function tooled(walk: Walk, row: Row, index: number, key: string): HTMLElement {
  const of = key.split(' ')[0];
  const [before, after] = [index > 0, index + 1 < walk.rows.length];
  const to = (place: number) => () => {
    const [here, other] = [at(key), at(`${of} ${place}`)];
    if (here && other) void edit({ edit: 'swap', line: here.line, with: other.line }, `${of} ${place}`);
  };
  const button = (key: Words, onclick: (() => void) | null) =>
    h('button', { type: 'button', class: 'quiet', disabled: onclick === null, onclick: onclick ?? undefined }, say(key));
  return h(
    'span',
    { class: 'tools' },
    button('up', before ? to(index - 1) : null),
    button('down', after ? to(index + 1) : null),
    button('insert', () => void add(at(key)?.line ?? row.line, at(key)?.way ?? 'back', `${of} ${index + 1}`)),
    button('remove', () => {
      focus = null;
      void edit({ edit: 'remove', line: at(key)?.line ?? row.line });
    }),
  );
}

/// Fills the fields of a row, except the one being edited.
function fill(row: Row, key: string, look: Look, isNew: boolean): void {
  const told = JSON.stringify([row.way, row.how, row.length, row.is_read]);
  const isHere = field(key, 'way')?.closest('li')?.contains(document.activeElement);
  if (!isNew && !isHere && row.is_read && filled.get(key) === told) return;
  filled.set(key, told);
  const put = (part: string, value: string) => {
    const element = field(key, part) as HTMLInputElement | HTMLSelectElement | null;
    if (!element || element === document.activeElement) return;
    if (element instanceof HTMLSelectElement && ![...element.options].some((one) => one.value === value)) {
      element.append(h('option', { value }, value));
    }
    element.value = value;
  };
  const li = field(key, 'way')?.closest('li');
  if (!li || row.way === null) return;
  const isTyping = !isNew && li.contains(document.activeElement) && document.activeElement instanceof HTMLInputElement;
  put('way', row.way);
  put('how', row.how);
  if (!isTyping) {
    put('feet', row.parts ? row.parts[0] : row.length);
    put('inches', row.parts ? row.parts[1] : '');
    put('fraction', row.parts ? row.parts[2] : '');
  }
  li.classList.toggle('closing', row.how === 'closing');
  for (const part of ['feet', 'inches', 'fraction']) {
    const element = field(key, part) as HTMLInputElement | null;
    if (element) element.disabled = row.how === 'closing';
  }
  const wrong = li.querySelector('.wrong');
  const notice = !row.is_read && row.length ? look.notices.find((one) => one.is_error && one.line === row.line) : undefined;
  if (wrong) {
    wrong.replaceChildren();
    if (notice) wrong.append(noticed(notice, true));
  }
}

// ---- a further space

function adding(look: Look): HTMLElement {
  const undoing = h('button', { type: 'button', id: 'undo', class: 'quiet', onclick: undo }, say('undo'));
  if (!isAdding) {
    const can = look.rows.walks.some((walk) => walk.rows.length > 0);
    const open = () => {
      isAdding = true;
      chosen = null;
      if (look) paint(look);
      parts.walks.querySelector<HTMLElement>('.further select')?.focus();
    };
    return h('div', { class: 'after' }, undoing, can && h('button', { type: 'button', class: 'quiet', onclick: open }, say('further')));
  }
  const walks = look.rows.walks.filter((walk) => walk.kind !== 'lot');
  const kind = select(look.kinds, 'garage', say('kind'), () => undefined);
  const called = h('input', { 'aria-label': say('called'), placeholder: say('called') });
  const corners = walks.flatMap((walk, i) =>
    walk.rows.map((_, k) => h('option', { value: `${i} ${k + 1}` }, say('cornerOf', { n: k + 1, space: walk.name }))),
  );
  const corner = h('select', { 'aria-label': say('corner'), id: 'corner', onchange: () => {
    const [walk, at] = corner.value.split(' ').map(Number);
    chosen = { walk, corner: at };
    paintDrawing(look);
  } }, ...corners);
  const within = h('input', { type: 'checkbox' });
  const house = walks[0]?.name ?? '';
  const make = () => {
    const [walk, at] = (corner.value || '0 1').split(' ').map(Number);
    isAdding = false;
    void edit({
      edit: 'space',
      kind: kind.value,
      name: called.value.trim() || kind.value,
      within: within.checked ? house : null,
      corner: walks[walk] ? [walks[walk].name, at] : null,
    });
  };
  const cancel = () => {
    isAdding = false;
    paint(look);
  };
  return h(
    'section',
    { class: 'further', 'aria-label': say('further') },
    h('h2', {}, say('further')),
    h('div', { class: 'what' }, kind, called),
    h('p', { class: 'aside' }, say('furtherHint')),
    h('label', {}, h('span', {}, say('corner')), corner),
    h('label', { class: 'tick' }, within, h('span', {}, say('inside', { space: house }))),
    h('div', { class: 'after' }, h('button', { type: 'button', onclick: make }, say('add')), h('button', { type: 'button', class: 'quiet', onclick: cancel }, say('cancel'))),
  );
}

function paintDrawing(look: Look): void {
  const walks = look.rows.walks.filter((walk) => walk.kind !== 'lot');
  const onCorner = isAdding
    ? (walk: number, corner: number) => {
        chosen = { walk, corner };
        const list = document.getElementById('corner') as HTMLSelectElement | null;
        if (list) list.value = `${walk} ${corner}`;
        paintDrawing(look);
      }
    : null;
  const onRow = (line: number) => {
    const key = keyOf(line);
    if (key === null) return;
    inFocus(key);
    field(key, 'feet')?.focus();
  };
  parts.drawing.replaceChildren(drawing({ walks, line: focus === null ? null : (at(focus)?.line ?? null), corner: chosen, onRow, onCorner }));
  const open = walks.filter((walk) => walk.rows.length > 0 && !walk.is_closed);
  const told = open.map((walk) => (open.length > 1 || walks.length > 1 ? `${walk.name}: ` : '') + say('still', { gap: walk.gap }));
  const all = walks.some((walk) => walk.is_closed) && open.length === 0 ? [say('closed')] : told;
  if (parts.gap.textContent !== all.join(' ')) parts.gap.textContent = all.join(' ');
}

// ---- the answer

function paintAnswer(look: Look): void {
  parts.caution.textContent = look.caution ?? '';
  if (look.report !== null) {
    report = look.report;
    parts.opening.replaceChildren(...look.opening.map((line) => h('p', {}, line)));
  }
  const isOld = look.report === null && report !== '';
  parts.report.replaceChildren(
    isOld ? h('p', { class: 'older' }, say('older')) : '',
    report ? h('pre', { class: isOld ? 'old' : '', tabindex: '0' }, report) : h('p', { class: 'aside' }, say('noAnswer')),
  );
  // A row without a length, or a walk without a row, is not an error yet.
  const empty = look.rows.walks.filter((walk) => walk.rows.length === 0).map((walk) => walk.line);
  const typing = look.rows.walks.flatMap((walk) => walk.rows).filter((row) => !row.is_read && !row.length).map((row) => row.line);
  const notices = look.notices.filter((one) => !typing.includes(one.line) && !empty.includes(one.line));
  const list = (key: Words, isError: boolean) => {
    const some = notices.filter((one) => one.is_error === isError);
    return some.length > 0 && h('div', {}, h('h3', {}, say(key)), h('ul', {}, ...some.map((one) => h('li', {}, noticed(one, false)))));
  };
  // The report contains the warnings already.
  const lists = [list('errors', true), look.report === null && list('warnings', false)];
  parts.notices.replaceChildren(...lists.filter((one): one is HTMLDivElement => !!one));
  for (const button of parts.pages.querySelectorAll<HTMLButtonElement>('[data-needs]')) button.disabled = look.report === null;
}

function noticed(notice: Look['notices'][number], short: boolean): HTMLElement {
  const to = () => {
    showText(true);
    editor?.show(notice.line);
  };
  return h(
    'span',
    { class: notice.is_error ? 'notice error' : 'notice' },
    !short && h('button', { type: 'button', class: 'link', onclick: to }, say('line', { n: notice.line })),
    ' ',
    notice.message,
    ...notice.helps.map((help) => h('span', { class: 'help' }, help)),
    ...notice.mends.map(([from, end, words]) =>
      h('button', { type: 'button', class: 'quiet', onclick: () => mend(from, end, words) }, say('use', { words })),
    ),
  );
}

function mend(from: number, to: number, words: string): void {
  // The positions belong to the text that was processed.
  if (text !== painted) return;
  become(text.slice(0, from) + words + text.slice(to), 'rows');
}

// ---- pages and files

function paintPages(): void {
  const show = h('div', { class: 'leaves' });
  const button = (key: Words, onclick: () => unknown, first = false) =>
    h('button', { type: 'button', class: first ? 'first' : '', 'data-needs': key === 'save' ? null : 'house', disabled: key !== 'save', onclick }, say(key));
  const paper = select(['letter', 'a4'], a4 ? 'a4' : 'letter', say('paper'), (value) => {
    a4 = value === 'a4';
    show.replaceChildren();
  }, (value) => say(value as Words));
  const canShare = typeof navigator.canShare === 'function' && navigator.canShare({ files: [new File([''], 'a.pdf', { type: 'application/pdf' })] });
  parts.pages.replaceChildren(
    h('h2', {}, say('pages')),
    h('div', { class: 'doing' },
      button('pdf', () => doing(async () => saved(await pdf(), 'application/pdf', '.pdf')), true),
      button('showPages', () => doing(() => leaves(show))),
      button('save', () => saved(text, 'text/plain', '.sides')),
      canShare && button('share', () => doing(sharing)),
      button('print', () => doing(printing)),
      h('label', {}, h('span', {}, say('paper')), paper),
    ),
    h('p', { class: 'aside' }, say('caution')),
    show,
  );
}

async function doing(work: () => Promise<unknown>): Promise<void> {
  live.textContent = say('working');
  try {
    await work();
    if (live.textContent === say('working')) live.textContent = '';
  } catch (error) {
    failed(error);
  }
}

const pdf = () => library.pdf(name, text, a4);
const stem = () => name.replace(/\.[^.]*$/, '') || 'house';

function saved(bytes: Uint8Array | string, type: string, ending: string): void {
  const file = stem() + ending;
  const place = URL.createObjectURL(new Blob([bytes as BlobPart], { type }));
  h('a', { href: place, download: file }).click();
  setTimeout(() => URL.revokeObjectURL(place), 60_000);
  live.textContent = say('made', { name: file });
}

async function sharing(): Promise<void> {
  const file = new File([(await pdf()) as BlobPart], `${stem()}.pdf`, { type: 'application/pdf' });
  await navigator.share({ files: [file] });
}

/// Every page as an image, so that nothing in it can run.
async function pictures(): Promise<HTMLImageElement[]> {
  const pages = await library.svg(name, text, a4);
  const made = pages.map((page, i) => {
    const src = URL.createObjectURL(new Blob([page], { type: 'image/svg+xml' }));
    return h('img', { src, alt: say('pageOf', { n: i + 1, all: pages.length }) });
  });
  await Promise.all(made.map((image) => image.decode()));
  return made;
}

async function leaves(show: HTMLElement): Promise<void> {
  const images = await pictures();
  let at = 0;
  const count = h('span', { 'aria-live': 'polite' });
  const frame = h('div', { class: 'leaf' });
  const turn = (by: number) => {
    at = Math.max(0, Math.min(images.length - 1, at + by));
    frame.replaceChildren(images[at]);
    count.textContent = say('pageOf', { n: at + 1, all: images.length });
    previous.disabled = at === 0;
    next.disabled = at === images.length - 1;
  };
  const previous = h('button', { type: 'button', class: 'quiet', onclick: () => turn(-1) }, say('previous'));
  const next = h('button', { type: 'button', class: 'quiet', onclick: () => turn(1) }, say('next'));
  const hide = h('button', { type: 'button', class: 'quiet', onclick: () => show.replaceChildren() }, say('hidePages'));
  show.replaceChildren(h('div', { class: 'turning' }, previous, count, next, hide), frame);
  turn(0);
}

async function printing(): Promise<void> {
  const paper = h('div', { id: 'paper', class: a4 ? 'a4' : 'letter' }, ...(await pictures()));
  const size = h('style', {}, `@page { size: ${a4 ? '210mm 297mm' : '8.5in 11in'}; margin: 0 }`);
  document.getElementById('paper')?.remove();
  document.body.append(paper, size);
  window.print();
  size.remove();
}

async function take(file: File): Promise<void> {
  await doing(async () => {
    const opened = await library.open(file.name, new Uint8Array(await file.arrayBuffer()));
    name = file.name.replace(/\.[^.]*$/, '') + '.sides';
    work(opened.text);
    live.textContent = opened.genuine === undefined ? '' : say(opened.genuine ? 'genuine' : 'fromChanged');
  });
}

async function checked(file: File, result: HTMLElement): Promise<void> {
  await doing(async () => {
    const answer = await library.verify(new Uint8Array(await file.arrayBuffer()));
    const sides = answer.sides;
    const told = answer.is_genuine ? 'genuine' : sides === null ? 'notReadable' : 'notGenuine';
    result.className = answer.is_genuine ? 'checked genuine' : 'checked';
    result.replaceChildren(
      h('p', { class: 'verdict' }, `${file.name}: ${say(told)}`),
      answer.message ? h('p', {}, answer.message) : '',
      answer.fingerprint ? h('p', {}, say('fingerprint', { print: answer.fingerprint })) : '',
      answer.is_genuine ? h('p', {}, say('genuineHint')) : '',
      sides !== null ? h('button', { type: 'button', onclick: () => work(sides) }, say('openSides')) : '',
    );
  });
}

function pick(then: (file: File) => void): void {
  picker.value = '';
  picker.onchange = () => {
    const file = picker.files?.[0];
    if (file) then(file);
  };
  picker.click();
}

// ---- the two views, and the start

function showText(yes: boolean): void {
  asText = yes;
  parts.rows.hidden = yes;
  parts.text.hidden = !yes;
  if (yes && !editor) {
    editor = new Editor(parts.text, text, (typed) => become(typed, 'editor'));
    if (look) editor.notices(look.notices, mend);
  }
  for (const button of parts.views.querySelectorAll('button')) {
    button.setAttribute('aria-pressed', String((button.dataset.view === 'text') === yes));
  }
}

function work(from: string): void {
  text = from;
  isKept = true;
  undone = [];
  look = null;
  report = '';
  parts.opening.replaceChildren();
  focus = null;
  isAdding = false;
  editor = null;
  parts.text.replaceChildren();
  parts.walks.replaceChildren();
  parts.walks.dataset.shape = '';
  const view = (key: Words, isText: boolean) =>
    h('button', { type: 'button', 'data-view': isText ? 'text' : 'rows', onclick: () => showText(isText) }, say(key));
  parts.views.replaceChildren(view('asRows', false), view('asText', true));
  parts.rows.replaceChildren(parts.heads, parts.walks);
  const seen = h('div', { class: 'seen' }, parts.drawing, parts.gap);
  const answer = h('section', { class: 'answer', 'aria-label': say('answer') }, h('h2', {}, say('answer')), parts.caution, parts.opening, parts.report, parts.notices);
  paintPages();
  main.replaceChildren(
    h('h1', { class: 'hidden' }, say('title')),
    h('div', { class: 'work' }, h('div', { class: 'typing' }, parts.views, parts.rows, parts.text), seen, h('div', { class: 'result' }, answer, parts.pages)),
    foot(),
  );
  showText(false);
  keep();
  void refresh();
  scrollTo(0, 0);
}

function foot(): HTMLElement {
  return h('footer', {}, h('span', {}, say('kept')), h('button', { type: 'button', class: 'quiet', onclick: forget }, say('forget')), aboutButton());
}

function aboutButton(): HTMLElement {
  const close = () => dialog.close();
  const dialog = h('dialog', { 'aria-label': say('aboutPage') },
    h('h2', {}, say('aboutPage')),
    h('p', {}, say('caution')),
    h('p', {}, say('aboutText')),
    h('pre', { tabindex: '0' }, LICENSES),
    h('button', { type: 'button', onclick: close }, say('close')));
  const open = h('button', { type: 'button', class: 'quiet', onclick: () => dialog.showModal() }, say('aboutPage'));
  return h('span', {}, open, dialog);
}

function start(): void {
  const choice = (key: Words, hint: Words, onclick: () => void) =>
    h('button', { type: 'button', class: 'choice', onclick }, h('strong', {}, say(key)), h('span', {}, say(hint)));
  const old = kept();
  const result = h('div', { role: 'status' });
  main.replaceChildren(
    h('section', { class: 'start' },
      h('h1', {}, say('title')),
      choice('measure', 'measureHint', () => {
        name = 'house.sides';
        work(NEW);
      }),
      choice('open', 'openHint', () => pick((file) => void take(file))),
      choice('example', 'exampleHint', () => {
        name = 'example.sides';
        work(EXAMPLE);
      }),
      h('div', { class: 'less' },
        h('button', { type: 'button', class: 'quiet', onclick: () => pick((file) => void checked(file, result)) }, say('check')),
        old && h('button', { type: 'button', class: 'quiet', onclick: () => {
          name = old.name;
          work(old.text);
        } }, say('goOn'))),
      result),
    foot(),
  );
}

function listen(): void {
  addEventListener('dragover', (event) => event.preventDefault());
  addEventListener('drop', (event) => {
    event.preventDefault();
    const file = event.dataTransfer?.files[0];
    if (file) void take(file);
  });
  addEventListener('paste', (event) => {
    const isField = (event.target as HTMLElement).closest?.('input, textarea, .cm-editor');
    const file = event.clipboardData?.files[0];
    const pasted = event.clipboardData?.getData('text/plain');
    if (isField) return;
    if (file) void take(file);
    else if (pasted) work(pasted);
  });
  addEventListener('keydown', (event) => {
    const isUndo = (event.ctrlKey || event.metaKey) && !event.shiftKey && event.key === 'z';
    if (!isUndo || asText || !look) return;
    event.preventDefault();
    (document.activeElement as HTMLElement | null)?.blur();
    undo();
  });
}

/// On a web server the page is cached, so that it also opens offline.
async function keepThePage(): Promise<void> {
  if (location.protocol === 'file:' || !('serviceWorker' in navigator)) return;
  try {
    await navigator.serviceWorker.register('fairfoot-offline.js');
    const ready = await navigator.serviceWorker.ready;
    ready.active?.postMessage(location.href);
  } catch {
    // The page works without a cache.
  }
}

function begin(): void {
  const home = h('button', { type: 'button', class: 'home', 'aria-label': `${words.name}: ${say('home')}`, onclick: start }, words.name);
  const header = h('header', {}, home, h('span', { class: 'aside' }, say('promise')));
  document.title = say('title');
  const packed = document.getElementById('module')?.textContent ?? '';
  document.body.replaceChildren(header, main, live, picker);
  if (typeof WebAssembly !== 'object' || typeof DecompressionStream !== 'function' || typeof Worker !== 'function') {
    main.append(h('p', { class: 'start' }, say('noModule')));
    return;
  }
  library = new Library(Uint8Array.from(atob(packed.trim()), (c) => c.charCodeAt(0)));
  listen();
  start();
  void keepThePage();
  // For tests that check the page's answers byte for byte.
  Object.assign(window, { fairfoot: library });
}

begin();
