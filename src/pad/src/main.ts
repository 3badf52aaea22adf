// The page: one text, shown both as rows and as a file. Everything said about the house comes from the library.
import { cornersOf, drawing } from './drawing';
import { Editor } from './editor';
import { FINER, FRACTIONS, LENGTH, METRIC, NEW, UNITS } from './format';
import { Library } from './library';
import { h } from './page';
import * as pictures from './pictures';
import type { Again, Beginning, Edit, Heads, How, Look, Made, Mend, Notice, Part, Question, Row, Shape, Walk, Way } from './types';
import { fromText, unpacked } from './unpack';
import { NAME, say, type Words } from './words';

declare const EXAMPLE: string;
declare const LICENSES: string;

const KEEP = 'fairfoot';
const MOST_UNDONE = 500;
/// The most characters of earlier texts that are stored for undo.
const MOST_STORED = 100_000;
/// The name of a house that was begun here.
const BEGUN = 'house.sides';
const MOST_OF_NAME = 60;
/// What was added to the name of a house when its pages were saved, and by a browser to a second file of one name.
const ADDED = /(-record-[\d.]+|-draft|\s*\(\d+\))+$/;
/// The longest text that may be a bare list of walls.
const MOST_OF_LIST = 50_000;
const NEWS_MS = 8_000;
const PAUSE_MS = 500;
const WAYS: Way[] = ['back', 'right', 'front', 'left'];
const SHAPES: Shape['is'][] = ['straight', 'bay', 'round', 'slant'];
/// The fields of a row that hold lengths.
const PARTS = ['feet', 'inches', 'fraction', 'out', 'flat', 'leg'];
const HOWS: How[] = ['measured', 'closing', 'about'];
/// A length with a mark, a unit in words or a second number, as it is not typed into a box for feet alone.
const WHOLE = /\d\s*(?:['’′"”″]|f|in)|\d[\s-]+\d/i;
/// A fraction that is commonly said of feet, as in `22 1/2`.
const PART_OF_A_FOOT = /^(?:[13]\/4|1\/2|[12]\/3)['’′]?$/;
const FIELDS: (keyof Heads)[] = ['record', 'listing', 'plan', 'property', 'account', 'veneer'];

const main = h('main', { id: 'page' });
const live = h('p', { role: 'status', class: 'aside', 'aria-live': 'polite' });
const picker = h('input', { type: 'file', class: 'hidden', tabindex: '-1', 'aria-hidden': 'true' });

let library: Library;
let text = '';
let name = BEGUN;
let undone: string[] = [];
let look: Look | null = null;
let shown = '';
/// The text that the displayed rows belong to.
let painted = '';
let report = '';
let caution = '';
/// The key of the focused row: the index of its walk, and its index there. Line numbers change; keys do not.
let focus: string | null = null;
/// The row that has its buttons on the screen.
let tooledAt: string | null = null;
let asText = false;
let editor: Editor | null = null;
let chosen: { walk: number; corner: number } | null = null;
let isAdding = false;
/// The level that a further space comes onto; empty for a new one.
let addingOn = '';
let a4 = false;
/// Somebody chose the paper; until then it is the one that the library takes.
let isPaperChosen = false;
/// The input fields by line and part, since a house may have a thousand sides.
const fields = new Map<string, HTMLElement>();
/// The values each row was last filled with.
const filled = new Map<string, string>();
/// The look under way.
let looking: Promise<void> | null = null;
let atWork = 0;
let edits: Promise<unknown> = Promise.resolve();
/// The field that the newest step of undo belongs to: typing on in it adds no step.
let typedIn: string | null = null;
let quiet = 0;
let staying: ResizeObserver | null = null;
/// A field that is about to be sent.
let soon: { timer: number; field: keyof Heads } | null = null;
/// The name of a space that was just added: its first wall is asked for next.
let newSpace: string | null = null;
/// The walk somebody works at.
let walkAt = 0;
let staysNext: string | null = null;
let focusNext: { key: string; part: string } | null = null;
/// The house was begun or changed here, so that replacing it would lose something.
let isOwn = false;
/// The walks are being typed wall by wall; those that are finished by word of the person are in the set, by name.
let isWalking = false;
const finished = new Set<string>();
/// The walks of which somebody said that nothing lies inside.
const answered = new Set<string>();
/// The further space is one inside a walk.
let isInside = false;
/// The row that gets the focus once the new rows are filled.
let comingTo: string | null = null;
/// What was typed into the list of fractions that has the focus.
let ofList = '';
/// The row whose feet are typed anew, over all that stood there: a whole length replaces its inches and fraction too.
let anew: string | null = null;
/// The row whose inches were just reached by a mark or a blank after the feet.
let arrived: string | null = null;
/// The row whose feet were followed by a blank, so that a fraction after them may be part of a foot.
let spaced: string | null = null;
/// The rows are being replaced, so that a field loses the focus although nobody left it.
let isReplacing = false;
/// A pointer is pressed: nothing may move below it until it is released.
let isPressed = false;
let atRelease: (() => void)[] = [];
/// Pages were asked for, so that the caution is due although a question is open.
let isHandedOn = false;

const parts = {
  another: h('button', { type: 'button', class: 'quiet another', hidden: true }, say('another')),
  heads: h('section', { class: 'figures' }),
  walks: h('div', { class: 'walks' }),
  drawing: h('div', { class: 'drawing' }),
  gap: h('p', { class: 'still', 'aria-live': 'polite' }),
  unchecked: h('p', { class: 'unchecked', 'aria-live': 'polite' }),
  question: h('div', { class: 'question', 'aria-live': 'polite' }),
  caution: h('p', { class: 'caution', role: 'alert' }),
  opening: h('div', { class: 'opening', 'aria-live': 'polite' }),
  before: h('p', { class: 'aside' }),
  report: h('section', { class: 'report', 'aria-label': say('details') }),
  compass: h('p', { class: 'aside' }),
  notices: h('div', { class: 'notices' }),
  worth: h('div', { class: 'worth' }),
  pages: h('section', { class: 'pages' }),
  text: h('section', { class: 'text' }),
  rows: h('section', { class: 'rows' }),
  views: h('div', { class: 'views', role: 'group', 'aria-label': say('walk') }),
};

// ---- the one text

function become(next: string, from: 'rows' | 'editor', field: string | null = null): void {
  if (next === text) return;
  if (field === null || field !== typedIn) undone = [...undone, text].slice(-MOST_UNDONE);
  typedIn = field;
  isOwn = true;
  text = next;
  keep();
  putAway();
  if (from !== 'editor') editor?.text(text);
  void refresh();
}

/// Edits are applied one after another. Line numbers refer to the text on the screen when the edit was requested.
/// Afterwards a part of a row has the focus, if one is named.
function edit(one: Edit, focusAfter: string | null = null, field: string | null = null, part = 'feet'): Promise<void> {
  const base = painted;
  busy(+1);
  const done = edits.then(async () => {
    const next = await library.edit(text, moved(one, base));
    // Only now: what is painted before does not have the row yet.
    if (focusAfter !== null) {
      focus = focusAfter;
      focusNext = { key: focus, part };
    }
    become(next, 'rows', field);
  }).finally(() => busy(-1));
  edits = done.catch(failed);
  return done.catch(failed);
}

/// Resolves once everything typed so far is in the text and the library has processed it. A field that a button was
/// touched from may still have the focus, so it is read first.
async function latest(): Promise<void> {
  const active = document.activeElement;
  if (active instanceof HTMLInputElement) active.dispatchEvent(new Event('change', { bubbles: true }));
  for (let last: unknown = null; last !== edits; ) {
    last = edits;
    await last;
  }
  if (text) await refresh();
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

/// Takes back the newest step, after what a field that just lost the focus still sends.
async function undo(): Promise<void> {
  await latest();
  const before = undone.pop();
  if (before === undefined) return;
  typedIn = null;
  text = before;
  keep();
  putAway();
  editor?.text(text);
  void refresh();
}

function keep(): void {
  try {
    localStorage.setItem(KEEP, JSON.stringify(held()));
  } catch {
    // A private window stores nothing; the page still works.
  }
}

interface Kept {
  name: string;
  text: string;
  isOwn?: boolean;
  whole?: string[];
  /// Earlier texts, for undo.
  undone?: string[];
  /// A figure that was being typed: its field and what stood there.
  typing?: [keyof Heads, string] | null;
}

/// The house on the screen, as it is stored.
const held = (): Kept => ({ name, text, isOwn, whole: [...answered], undone: recent(), typing: soon && [soon.field, headOf(soon.field)?.value ?? ''] });

/// The newest earlier texts, as far as they are stored.
function recent(): string[] {
  let room = MOST_STORED;
  let from = undone.length;
  while (from > 0 && undone[from - 1].length <= room) room -= undone[--from].length;
  return undone.slice(from);
}

/// The house that is stored on this device.
function stored(): Kept | null {
  try {
    return JSON.parse(localStorage.getItem(KEEP) ?? 'null');
  } catch {
    return null;
  }
}

/// The house of the last visit, or where nothing is stored, of this one.
const kept = (): Kept | null => stored() ?? (text ? held() : null);

/// How the house kept here is called: its address, or the name of its file.
const titled = (old: Kept): string => /^property "([^"]*)"/m.exec(old.text)?.[1] || (old.name === BEGUN ? '' : old.name);

/// Pages on the screen, or ready to print, belong to the text they were made of.
function putAway(): void {
  parts.pages.querySelector('.leaves')?.replaceChildren();
  document.getElementById('paper')?.remove();
}

/// Asks before something is lost: offers to save it, and resolves with the answer, or null if the question is closed.
function asked<T extends Words>(question: Words, answers: T[]): Promise<T | null> {
  return new Promise((resolve) => {
    // Nothing is lost by pressing Enter twice.
    const answer = (one: T) =>
      h('button', { type: 'button', class: one === 'goOn' ? 'first' : '', autofocus: one === 'goOn', onclick: () => {
        resolve(one);
        dialog.close();
      } }, say(one));
    const old = kept();
    if (live.textContent === say('working')) tell('');
    const dialog = h('dialog', { 'aria-label': say(question), onclose: () => {
      resolve(null);
      dialog.remove();
    } },
      h('p', {}, old && titled(old) ? h('strong', {}, `${titled(old)}. `) : '', say(question)),
      h('div', { class: 'doing' },
        ...answers.map(answer),
        old && h('button', { type: 'button', onclick: () => saved(old.text, 'text/plain', '.sides', old.name) }, say('save')),
        h('button', { type: 'button', autofocus: !answers.some((one) => one === 'goOn'), onclick: () => dialog.close() }, say('close'))));
    document.body.append(dialog);
    dialog.showModal();
  });
}

/// Shows another house, after asking if that replaces one that was typed here.
async function instead(next: string, called: string): Promise<void> {
  const old = kept();
  if (old?.isOwn && old.text !== next) {
    const answer = await asked('replacing', ['goOn', 'replace']);
    if (answer === 'goOn') goOn(old);
    if (answer !== 'replace') return;
  }
  name = called;
  isOwn = false;
  answered.clear();
  work(next, next === NEW);
  // The button that was pressed is gone.
  await refresh();
  if (next === NEW) parts.walks.querySelector<HTMLElement>('.way[data-way]')?.focus({ preventScroll: true });
}

/// A text that was pasted; a bare list of walls becomes a house.
async function paste(pasted: string): Promise<void> {
  const whole = pasted.length > MOST_OF_LIST ? pasted : await library.edit(pasted, { edit: 'house' });
  await instead(whole, BEGUN);
}

function goOn(old: Kept): void {
  name = old.name;
  isOwn = old.isOwn ?? true;
  answered.clear();
  for (const one of old.whole ?? []) answered.add(one);
  work(old.text, true);
  undone = old.undone ?? [];
  keep();
  if (old.typing) void edit({ edit: 'head', field: old.typing[0], value: old.typing[1] });
}

/// Takes the house off the screen and off this device. What is begun after that is kept again.
async function forget(): Promise<void> {
  if ((await asked('forgetting', ['forget'])) !== 'forget') return;
  unsend();
  await edits;
  void pictures.forget();
  try {
    localStorage.removeItem(KEEP);
  } catch {
    // Nothing was stored.
  }
  text = '';
  name = BEGUN;
  isOwn = false;
  undone = [];
  answered.clear();
  start();
  main.querySelector<HTMLElement>('.choice')?.focus();
  tell(say('forgotten'), true);
}

function failed(error: unknown): void {
  const why = error instanceof Error && error.message !== 'stopped' ? error.message : say('stopped');
  tell(why);
}

/// Says something below the page; what is only news goes after a while.
function tell(what: string, isNews = false): void {
  clearTimeout(quiet);
  live.textContent = what;
  if (isNews) quiet = window.setTimeout(() => (live.textContent = ''), NEWS_MS);
}

/// Resolves when no pointer is pressed, after the click that it may make. What is pressed must stay where it is.
const released = () =>
  new Promise<void>((resolve) => {
    if (isPressed) atRelease.push(resolve);
    else resolve();
  });

function release(): void {
  isPressed = false;
  const waiting = atRelease;
  atRelease = [];
  // The click comes right after this event.
  setTimeout(() => waiting.forEach((one) => one()));
}

/// Processes the newest text; requests for older texts in between are dropped. Resolves once nothing is newer.
function refresh(): Promise<void> {
  looking ??= lookedAt();
  return looking;
}

async function lookedAt(): Promise<void> {
  busy(+1);
  // What follows comes after this call is known as the one under way, even if there is nothing new.
  await Promise.resolve();
  try {
    let next = look;
    while (shown !== text || !next) {
      const asked = text;
      next = await library.look(name, asked, columns());
      for (const walk of next.rows.walks) if (walk.is_closed) finished.add(walk.name);
      shown = asked;
      await released();
    }
    look = next;
    painted = shown;
    paint(look);
  } catch (error) {
    shown = text;
    failed(error);
  } finally {
    looking = null;
    busy(-1);
  }
}

/// How many characters of the report fit on a line.
function columns(): number {
  const wide = (parts.report.parentElement?.clientWidth ?? 600) - 68;
  return Math.max(34, Math.min(80, Math.floor((wide - 2) / (0.605 * 13.5))));
}

// ---- the screen

function paint(now: Look): void {
  paintHeads(now);
  paintWalks(now);
  paintDrawing(now);
  paintAnswer(now);
  editor?.notices(now.notices, mend);
}

/// Paints what was seen last once more.
function repaint(): void {
  const again = () => {
    if (look) paint(look);
  };
  if (isPressed) void released().then(again);
  else again();
}

const isMetric = () => METRIC.includes(look?.rows.heads.units ?? '');
const units = () => (isMetric() ? UNITS.metric : UNITS.feet);

function paintHeads(now: Look): void {
  const heads = now.rows.heads;
  if (!parts.heads.firstChild) {
    const fields = FIELDS.map((field) => {
      const input = h('input', {
        name: field,
        autocomplete: 'off',
        inputmode: field === 'record' || field === 'listing' || field === 'plan' ? 'decimal' : 'text',
        oninput: () => sendSoon(field),
        onchange: () => void sendHead(field),
      });
      return h('label', {}, h('span', { 'data-label': field }), input, h('span', { class: 'wrong', id: `wrong-${field}`, 'aria-live': 'polite' }));
    });
    parts.heads.append(
      h('h2', {}, say('figures')),
      h('div', { class: 'fields' }, ...fields),
    );
  }
  for (const field of FIELDS) {
    const input = headOf(field);
    const unit = unitOf(field);
    const label = parts.heads.querySelector(`[data-label=${field}]`);
    if (label) label.textContent = say(field as Words, { unit });
    const bare = field === 'veneer' ? / *("|cm)$/ : / *sq (ft|m)$/;
    const value = heads[field].endsWith(unit) || (field === 'veneer' && !isMetric()) ? heads[field].replace(bare, '') : heads[field];
    if (!input) continue;
    const isTyping = document.activeElement === input;
    if (!isTyping) input.value = value;
    // Until it is sent, what is said beside it stays.
    if (isTyping && soon?.field === field) continue;
    const wrong = now.notices.find((one) => one.is_error && one.form.field === field);
    input.setAttribute('aria-invalid', String(wrong !== undefined));
    input.setAttribute('aria-describedby', `wrong-${field}`);
    const place = document.getElementById(`wrong-${field}`);
    if (place) refill(place, wrong ?? null, () => (wrong ? [noticed(wrong, true)] : []));
  }
}

/// Fills an element unless it shows the same already: a button in it may have the focus.
function refill(element: HTMLElement, shows: unknown, make: () => Node[]): void {
  const told = JSON.stringify(shows);
  if (element.dataset.shows === told) return;
  element.dataset.shows = told;
  element.replaceChildren(...make());
}

const unitOf = (field: keyof Heads) => (field === 'veneer' ? units().thickness : units().area);

const headOf = (field: keyof Heads) => parts.heads.querySelector<HTMLInputElement>(`[name=${field}]`);

/// Sends a field of the figures. What was to be sent soon is sent with it.
function sendHead(field: keyof Heads): Promise<void> {
  const sent = edit({ edit: 'head', field, value: headOf(field)?.value ?? '' }, null, field);
  unsend();
  return sent.then(repaint);
}

function unsend(): void {
  if (soon === null) return;
  clearTimeout(soon.timer);
  soon = null;
  busy(-1);
}

/// Waits for the next key, so that half a figure makes no answer. It is stored at once.
function sendSoon(field: keyof Heads): void {
  if (soon === null) busy(+1);
  else clearTimeout(soon.timer);
  soon = { field, timer: window.setTimeout(() => void sendHead(field), PAUSE_MS) };
  isOwn = true;
  if (report) age(true);
  keep();
}

/// Says of the answer that it is from before the last change, or no longer.
function age(isOld: boolean): void {
  parts.opening.classList.toggle('old', isOld);
  parts.before.className = isOld ? 'older' : 'aside';
  parts.before.textContent = isOld ? say('older') : report ? '' : say('noAnswer');
}

function paintWalks(now: Look): void {
  const active = document.activeElement as HTMLElement | null;
  const at = active?.dataset.part ? { key: active.dataset.key ?? '', part: active.dataset.part } : null;
  const typing = at !== null && PARTS.includes(at.part);
  const values = typing ? PARTS.map((part) => [part, field(at.key, part)] as const).map(([part, one]) => [part, (one as HTMLInputElement | null)?.value] as const) : [];
  const stays = staysNext ?? active?.dataset.stays ?? null;
  const rowShape = (row: Row) => [row.way !== null || row.typed, row.shape.is, row.picture, row.number, row.sides];
  const walks = now.rows.walks.map((walk) => [walk.name, walk.kind, walk.level, walk.corner, walk.off, walk.rows.map(rowShape)]);
  const shape = JSON.stringify([walks, isMetric(), isAdding, now.rows.walks.map(isUnfinished)]);
  const isNew = parts.walks.dataset.shape !== shape;
  if (isNew) {
    parts.walks.dataset.shape = shape;
    tooledAt = focus;
    fields.clear();
    isReplacing = true;
    parts.walks.replaceChildren(...now.rows.walks.map((walk, i) => walked(walk, now, i)), adding(now));
    isReplacing = false;
  }
  comingTo = isNew ? ((focusNext ?? at)?.key ?? null) : null;
  for (const [w, walk] of now.rows.walks.entries()) {
    for (const [r, row] of walk.rows.entries()) fill(row, `${w} ${r}`, now, isNew);
  }
  comingTo = null;
  for (const [w, one] of parts.walks.querySelectorAll('.walk > .back').entries()) one.textContent = now.said.back[w] ?? '';
  retool();
  if (isNew || focusNext) {
    const wanted = focusNext ?? at;
    const found = wanted ? field(wanted.key, wanted.part) : stays ? parts.walks.querySelector<HTMLElement>(`[data-stays="${stays}"]`) : null;
    // What is being typed is newer than what the library has seen, and stands in the fields it was typed into.
    if (!focusNext && at) {
      for (const [part, value] of values) {
        const one = field(at.key, part);
        if (one && value !== undefined) put(one, value);
      }
    }
    focusNext = staysNext = null;
    found?.focus();
    toNewSpace(now);
  }
  const button = document.getElementById('undo') as HTMLButtonElement | null;
  if (button) button.disabled = undone.length === 0;
}

/// Goes to the space that was just added.
function toNewSpace(now: Look): void {
  const index = newSpace === null ? -1 : now.rows.walks.findIndex((walk) => walk.name === newSpace);
  if (index < 0) return;
  newSpace = null;
  walkAt = index;
  const section = parts.walks.querySelectorAll('section.walk')[index];
  section?.querySelector<HTMLElement>('.way')?.focus({ preventScroll: true });
  section?.scrollIntoView({ block: 'center' });
}

/// Sets what a field shows; a list gets the value as one more option if it does not have it.
function put(one: HTMLElement, value: string): void {
  const element = one as HTMLInputElement | HTMLSelectElement;
  if (element instanceof HTMLSelectElement && ![...element.options].some((option) => option.value === value)) {
    element.append(h('option', { value }, value));
  }
  element.value = value;
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

/// A walk that somebody is still typing: it is not back at its start, nor near it, nor said to be finished.
const isUnfinished = (walk: Walk) =>
  isWalking && walk.rows.length > 2 && walk.rows.every((row) => row.is_read) && !walk.is_closed && !walk.is_near && !finished.has(walk.name);

function walked(walk: Walk, shown: Look, index: number): HTMLElement {
  const lineOf = () => look?.rows.walks[index]?.line ?? 0;
  const kinds = shown.kinds.includes(walk.kind) ? shown.kinds : [...shown.kinds, walk.kind];
  const kind = select(kinds, walk.kind, say('kind'), (kind) => edit({ edit: 'name', line: lineOf(), kind, name: walk.name }));
  const called = h('input', {
    value: walk.name,
    'aria-label': say('called'),
    'data-stays': `called ${index}`,
    onchange: (event: Event) => {
      const name = (event.target as HTMLInputElement).value.trim();
      if (name) void edit({ edit: 'name', line: lineOf(), kind: walk.kind, name });
      else repaint();
    },
  });
  kind.dataset.stays = `kind ${index}`;
  const rows = walk.rows.map((row, i) => rowed(walk, row, i, `${index} ${i}`));
  const last = () => at(`${index} ${walk.rows.length - 1}`)?.line ?? lineOf();
  const next = WAYS.map((way) =>
    h('button', { type: 'button', class: 'way', 'data-way': way, 'data-stays': `${way} ${index}`, onclick: () => add(last(), way, `${index} ${walk.rows.length}`) }, say(way)),
  );
  const asked = say(walk.rows.length > 0 ? 'nextWall' : 'firstWall');
  const title = shown.rows.levels.length > 1 && walk.level !== walk.name ? `${walk.name}, ${walk.level}` : walk.name;
  const drop = () => {
    focus = null;
    walkAt = 0;
    void edit({ edit: 'drop', line: lineOf() });
  };
  return h(
    'section',
    { class: 'walk', 'aria-label': title },
    h('h2', {}, index === 0 ? say('walk') : title),
    index === 0 && h('p', { class: 'aside' }, say('walkHint'), h('span', { class: 'keys' }, ` ${say('keys')}`)),
    h('div', { class: 'what' }, kind, called, index === 0 && unitChoice(shown)),
    (index > 0 || walk.off.length > 0) && walk.kind !== 'lot' && beginning(walk, shown, index),
    h('ol', { class: 'sides' }, ...rows),
    h('p', { class: 'back' }),
    h('div', { class: 'next', role: 'group', 'aria-label': asked }, h('span', {}, asked), ...next, isUnfinished(walk) && lastWall(walk.name)),
    index > 0 && h('div', { class: 'after' }, h('button', { type: 'button', class: 'quiet', onclick: drop }, say('drop', { name: walk.name }))),
  );
}

/// After this button a walk that is not back at its start is looked at for errors.
function lastWall(name: string): HTMLElement {
  const finish = () => {
    finished.add(name);
    repaint();
    parts.notices.querySelector<HTMLElement>('button')?.focus();
  };
  return h('button', { type: 'button', class: 'last', onclick: finish }, say('lastWall'));
}

/// Where a space begins, seen and changed.
function beginning(walk: Walk, shown: Look, index: number): HTMLElement {
  const place = placing(walk.off, String(index), () => void edit({ edit: 'begin', line: look?.rows.walks[index]?.line ?? 0, ...place.where() }));
  const before = drawable(shown).filter((other) => other.index < index && other.walk.level === walk.level);
  place.offer(before, walk.corner);
  return h('div', { class: 'begins' }, h('label', {}, h('span', {}, say('corner')), place.corner), place.off);
}

/// A list of corners, and the ways and lengths from where the level begins that stand for none of them.
function placing(start: [Way, string][], stays: string, changed: () => void) {
  const corner = h('select', { 'aria-label': say('corner'), 'data-stays': `corner ${stays}`, onchange: () => {
    off.hidden = corner.value !== '';
    changed();
  } });
  const offs = [0, 1].map((i) => {
    const across = i === 1 && start.length === 1 && ['back', 'front'].includes(start[0][0]) ? 'right' : WAYS[1 - i];
    const way = select(WAYS, start[i]?.[0] ?? across, say('offWay', { n: i + 1 }), changed, (way) => say(way as Words));
    way.dataset.stays = `way ${i} ${stays}`;
    const value = (start[i]?.[1] ?? '').replace(/ *m$/, '');
    return { way, length: h('input', { value, autocomplete: 'off', 'data-stays': `off ${i} ${stays}`, placeholder: isMetric() ? '' : LENGTH, onchange: changed }) };
  });
  const pair = ({ way, length }: (typeof offs)[number], i: number) =>
    h('div', { class: 'off' },
      h('label', {}, h('span', {}, say('offWay', { n: i + 1 })), way),
      h('label', {}, h('span', {}, say('offLength', { n: i + 1 })), length));
  const off = h('div', {}, ...offs.map(pair));
  /// The corners of these walks, and the one that is chosen.
  const offer = (here: { walk: Walk; index: number }[], at: [string, number] | null): void => {
    let before = 0;
    const corners = here.flatMap(({ walk }) => {
      const option = (n: number) => h('option', { value: `${n} ${walk.name}` }, (here.length > 1 ? `${before + n}: ` : '') + say('cornerOf', { n, space: walk.name }));
      const numbers = walk.rows.map((row) => row.number);
      // A corner of a bay has no row of its own.
      if (at?.[0] === walk.name && !numbers.includes(at[1])) numbers.push(at[1]);
      const options = numbers.map(option);
      before += cornersOf(walk);
      return options;
    });
    corner.replaceChildren(...corners, h('option', { value: '' }, say('measuredOff')));
    corner.value = at ? `${at[1]} ${at[0]}` : '';
    off.hidden = corner.value !== '';
  };
  const where = (): Beginning => {
    const [, n, of] = /^(\d+) (.*)$/.exec(corner.value) ?? [];
    const typed = offs.map(({ way, length }): [Way, string] => [way.value as Way, whole(length.value.trim())]);
    return of === undefined
      ? { corner: null, start: typed.filter(([, length]) => length && Number.parseFloat(length) !== 0) }
      : { corner: [of, Number(n)], start: [] };
  };
  return { corner, off, offer, where };
}

function unitChoice(shown: Look): HTMLElement {
  const now = METRIC.includes(shown.rows.heads.units) ? 'meters' : 'feet';
  const list = select(['feet', 'meters'], now, say('units'), (unit) => edit({ edit: 'head', field: 'units', value: unit === 'meters' ? unit : '' }),
    (unit) => say(unit === 'meters' ? 'meters' : 'feetInches'));
  return h('label', { class: 'beside' }, h('span', {}, say('units')), list);
}

function select(options: string[], value: string, label: string, chosen: (value: string) => void, named?: (value: string) => string): HTMLSelectElement {
  const list = options.map((option) => h('option', { value: option, selected: option === value }, named ? named(option) : option));
  return h('select', { 'aria-label': label, onchange: (event: Event) => chosen((event.target as HTMLSelectElement).value) }, ...list);
}

function rowed(walk: Walk, row: Row, index: number, key: string): HTMLElement {
  const n = row.number;
  const number = h('span', { class: 'n', 'aria-hidden': 'true' }, row.sides > 1 ? `${n}–${n + row.sides - 1}` : String(n));
  const focused = key === focus;
  const tools = focused ? tooled(walk, row, index, key) : null;
  const listens = { onfocusin: () => inFocus(key), onfocusout: () => void left(key) };
  if (row.way === null) {
    const li = h('li', { class: focused ? 'side other focus' : 'side other', ...listens, tabindex: '0' }, number, h('code', {}, row.typed), h('span', { class: 'aside' }, say('shownOnly')), tools);
    fields.set(`${key} row`, li);
    return li;
  }
  const way = select(WAYS, row.way, say('way', { n }), () => send(key), (way) => say(way as Words));
  const how = select(HOWS, row.how, say('how', { n }), () => send(key), (how) => say(how as Words));
  for (const [part, element] of [['way', way], ['how', how]] as const) mark(element, key, part);
  const li = h(
    'li',
    { class: focused ? 'side focus' : 'side', ...listens },
    number,
    way,
    isMetric() ? metric(key, n) : taped(key, n),
    ...more(row.shape, key, n),
    h('span', { class: 'found' }),
    how,
    tools,
    h('span', { class: 'wrong', id: wrongId(key) }),
  );
  fields.set(`${key} row`, li);
  return li;
}

function taped(key: string, n: number): HTMLElement {
  const fraction = select(FRACTIONS, '', say('fraction', { n }), () => send(key), (part) => part || '–');
  fraction.addEventListener('keydown', (event) => toFraction(event, key));
  fraction.addEventListener('focusout', () => leftFraction(key, fraction));
  mark(fraction, key, 'fraction');
  return h(
    'span',
    { class: 'length' },
    number_('feet', key, say('feet', { n })),
    h('span', { class: 'unit', 'aria-hidden': 'true' }, '′'),
    number_('inches', key, say('inches', { n })),
    h('span', { class: 'unit', 'aria-hidden': 'true' }, '″'),
    fraction,
  );
}

const metric = (key: string, n: number) =>
  h('span', { class: 'length' }, number_('feet', key, say('metric', { n })), h('span', { class: 'unit', 'aria-hidden': 'true' }, 'm'));

/// The lengths that a bay or a slanted wall has beside its first.
function more(shape: Shape, key: string, n: number): HTMLElement[] {
  const field = (part: 'out' | 'flat' | 'leg') => {
    const leg = shape.is === 'slant' ? `${say(isMetric() ? 'metric' : 'feet', { n })}, ${say(shape.to)}` : '';
    const input = number_(part, key, part === 'leg' ? leg : '');
    input.inputMode = isMetric() ? 'decimal' : 'text';
    input.placeholder = isMetric() ? '' : LENGTH;
    return input;
  };
  const labeled = (part: 'out' | 'flat') => h('label', { class: 'more' }, h('span', {}, say(part)), field(part));
  if (shape.is === 'bay') return [labeled('out'), labeled('flat')];
  if (shape.is === 'round') return [labeled('out')];
  if (shape.is !== 'slant') return [];
  const to = select(WAYS, shape.to, `${say('way', { n })}, ${say('slant')}`, () => send(key), (way) => say(way as Words));
  mark(to, key, 'to');
  return [h('span', { class: 'more' }, to, field('leg'))];
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
    'aria-label': label || null,
    'aria-describedby': wrongId(key),
    onfocus: () => part === 'feet' && (anew = null),
    onblur: () => (arrived = null),
    onbeforeinput: (event: InputEvent) => {
      const isAll = input.selectionStart === 0 && input.selectionEnd === input.value.length;
      if (part === 'feet' && isAll && event.inputType.startsWith('insert')) anew = key;
    },
    oninput: () => {
      arrived = null;
      pointed(input);
      if (part === 'feet' && anew === key && WHOLE.test(input.value)) empty(key);
      hopped(key, part);
      send(key, undefined, `${key} ${part}`);
    },
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
  if (part === 'inches' && isWord(event, key, value)) {
    event.preventDefault();
    return;
  }
  if (part === 'inches' && isUnit(event, key, value)) {
    event.preventDefault();
    return;
  }
  // The blank after a foot mark, as in 38' 4", goes nowhere.
  if (isInch && (!value || (event.key === ' ' && arrived === key))) {
    event.preventDefault();
    return;
  }
  if (isMark && field(key, 'inches')) {
    event.preventDefault();
    spaced = event.key === ' ' ? key : null;
    toInches(key);
    send(key, undefined, `${key} feet`);
  } else if (isInch) {
    event.preventDefault();
    if (event.key !== ' ' && spaced === key) {
      spaced = null;
      send(key, undefined, `${key} ${part}`);
    }
    field(key, 'fraction')?.focus();
  } else if (event.key === 'Enter') {
    event.preventDefault();
    toNextBox(event.target as HTMLElement, key);
  } else if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
    event.preventDefault();
    toWall(event.target as HTMLElement, key, event.key === 'ArrowDown' ? 1 : -1);
  }
}

/// Goes to the same box of the next wall or the one before; past the last wall of a walk, to the buttons for one more, and past those
/// to the next walk.
function toWall(from: HTMLElement, key: string, by: 1 | -1): void {
  const [w, r] = key.split(' ').map(Number);
  const there = `${w} ${r + by}`;
  const other = field(there, from.dataset.part ?? '') ?? field(there, 'feet') ?? field(there, 'row');
  if (other) chooseAll(other);
  else if (by > 0) from.closest('section')?.querySelector<HTMLElement>('.way[data-way]')?.focus();
}

/// Whether a key belongs to a unit in words: the `ft` after the feet of `12 ft 6 in`, or the `in` after its inches. A
/// number followed by `in` alone is moved to the inches.
function isUnit(event: KeyboardEvent, key: string, value: string): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey) return false;
  const isEmpty = !value || arrived === key;
  if (arrived === key && event.key.toLowerCase() === 'i') {
    const feet = field(key, 'feet') as HTMLInputElement | null;
    const inches = field(key, 'inches') as HTMLInputElement | null;
    if (!feet?.value || !inches) return false;
    put(inches, feet.value);
    put(feet, '');
    arrived = null;
    send(key, undefined, `${key} inches`);
    return true;
  }
  return isEmpty ? /^[fet.]$/i.test(event.key) : /^\d+$/.test(value) && /^[inches.]$/i.test(event.key);
}

/// A word that is no unit after feet and a blank, as in `24 and a half`, goes back to the feet: the length is told whole.
function isWord(event: KeyboardEvent, key: string, value: string): boolean {
  const feet = field(key, 'feet') as HTMLInputElement | null;
  const isLetter = /^[a-dghj-su-z]$/i.test(event.key) && !event.ctrlKey && !event.metaKey && !event.altKey;
  if (!isLetter || !feet || spaced !== key || (value && arrived !== key)) return false;
  empty(key);
  put(feet, `${feet.value} ${event.key}`);
  spaced = arrived = null;
  feet.focus();
  send(key, undefined, `${key} feet`);
  return true;
}

/// Goes on from feet to inches. What is there is replaced by what is typed; of a length typed anew nothing stays.
function toInches(key: string): void {
  if (anew === key) empty(key);
  const inches = field(key, 'inches') as HTMLInputElement | null;
  inches?.focus();
  inches?.select();
  arrived = key;
}

/// Empties the inches and the fraction of a wall.
function empty(key: string): void {
  for (const part of ['inches', 'fraction']) {
    const one = field(key, part);
    if (one) put(one, '');
  }
}

/// A fraction typed into its list. Left to the browser, `1/16` would choose the first option that begins with a part of it.
function toFraction(event: KeyboardEvent, key: string): void {
  const list = event.target as HTMLSelectElement;
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  const isDigit = /^[\d/]$/.test(event.key);
  const isMark = ['"', '”', '″', ' '].includes(event.key);
  if (isDigit || event.key === 'Backspace' || (ofList && isMark)) event.preventDefault();
  if (isDigit) {
    ofList += event.key;
    if (FRACTIONS.includes(ofList) || FINER.test(ofList)) choose(list, key, ofList);
  } else if (event.key === 'Backspace') {
    ofList = '';
    choose(list, key, '');
  } else if (event.key === 'Enter') {
    event.preventDefault();
    toNextBox(list, key);
  }
}

/// What was typed is kept as it was typed, even if it is no fraction: the library says so.
function leftFraction(key: string, list: HTMLSelectElement): void {
  if (isReplacing) return;
  if (ofList) choose(list, key, ofList);
  ofList = '';
}

function choose(list: HTMLSelectElement, key: string, value: string): void {
  if (list.value === value) return;
  put(list, value);
  send(key);
}

/// Goes on to the next box of the same wall, and from the last one to the next wall.
function toNextBox(from: HTMLElement, key: string): void {
  const [feet, inches, fraction] = ['feet', 'inches', 'fraction'].map((part) => valueOf(key, part));
  // A whole length in the first box needs no other.
  const isDone = from === field(key, 'feet') && !/^\d*$/.test(feet) && !inches && !fraction;
  const boxes = PARTS.filter((part) => !isDone || (part !== 'inches' && part !== 'fraction')).map((part) => field(key, part)).filter((one) => one !== null);
  const next = boxes[boxes.indexOf(from) + 1];
  if (next) chooseAll(next);
  else toNext(from, key);
}

function chooseAll(one: HTMLElement): void {
  one.focus();
  if (one instanceof HTMLInputElement) one.select();
}

/// Goes on to the next wall that is typed, or to the buttons for one more unless the walk is back at its start.
function toNext(from: HTMLElement, key: string): void {
  const row = from.closest('li');
  const next = row?.nextElementSibling?.querySelector<HTMLElement>('.feet');
  if (next) chooseAll(next);
  else if (!look?.rows.walks[Number(key.split(' ')[0])]?.is_closed) row?.closest('section')?.querySelector<HTMLElement>('.way[data-way]')?.focus();
}

/// The keypads of many phones have a comma for the decimal point. It becomes one where it is seen, as it is typed.
function pointed(input: HTMLInputElement): void {
  if (!isMetric() || !/^\d+,\d*$/.test(input.value)) return;
  const at = input.selectionStart;
  input.value = input.value.replace(',', '.');
  input.setSelectionRange(at, at);
}

/// A foot mark that came after whole feet without a key of its own, as from the keyboard of a phone.
function hopped(key: string, part: string): void {
  const input = field(key, 'feet') as HTMLInputElement | null;
  if (part !== 'feet' || !input || !field(key, 'inches') || !/^\d+['’′]$/.test(input.value)) return;
  input.value = input.value.slice(0, -1);
  toInches(key);
}

/// The contents of a row's fields, as written in the file.
function typed(key: string): string {
  const feet = valueOf(key, 'feet');
  if (isMetric()) return whole(feet);
  const [inches, fraction] = [valueOf(key, 'inches'), valueOf(key, 'fraction')];
  if (spaced === key && /^\d+$/.test(feet) && PART_OF_A_FOOT.test(inches) && !fraction) return `${feet} ${inches}`;
  // No inches beside feet need not be written; alone they are no length, but one that is still to be typed.
  const inch = [inches, fraction].filter((part) => part && !(part === '0' && (!fraction || feet))).join(' ');
  // A whole length stands alone; beside inches the first field holds feet, whatever is typed there.
  const isWhole = feet !== '' && !/^\d+$/.test(feet) && (!inch || /['’′"”″]/.test(feet));
  return [feet && (isWhole ? feet : `${feet}'`), inch && `${inch}"`].filter(Boolean).join(' ');
}

const valueOf = (key: string, part: string) => (field(key, part) as HTMLInputElement | null)?.value.trim() ?? '';

/// A whole length in one field; a bare number is in meters or in feet.
function whole(value: string): string {
  if (!/^[\d.]+$/.test(value)) return value;
  return isMetric() ? `${value} m` : `${value}'`;
}

/// The shape of a row with what stands in its fields.
function shapeOf(key: string, is: Shape['is']): Shape {
  const part = (name: string) => whole(valueOf(key, name));
  if (is === 'bay') return { is, out: part('out'), flat: part('flat') };
  if (is === 'round') return { is, out: part('out') };
  if (is !== 'slant') return { is };
  const across = WAYS[(WAYS.indexOf(valueOf(key, 'way') as Way) + 1) % WAYS.length];
  return { is, to: (valueOf(key, 'to') as Way) || across, leg: part('leg') };
}

function send(key: string, is?: Shape['is'], typedAt: string | null = null): void {
  const row = at(key);
  if (!row) return;
  const shape = shapeOf(key, is ?? row.shape.is);
  void edit({ edit: 'side', line: row.line, way: valueOf(key, 'way') as Way, how: valueOf(key, 'how') as How, length: typed(key), shape }, null, typedAt);
}

async function add(after: number, way: Way, key: string): Promise<void> {
  const [w, r] = key.split(' ').map(Number);
  const walk = look?.rows.walks[w];
  // One more at the end: the walk goes on. One in between is a wall that was forgotten.
  if (walk && r >= walk.rows.length) finished.delete(walk.name);
  await edit({ edit: 'add', after, way, length: '', how: 'measured', shape: { is: 'straight' } }, key);
}

/// Gives the focused row its buttons and takes them from the row before. The fields stay, and with them the caret.
function retool(): void {
  if (tooledAt === focus) return;
  for (const key of [tooledAt, focus]) {
    const li = key === null ? null : field(key, 'row');
    const row = key === null ? undefined : at(key);
    li?.querySelector(':scope > .tools')?.remove();
    li?.classList.toggle('focus', key === focus);
    if (li && row && key !== null && key === focus) {
      const [w, r] = key.split(' ').map(Number);
      const walk = look?.rows.walks[w];
      if (walk) li.insertBefore(tooled(walk, row, r, key), li.querySelector(':scope > .wrong'));
    }
  }
  tooledAt = focus;
}

function inFocus(key: string): void {
  if (focus === key || !look) return;
  focus = key;
  walkAt = Number(key.split(' ')[0]);
  const open = () => {
    retool();
    if (look) paintDrawing(look);
  };
  if (isPressed) void released().then(open);
  else open();
}

/// A row that is left shows its length in the right boxes, and without a length says so.
async function left(key: string): Promise<void> {
  const row = at(key);
  if (isReplacing || !row || (!isBegun(row) && filled.get(key) !== '')) return;
  busy(+1);
  // By then the next field has the focus.
  await new Promise((resolve) => setTimeout(resolve));
  await released();
  busy(-1);
  if (isAt(key)) return;
  if (spaced === key) spaced = null;
  repaint();
}

function tooled(walk: Walk, row: Row, index: number, key: string): HTMLElement {
  const of = key.split(' ')[0];
  const [before, after] = [index > 0, index + 1 < walk.rows.length];
  const to = (place: number) => () => {
    const [here, other] = [at(key), at(`${of} ${place}`)];
    if (here && other) void edit({ edit: 'swap', line: here.line, with: other.line }, `${of} ${place}`, null, place < index ? 'up' : 'down');
  };
  const button = (word: Words, onclick: (() => void) | null) => {
    const arrow = { up: '↑', down: '↓' }[word as string];
    const one = h('button', { type: 'button', class: 'quiet', 'aria-label': arrow && say(word), disabled: onclick === null, onclick: onclick ?? undefined }, arrow ?? say(word));
    mark(one, key, word);
    return one;
  };
  const n = row.number;
  const shape = row.way !== null && select(SHAPES, row.shape.is, say('shape', { n }), (is) => {
    const part = { straight: 'feet', bay: 'out', round: 'out', slant: 'leg' }[is];
    if (part) focusNext = { key, part };
    send(key, is as Shape['is']);
  }, (is) => say(is as Words));
  return h(
    'span',
    { class: 'tools' },
    shape,
    button('up', before ? to(index - 1) : null),
    button('down', after ? to(index + 1) : null),
    button('insert', () => void add(at(key)?.line ?? row.line, at(key)?.then ?? row.then, `${of} ${index + 1}`)),
    button('remove', () => {
      // The focus goes to the row that takes its place, without calling up a keyboard.
      const left = (look?.rows.walks[Number(of)]?.rows.length ?? 1) - 1;
      const next = left > 0 ? `${of} ${Math.min(index, left - 1)}` : null;
      focus = null;
      void edit({ edit: 'remove', line: at(key)?.line ?? row.line }, next, null, 'way');
      if (next === null) staysNext = `back ${of}`;
    }),
    row.picture === null
      ? button('addPicture', () => pick((file) => void pictured(file, key, `${n}: ${row.way ? say(row.way) : row.typed}`), 'image/jpeg,image/png'))
      : h('button', { type: 'button', class: 'quiet', onclick: () => edit({ edit: 'picture', line: at(key)?.line ?? row.line, caption: '', file: '' }) }, say('drop', { name: row.picture })),
  );
}

/// Fills the fields of a row, except the one being edited.
function fill(row: Row, key: string, now: Look, isNew: boolean): void {
  const looks = shownNow(now).flatMap((one) => one.form.again).filter((one) => one.line === row.line && one.label);
  const told = JSON.stringify([row.way, row.how, row.length, row.found, row.shape, row.is_read, looks]);
  const isHere = field(key, 'way')?.closest('li')?.contains(document.activeElement);
  if (!isNew && !isHere && row.is_read && filled.get(key) === told) return;
  const set = (part: string, value: string) => {
    const element = field(key, part);
    if (element && element !== document.activeElement) put(element, value);
  };
  const li = field(key, 'way')?.closest('li');
  if (!li || row.way === null) return;
  const isTyping = !isNew && li.contains(document.activeElement) && PARTS.includes((document.activeElement as HTMLElement).dataset.part ?? '');
  // What is being typed is filled in once it is left.
  filled.set(key, isTyping ? '' : told);
  set('way', row.way);
  set('how', row.how);
  const bare = (length: string) => (isMetric() ? length.replace(/ *m$/, '') : length.replace(/^(\d+)'$/, '$1'));
  if (!isTyping) {
    const parts = isMetric() ? null : row.parts;
    set('feet', parts ? parts[0] : bare(row.length));
    set('inches', parts ? parts[1] : '');
    set('fraction', parts ? parts[2] : '');
    for (const [part, value] of Object.entries(row.shape)) set(part, part === 'to' ? value : bare(value));
  }
  li.classList.toggle('long', !isTyping && valueOf(key, 'feet').length > 6);
  li.classList.toggle('measured', row.how === 'measured');
  li.classList.toggle('closing', row.how === 'closing');
  const found = li.querySelector('.found');
  if (found) found.textContent = row.found && `= ${row.found}`;
  for (const part of PARTS) {
    const element = field(key, part) as HTMLInputElement | null;
    if (element) element.disabled = row.how === 'closing';
  }
  const wrong = li.querySelector('.wrong');
  const notice = !row.is_read && !isAwaited(now, key) ? now.notices.find((one) => one.is_error && one.line === row.line) : undefined;
  if (wrong) {
    const make = () => [...looks.map((one) => h('span', { class: 'notice' }, ...again(one))), ...(notice ? [noticed(notice, true)] : [])];
    refill(wrong as HTMLElement, [looks, notice ?? null], make);
  }
}

/// Whether a length of the row is still to be typed.
function isBegun(row: Row): boolean {
  const more = Object.entries(row.shape).filter(([part]) => part !== 'is').map(([, value]) => value);
  return row.how !== 'closing' && [row.length, ...more].some((value) => !value);
}

/// Whether a wall without a length is still to be typed: somebody is at it, or it is the last of a walk that goes on.
function isAwaited(now: Look, key: string): boolean {
  const [w, r] = key.split(' ').map(Number);
  const walk = now.rows.walks[w];
  const goesOn = isWalking && r === walk.rows.length - 1 && !walk.is_closed && !finished.has(walk.name);
  return isBegun(walk.rows[r]) && (goesOn || isAt(key));
}

const isAt = (key: string) => comingTo === key || (field(key, 'row')?.contains(document.activeElement) ?? false);

// ---- a further space

/// The walks that can be drawn, with their places among all.
const drawable = (now: Look) => now.rows.walks.map((walk, index) => ({ walk, index })).filter(({ walk }) => walk.kind !== 'lot');

/// Opens the form for a further space.
function addSpace(level: string, inside: boolean): void {
  isAdding = true;
  isInside = inside;
  chosen = null;
  addingOn = level;
  repaint();
  const form = parts.walks.querySelector<HTMLElement>('.further');
  form?.querySelector<HTMLElement>('select')?.focus({ preventScroll: true });
  form?.scrollIntoView({ block: 'center' });
}

function adding(now: Look): HTMLElement {
  const undoing = h('button', { type: 'button', id: 'undo', 'data-stays': 'undo', class: 'quiet', onclick: undo }, say('undo'));
  if (!isAdding) {
    const can = now.rows.walks.some((walk) => walk.rows.length > 0);
    const open = () => addSpace(levelShown(look ?? now), false);
    return h('div', { class: 'after' }, undoing, can && h('button', { type: 'button', class: 'quiet', onclick: open }, say('further')));
  }
  const kind = select(now.kinds, addingOn ? 'garage' : now.kinds[0], say('kind'), () => undefined);
  const called = h('input', { 'aria-label': say('called'), placeholder: say('called') });
  const level = select([...now.rows.levels, ''], addingOn, say('on'), (level) => {
    addingOn = level;
    chosen = null;
    if (!level) kind.value = now.kinds[0];
    offer();
    repaint();
  }, (level) => level || say('newLevel'));
  const newName = h('input', { 'aria-label': say('on'), value: say('levelName') });
  const place = placing([], 'further', () => {
    const { corner } = place.where();
    const walks = look?.rows.walks ?? now.rows.walks;
    const walk = walks.findIndex((one) => one.name === corner?.[0] && one.level === addingOn);
    const at = walks[walk]?.rows.findIndex((row) => row.number === corner?.[1]) ?? -1;
    chosen = at < 0 ? null : { walk, corner: at + 1 };
    if (look) paintDrawing(look);
  });
  const { corner, off } = place;
  corner.id = 'corner';
  const within = h('input', { type: 'checkbox', checked: isInside, onchange: () => (isInside = within.checked), 'aria-describedby': 'why-inside' });
  const whyInside = h('p', { class: 'aside', id: 'why-inside' });
  const around = () => drawable(look ?? now).find(({ walk }) => walk.level === addingOn && walk.rows.length > 0)?.walk.name ?? '';
  const hint = h('p', { class: 'aside' }, say('furtherHint'));
  const inside = h('label', { class: 'tick' }, within, h('span', {}));
  const offer = () => {
    const here = drawable(look ?? now).filter(({ walk }) => walk.level === addingOn);
    const walks = look?.rows.walks ?? now.rows.walks;
    const first = here.find(({ walk }) => walk.rows.length > 0)?.walk;
    const at = chosen ? walks[chosen.walk] : first;
    const row = at?.rows[(chosen?.corner ?? 1) - 1];
    place.offer(here, at && row ? [at.name, row.number] : null);
    newName.hidden = addingOn !== '';
    hint.hidden = !first;
    inside.hidden = !around();
    within.checked = within.checked && !inside.hidden;
    inside.lastElementChild!.textContent = say('inside', { space: around() });
    whyInside.hidden = inside.hidden;
    whyInside.textContent = say('insideHint', { space: around() });
  };
  // Spaces are told apart by their names.
  const nameOf = () => {
    const wanted = called.value.trim() || (addingOn ? kind.value : newName.value.trim()) || kind.value;
    const taken = (look?.rows.walks ?? []).map((walk) => walk.name);
    let n = 1;
    while (taken.includes(n > 1 ? `${wanted} ${n}` : wanted)) n++;
    return n > 1 ? `${wanted} ${n}` : wanted;
  };
  const make = () => {
    const called = nameOf();
    newSpace = called;
    focus = null;
    isAdding = false;
    void edit({
      edit: 'space',
      kind: kind.value,
      name: called,
      within: within.checked ? around() : null,
      ...place.where(),
      level: addingOn || newName.value.trim() || say('levelName'),
    });
  };
  const cancel = () => {
    isAdding = false;
    repaint();
  };
  offer();
  return h(
    'section',
    { class: 'further', 'aria-label': say('further') },
    h('h2', {}, say('further')),
    h('div', { class: 'what' }, kind, called),
    h('label', {}, h('span', {}, say('on')), level),
    newName,
    h('label', {}, h('span', {}, say('corner')), corner),
    hint,
    off,
    inside,
    whyInside,
    h('div', { class: 'after' }, h('button', { type: 'button', onclick: make }, say('add')), h('button', { type: 'button', class: 'quiet', onclick: cancel }, say('close'))),
  );
}

/// The level to draw: where somebody works.
function levelShown(now: Look): string {
  const walks = drawable(now);
  return (now.rows.walks[walkAt] ?? walks[0]?.walk)?.level ?? '';
}

function paintDrawing(now: Look): void {
  const walks = drawable(now);
  const onCorner = isAdding && addingOn
    ? (walk: number, corner: number) => {
        chosen = { walk, corner };
        const list = document.getElementById('corner') as HTMLSelectElement | null;
        const of = now.rows.walks[walk];
        if (list) {
          list.value = `${of.rows[corner - 1].number} ${of.name}`;
          list.dispatchEvent(new Event('change'));
        }
      }
    : null;
  const onRow = (line: number) => {
    const key = keyOf(line);
    if (key === null) return;
    inFocus(key);
    field(key, 'feet')?.focus();
  };
  const level = isAdding && addingOn ? addingOn : levelShown(now);
  const line = focus === null ? null : (at(focus)?.line ?? null);
  if (!walks.some(({ walk }) => walk.rows.length > 0)) {
    parts.drawing.replaceChildren();
    refill(parts.gap, [], () => []);
    refill(parts.unchecked, [], () => []);
    return;
  }
  parts.drawing.replaceChildren(drawing({ walks, level, isOne: now.rows.levels.length < 2, again: shownNow(now).flatMap((one) => one.form.again.map(({ line }) => line)), line, corner: chosen, onRow, onCorner }));
  refill(parts.gap, now.state, () => linked(now.state));
  refill(parts.unchecked, now.unchecked, () => linked(now.unchecked));
}

// ---- the answer

function paintAnswer(now: Look): void {
  // The report with its request waits until the house is said to be whole.
  const isHeld = asking(now) !== undefined && !isHandedOn;
  // While there is an error, what was said before it stays, its caution with it.
  if (now.report !== null) {
    caution = now.caution ?? '';
    report = now.report;
    const [first, ...more] = now.opening.map((line) => h('p', {}, ...linked(line)));
    const unrounded = now.unrounded !== null && h('p', { class: 'likely' }, now.unrounded);
    // While a level may be missing, it says little that one could have been counted otherwise.
    const some = now.likely.filter(([, isOfLevel]) => !isOfLevel || asking(now) === undefined || isHandedOn);
    const likely = some.map(([line]) => h('p', { class: 'likely' }, ...linked(line)));
    parts.opening.replaceChildren(...(first ? [first] : []), ...(unrounded ? [unrounded] : []), ...likely, ...more);
  }
  const isOld = now.report === null && report !== '';
  age(isOld || (soon !== null && report !== ''));
  parts.report.hidden = !report || isHeld;
  // It may be screens away from the answer, so that it says of itself that it is old.
  const mark = isOld && h('p', { class: 'older' }, say('older'));
  parts.report.replaceChildren(...(mark ? [mark] : []), report ? h('pre', { class: isOld ? 'old' : '', tabindex: '0' }, report) : '', parts.worth);
  parts.compass.textContent = now.said.compass;
  paintQuestion(now);
  // The record may be smaller only because a garage is still in the area.
  parts.caution.textContent = asking(now)?.about === 'inside' && !isHandedOn ? '' : caution;
  const notices = shownNow(now);
  // One thing at a time: what comes after it may be resolved with it.
  const open = notices.filter((one) => one.is_error || one.form.rank === 1);
  const lead = !asText && notices.some((one) => one.is_error) && open.find((one) => one.form.rank === Math.min(...open.map(({ form }) => form.rank)));
  // What is asked about a wall, or about where a space stands, is shown with the errors: it changes the area or the drawing.
  const hasButton = (one: Notice) => !asText && one.form.mends.length > 0 && (one.form.rank === 1 || one.word === 'touches-nothing');
  const list = (key: Words, isError: boolean, isShown = (one: Notice) => one !== lead) => {
    // The opening says what these warn of.
    const some = notices.filter((one) => one !== lead && isShown(one) && one.is_error === isError && (now.report === null || !['no-turn', 'outline-does-not-close'].includes(one.word)));
    return some.length > 0 && h('div', {}, h('h3', {}, say(key)), h('ul', {}, ...some.map((one) => h('li', {}, noticed(one, false)))));
  };
  const toFix = () => {
    const rest = notices.filter((one) => one.is_error && one !== lead);
    if (!lead) return list('errors', true);
    const first = noticed(lead, false);
    // Where a person first has to say what it is, none of the answers is the usual one.
    if (!lead.form.mends.some((one) => one.group.length)) first.querySelector('button.quiet')?.classList.replace('quiet', 'first');
    return h('div', {},
      h('h3', {}, say('errors')),
      h('ul', {}, h('li', {}, first)),
      rest.length > 0 && h('h3', {}, say('afterThat')),
      rest.length > 0 && h('ul', {}, ...rest.map((one) => h('li', {}, noticed(one, false, true)))));
  };
  const lists = [toFix(), list('warnings', false, (one) => now.report === null || hasButton(one))];
  refill(parts.worth, [notices, asText, now.report === null, isMetric()], () => [now.report !== null && list('warnings', false, (one) => !hasButton(one))].filter((one): one is HTMLDivElement => !!one));
  refill(parts.notices, [notices, asText, now.report === null, isMetric()], () => lists.filter((one): one is HTMLDivElement => !!one));
  if (!isPaperChosen) a4 = now.paper === 'a4';
  const paper = parts.pages.querySelector('select');
  if (paper) paper.value = a4 ? 'a4' : 'letter';
  const canDraw = now.rows.walks.some((walk) => walk.rows.length > 0);
  const isDraft = now.report === null;
  for (const button of parts.pages.querySelectorAll<HTMLButtonElement>('[data-needs]')) {
    button.disabled = !canDraw;
    const { says, draft } = button.dataset as { says: Words; draft?: Words };
    button.textContent = say(isDraft && draft ? draft : says);
  }
  const hint = parts.pages.querySelector<HTMLElement>('.draft');
  if (hint) hint.hidden = !isDraft || !canDraw;
}

/// What is shown of the notices. A row without a length, or a walk without a row, is not an error yet; nor is a gap in
/// a walk that is still being typed, or a figure.
function shownNow(now: Look): Notice[] {
  const empty = now.rows.walks.filter((walk) => walk.rows.length === 0).map((walk) => walk.line);
  const isTyping = (row: Row, key: string) => !row.is_read && isAwaited(now, key);
  const typing = now.rows.walks.flatMap((walk, w) => walk.rows.filter((row, r) => isTyping(row, `${w} ${r}`))).map((row) => row.line);
  const isEarly = (one: Notice) =>
    isWalking && !asText && one.form.is_early && !finished.has(now.rows.walks[one.form.walk ?? one.form.at?.[0] ?? 0]?.name);
  const here = document.activeElement?.getAttribute('name');
  const isComing = (one: Notice) =>
    one.word === 'too-few-sides' || typing.includes(one.line) || empty.includes(one.line) || (one.form.field !== null && one.form.field === here && soon?.field === here);
  return now.notices.filter((one) => !isComing(one) && !isEarly(one));
}

/// The name under which the answer to a question is kept: for what lies inside, that of the walk.
const answerOf = (one: Question, now: Look) => (one.about === 'inside' ? '' : `${one.about}: `) + now.rows.walks[one.walk].name;

/// The first question that is open.
const asking = (now: Look) => (isWalking ? now.questions.find((one) => !answered.has(answerOf(one, now))) : undefined);

/// Asks what may lie inside a walk, and above it, before its area is taken for the answer.
function paintQuestion(now: Look): void {
  const one = asking(now);
  if (!one) {
    parts.question.replaceChildren();
    return;
  }
  const of = answerOf(one, now);
  if (parts.question.dataset.of === of && parts.question.firstChild) return;
  parts.question.dataset.of = of;
  const no = () => {
    answered.add(of);
    keep();
    repaint();
    const next = parts.question.querySelector('button') ?? parts.question.parentElement;
    next?.focus();
  };
  const yes = () => (one.about === 'inside' ? addSpace(now.rows.walks[one.walk].level, true) : addSpace('', false));
  parts.question.replaceChildren(
    h('p', {}, h('strong', {}, one.text), ' ', one.why),
    h('div', { class: 'doing' },
      h('button', { type: 'button', onclick: yes }, one.yes),
      h('button', { type: 'button', onclick: no }, one.no)));
}

/// A notice: short beside its row, and brief as long as another is to be resolved first.
function noticed(notice: Notice, short: boolean, brief = false): HTMLElement {
  const { form } = notice;
  const to = () => {
    // Of a whole walk, the first wall to measure again.
    const again = form.again.length > 0 ? keyOf(form.again[0].line) : null;
    const first = form.walk === null ? null : box(again ?? `${form.walk} 0`);
    const there = form.field ? headOf(form.field) : form.at ? box(form.at.join(' ')) : first;
    if (there && !asText) {
      there.focus();
      return;
    }
    showText(true);
    editor?.show(notice.line);
  };
  const place = asText ? say('line', { n: notice.line }) : form.field ? say(form.field as Words, { unit: unitOf(form.field) }) : form.place;
  const [message, ...helps] = asText ? [notice.message, ...notice.helps].map((text) => quoted(text)) : form.parts.map(linked);
  const mends = asText ? notice.mends.map(([from, to, text]) => ({ from, to, text, label: say('use', { words: text.trim() }), group: [], at: null })) : form.mends;
  const looks = short || asText ? [] : form.again.filter((one) => one.label);
  return h(
    'span',
    { class: notice.is_error ? 'notice error' : 'notice' },
    !short && h('button', { type: 'button', class: 'link', onclick: to }, place),
    ' ',
    ...message,
    ...(brief ? [] : looks).map((one) => h('span', { class: 'look' }, toRow(one.place, keyOf(one.line)), ' ', ...again(one))),
    ...(brief ? [] : helps).map((help) => h('span', { class: 'help' }, ...help)),
    ...choices(brief ? [] : mends, asText ? null : form.field),
  );
}

/// What may be wrong with a wall, and the button that undoes it.
function again(one: Again): Node[] {
  return [...linked(one.parts), ...(one.mend ? [mending(one.mend, null)] : [])];
}

const mending = ({ from, to, text, label, at }: Mend, field: keyof Heads | null) =>
  h('button', { type: 'button', class: 'quiet', onclick: () => mend(from, to, text, field ?? at) }, label);

/// The buttons of what may be changed; several of one kind are shown by a button of their own.
function choices(mends: Mend[], field: keyof Heads | null, depth = 0): HTMLElement[] {
  const groups = [...new Set(mends.map((one) => one.group[depth]))];
  return groups.flatMap((group) => {
    const some = mends.filter((one) => one.group[depth] === group);
    if (group === undefined) return some.map((one) => mending(one, field));
    const places = h('span', { class: 'places', role: 'group', 'aria-label': group, hidden: true }, ...choices(some, field, depth + 1));
    const open = h('button', { type: 'button', class: 'quiet', 'aria-expanded': 'false' }, group);
    open.onclick = () => {
      places.hidden = !places.hidden;
      open.setAttribute('aria-expanded', String(!places.hidden));
    };
    return [open, places];
  });
}

/// The box of a wall that takes the focus when the wall is gone to.
function box(key: string): HTMLElement | null {
  const feet = field(key, 'feet') as HTMLInputElement | null;
  return feet && !feet.disabled ? feet : (field(key, 'how') ?? field(key, 'row'));
}

/// A link to a wall.
function toRow(text: string, key: string | null): HTMLElement {
  const go = () => {
    if (key === null) return;
    if (asText) showText(false);
    inFocus(key);
    box(key)?.focus({ preventScroll: true });
    field(key, 'row')?.scrollIntoView({ block: 'center' });
  };
  return h('button', { type: 'button', class: 'link', onclick: go }, text);
}

/// A text with links to the walls that it names.
const linked = (text: Part[]): Node[] =>
  text.flatMap((part) => (part.row ? [toRow(part.text, part.row.join(' '))] : quoted(part.text)));

/// What stands between grave accents is text of the sides file.
const quoted = (text: string): Node[] => text.split('`').map((part, i) => (i % 2 === 1 ? h('code', {}, part) : document.createTextNode(part)));

/// Where the focus goes after something was mended: a field of the figures, or a row.
type Mended = keyof Heads | [number, number] | null;

/// Replaces a part of the text, and gives the focus to what was mended. The places belong to the text on the screen: where the button took the focus from a
/// field that was then sent, the same replacement is looked up in the new text.
async function mend(from: number, to: number, words: string, there: Mended = null): Promise<void> {
  const pressed = document.activeElement;
  let place = [from, to];
  if (text !== painted || atWork > 0) {
    await latest();
    const ofRows = ({ form }: Notice) => [...form.mends, ...form.again.flatMap((one) => one.mend ?? [])];
    const all = (look?.notices ?? []).flatMap((one) => [...one.mends, ...ofRows(one).map((mend) => [mend.from, mend.to, mend.text] as const)]);
    const same = all.filter(([start, end, text]) => text === words && end - start === to - from);
    const nearest = same.sort(([a], [b]) => Math.abs(a - from) - Math.abs(b - from))[0];
    if (!nearest) return;
    place = [nearest[0], nearest[1]];
  }
  become(text.slice(0, place[0]) + words + text.slice(place[1]), 'rows');
  await refresh();
  const mended = typeof there === 'string' ? headOf(there) : there && box(there.join(' '));
  // Unless somebody went on meanwhile.
  if (asText || ![pressed, document.body, null].includes(document.activeElement)) return;
  (mended ?? main.querySelector<HTMLElement>('.answer'))?.focus();
}

// ---- pages and files

function paintPages(): void {
  const show = h('div', { class: 'leaves' });
  const button = (key: Words, onclick: () => unknown, draft: Words | null = null) =>
    h('button', { type: 'button', class: key === 'pdf' ? 'first' : '', 'data-needs': key === 'save' ? null : 'house', 'data-says': key, 'data-draft': draft, disabled: key !== 'save', onclick }, say(key));
  const paper = select(['letter', 'a4'], a4 ? 'a4' : 'letter', say('paper'), (value) => {
    a4 = value === 'a4';
    isPaperChosen = true;
    show.replaceChildren();
  }, (value) => say(value as Words));
  const canShare = typeof navigator.canShare === 'function' && navigator.canShare({ files: [new File([''], 'a.pdf', { type: 'application/pdf' })] });
  parts.pages.replaceChildren(
    h('h2', {}, say('pages')),
    h('div', { class: 'doing' },
      button('pdf', () => doing(async () => {
        const made = await pdf();
        saved(made.pdf, 'application/pdf', made.is_draft ? '-draft.pdf' : `${ofRecord()}.pdf`);
        tellMissing(made);
      }), 'draft'),
      button('showPages', () => doing(() => leaves(show)), 'showDraft'),
      button('save', () => doing(async () => saved(text, 'text/plain', '.sides'))),
      canShare && button('share', () => doing(sharing)),
      button('print', () => doing(printing)),
      h('label', {}, h('span', {}, say('paper')), paper),
    ),
    h('p', { class: 'aside draft', hidden: true }, say('draftHint')),
    h('p', { class: 'aside' }, say('caution')),
    show,
  );
}

/// Does something with the newest text.
async function doing(work: () => Promise<unknown>): Promise<void> {
  tell(say('working'));
  try {
    await latest();
    await work();
    if (live.textContent === say('working')) tell('');
  } catch (error) {
    failed(error);
  }
}

/// The pictures that the text names and that are here.
function named(): Map<string, Uint8Array> {
  const rows = look?.rows.walks.flatMap((walk) => walk.rows) ?? [];
  const names = new Set(rows.map((row) => row.picture));
  return new Map([...pictures.all].filter(([name]) => names.has(name)));
}

function tellMissing(made: Made): void {
  if (made.missing.length > 0) tell(say('missing', { names: made.missing.join(', ') }));
}

/// A photo for a row: kept on this device, and named in the text.
async function pictured(file: File, key: string, caption: string): Promise<void> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const name = pictures.nameOf(file.name, bytes);
  pictures.put(name, bytes);
  const row = at(key);
  if (row) await edit({ edit: 'picture', line: row.line, caption, file: name });
}

function pdf(): Promise<Made & { pdf: Uint8Array }> {
  handOn();
  return library.pdf(name, text, a4, named());
}

function handOn(): void {
  if (isHandedOn) return;
  isHandedOn = true;
  repaint();
}

/// The name of a saved file without its ending: that of the file that was opened, or for a house begun here its address.
function stem(of = name): string {
  const address = of === BEGUN && look ? look.rows.heads.property : '';
  const plain = address.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase().replace(/[^a-z0-9]+/g, '-');
  return plain.slice(0, MOST_OF_NAME).replace(/^-|-$/g, '') || of.replace(/\.[^.]*$/, '').replace(ADDED, '') || 'house';
}

/// Tells pages about different records apart by their names.
function ofRecord(): string {
  const figure = /^[\d,]+(\.\d+)?/.exec(look?.rows.heads.record ?? '');
  return figure ? `-record-${figure[0].replaceAll(',', '')}` : '';
}

function saved(bytes: Uint8Array | string, type: string, ending: string, of = name): void {
  const file = stem(of) + ending;
  const place = URL.createObjectURL(new Blob([bytes as BlobPart], { type }));
  h('a', { href: place, download: file }).click();
  setTimeout(() => URL.revokeObjectURL(place), 60_000);
  tell(say('made', { name: file }), true);
}

async function sharing(): Promise<void> {
  const file = new File([(await pdf()).pdf as BlobPart], `${stem()}${ofRecord()}.pdf`, { type: 'application/pdf' });
  await navigator.share({ files: [file] });
}

/// Every page as an image, so that nothing in it can run.
async function pagePictures(): Promise<HTMLImageElement[]> {
  handOn();
  const of = text;
  const made = await library.svg(name, of, a4, named());
  if (of !== text) {
    await latest();
    return pagePictures();
  }
  tellMissing(made);
  const pages = made.svg;
  const images = pages.map((page, i) => {
    const src = URL.createObjectURL(new Blob([page], { type: 'image/svg+xml' }));
    return h('img', { src, alt: say('pageOf', { n: i + 1, all: pages.length }) });
  });
  await Promise.all(images.map((image) => image.decode()));
  return images;
}

async function leaves(show: HTMLElement): Promise<void> {
  const images = await pagePictures();
  let at = 0;
  const count = h('span', { 'aria-live': 'polite' });
  // A touch makes a page large enough to read on a phone, and small again.
  const frame: HTMLElement = h('div', { class: 'leaf', onclick: () => frame.classList.toggle('large') });
  const turn = (by: number) => {
    at = Math.max(0, Math.min(images.length - 1, at + by));
    frame.replaceChildren(images[at]);
    count.textContent = say('pageOf', { n: at + 1, all: images.length });
    for (const [one, to] of [[previous, at], [next, at + 2]] as const) {
      one.disabled = to < 1 || to > images.length;
      one.setAttribute('aria-label', say('pageOf', { n: to, all: images.length }));
    }
  };
  const previous = h('button', { type: 'button', class: 'quiet', onclick: () => turn(-1) }, '←');
  const next = h('button', { type: 'button', class: 'quiet', onclick: () => turn(1) }, '→');
  const hide = h('button', { type: 'button', class: 'quiet', onclick: () => show.replaceChildren() }, say('close'));
  show.replaceChildren(h('div', { class: 'turning' }, previous, count, next, hide), frame);
  turn(0);
  show.scrollIntoView({ block: 'start' });
}

async function printing(): Promise<void> {
  // Some browsers print only after this is done, so the size of the paper stays with the pages.
  const size = h('style', {}, `@page { size: ${a4 ? '210mm 297mm' : '8.5in 11in'}; margin: 0 }`);
  const paper = h('div', { id: 'paper', class: a4 ? 'a4' : 'letter' }, size, ...(await pagePictures()));
  document.getElementById('paper')?.remove();
  document.body.append(paper);
  window.print();
}

async function take(file: File): Promise<void> {
  main.querySelector('.checked')?.remove();
  await doing(async () => {
    const opened = await library.open(file.name, new Uint8Array(await file.arrayBuffer()));
    await instead(opened.text, file.name.replace(/\.[^.]*$/, '') + '.sides');
    if (text !== opened.text) return;
    tell(opened.genuine === undefined ? '' : say(opened.genuine ? 'genuine' : 'notGenuine'), opened.genuine);
  });
}

async function checked(file: File, result: HTMLElement): Promise<void> {
  result.replaceChildren();
  await doing(async () => {
    const answer = await library.verify(new Uint8Array(await file.arrayBuffer()));
    const { sides, is_genuine: isGenuine, why } = answer;
    const told = isGenuine ? 'genuine' : why === 'sides-file' ? 'isSides' : sides === null ? 'notReadable' : 'notGenuine';
    const hints = isGenuine ? [say('genuineHint', { print: answer.fingerprint ?? '' })] : told === 'notGenuine' ? [say('forgedHint')] : [];
    const open = async () => {
      if (sides === null) return;
      await instead(sides, file.name.replace(/\.[^.]*$/, '') + '.sides');
      if (text === sides && told === 'notGenuine') tell(say('notGenuine'));
    };
    result.replaceChildren(h('div', { class: isGenuine ? 'checked genuine' : told === 'isSides' ? 'checked plain' : 'checked' },
      h('p', { class: 'verdict' }, `${file.name}: ${say(told)}`),
      answer.message ? h('p', {}, answer.message) : '',
      ...hints.map((hint) => h('p', {}, hint)),
      sides !== null && h('button', { type: 'button', class: 'quiet', onclick: open }, say('openSides'))));
    result.scrollIntoView({ block: 'nearest' });
  });
}

function pick(then: (file: File) => void, kinds = ''): void {
  picker.value = '';
  picker.accept = kinds;
  picker.onchange = () => {
    const file = picker.files?.[0];
    if (file) then(file);
  };
  picker.click();
}

// ---- the two views, and the start

function showText(yes: boolean): void {
  asText = yes;
  repaint();
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

function work(from: string, isTyped: boolean): void {
  text = from;
  isWalking = isTyped;
  finished.clear();
  tell('');
  undone = [];
  typedIn = null;
  look = null;
  report = '';
  caution = '';
  isHandedOn = false;
  parts.opening.replaceChildren();
  focus = null;
  walkAt = 0;
  isAdding = false;
  editor = null;
  parts.text.replaceChildren();
  parts.walks.replaceChildren();
  parts.walks.dataset.shape = '';
  const view = (key: Words, isText: boolean) =>
    h('button', { type: 'button', 'data-view': isText ? 'text' : 'rows', onclick: () => showText(isText) }, say(key));
  parts.views.replaceChildren(view('asRows', false), view('asText', true));
  keep();
  parts.rows.replaceChildren(parts.heads, jump(), parts.walks);
  const seen = h('div', { class: 'seen' }, parts.drawing, parts.gap, parts.unchecked);
  const answer = h('section', { class: 'answer', tabindex: '-1', 'aria-label': say('answer') }, h('h2', {}, say('answer')), parts.before, parts.question, parts.caution, parts.opening, parts.notices, parts.compass);
  paintPages();
  const beside = h('div', { class: 'beside-rows' }, seen, answer, parts.pages);
  staying?.disconnect();
  staying = new ResizeObserver(() => stay(beside));
  staying.observe(beside);
  staying.observe(document.documentElement);
  main.replaceChildren(
    h('h1', { class: 'hidden' }, say('title')),
    h('div', { class: 'work' },
      h('div', { class: 'both' }, h('div', { class: 'typing' }, parts.views, parts.rows, parts.text), beside),
      parts.report),
    foot(),
  );
  parts.another.hidden = false;
  showText(false);
  void refresh();
  scrollTo(0, 0);
}

/// Past the walls, which may be many.
function jump(): HTMLElement {
  const to = (key: Words, place: () => HTMLElement | null) => {
    const go = () => {
      const there = place();
      there?.focus({ preventScroll: true });
      there?.scrollIntoView({ block: 'start' });
    };
    return h('button', { type: 'button', class: 'link', onclick: go }, say(key));
  };
  return h('nav', { class: 'jump' },
    to('walk', () => parts.walks.querySelector('.walk select')),
    to('answer', () => main.querySelector('.answer')),
    to('pages', () => parts.pages.querySelector('button')));
}

/// What stays on the screen beside the rows: all of it, or the lower end of what is taller than the screen.
function stay(beside: HTMLElement): void {
  beside.style.top = `${Math.min(0, innerHeight - beside.offsetHeight)}px`;
}

function foot(): HTMLElement {
  const isThere = stored() !== null;
  return h('footer', {}, isThere && h('span', {}, say('kept')), isThere && h('button', { type: 'button', class: 'quiet', onclick: forget }, say('forget')), aboutButton());
}

function aboutButton(): HTMLElement {
  const close = () => dialog.close();
  const list = h('pre', { tabindex: '0' });
  const dialog = h('dialog', { 'aria-label': say('aboutPage') },
    h('h2', {}, say('aboutPage')),
    h('p', {}, say('caution')),
    h('p', {}, say('aboutText')),
    list,
    h('button', { type: 'button', onclick: close }, say('close')));
  const show = async () => {
    dialog.showModal();
    list.textContent = new TextDecoder().decode(await unpacked(fromText(LICENSES)));
  };
  const open = h('button', { type: 'button', class: 'quiet', onclick: show }, say('aboutPage'));
  return h('span', {}, open, dialog);
}

function start(): void {
  const choice = (key: Words, hint: Words, onclick: () => void) =>
    h('button', { type: 'button', class: 'choice', onclick }, h('strong', {}, say(key)), h('span', {}, say(hint)));
  const old = kept();
  const result = h('div', { role: 'status' });
  parts.another.hidden = true;
  main.replaceChildren(
    h('section', { class: 'start' },
      h('h1', {}, say('title')),
      old !== null && old.isOwn === true && h('button', { type: 'button', class: 'choice', onclick: () => goOn(old) }, h('strong', {}, say('goOn')), h('span', {}, titled(old))),
      choice('measure', 'measureHint', () => void instead(NEW, BEGUN)),
      choice('open', 'openHint', () => pick((file) => void take(file))),
      choice('example', 'exampleHint', () => void instead(EXAMPLE, 'example.sides')),
      h('div', { class: 'less' },
        h('button', { type: 'button', class: 'quiet', onclick: () => pick((file) => void checked(file, result)) }, say('check')),
        old && !old.isOwn && h('button', { type: 'button', class: 'quiet', onclick: () => goOn(old) }, say('goOn'))),
      result),
    foot(),
  );
}

function listen(): void {
  addEventListener('mousedown', (event) => (isPressed = (event.target as Element).closest('button, svg') !== null), true);
  for (const end of ['pointerup', 'mouseup', 'pointercancel', 'dragend', 'keydown']) addEventListener(end, release, true);
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
    else if (pasted) void paste(pasted);
  });
  addEventListener('keydown', (event) => {
    const isUndo = (event.ctrlKey || event.metaKey) && !event.shiftKey && event.key.toLowerCase() === 'z';
    if (!isUndo || asText || !parts.rows.isConnected || document.querySelector('dialog[open]')) return;
    event.preventDefault();
    (document.activeElement as HTMLElement | null)?.blur();
    void undo();
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
  parts.another.addEventListener('click', () => void instead(NEW, BEGUN));
  const home = h('button', { type: 'button', class: 'home', 'aria-label': `${NAME}: ${say('title')}`, onclick: start }, NAME);
  const header = h('header', {}, home, h('span', { class: 'aside' }, say('promise')), parts.another);
  document.title = say('title');
  const packed = document.getElementById('module')?.textContent ?? '';
  document.body.replaceChildren(header, main, live, picker);
  live.addEventListener('click', () => tell(''));
  if (typeof WebAssembly !== 'object' || typeof DecompressionStream !== 'function' || typeof Worker !== 'function') {
    main.append(h('p', { class: 'start' }, say('noModule')));
    return;
  }
  library = new Library(fromText(packed));
  void pictures.takeUp();
  listen();
  start();
  void keepThePage();
  // For tests that check the page's answers byte for byte.
  Object.assign(window, { fairfoot: library });
}

begin();
