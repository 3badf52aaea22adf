// Draws the sides to scale: positions come from the library and become lines here.
import { s } from './page';
import type { Place, Row, Walk } from './types';
import { say } from './words';

export interface Drawn {
  walks: { walk: Walk; index: number }[];
  /// The level that is drawn; walks of other levels are thin lines below it.
  level: string;
  isOne: boolean;
  /// The lines of the walls to measure again.
  again: number[];
  /// The line of the focused row.
  line: number | null;
  /// The corner where a new space begins: walk and corner, from 1.
  corner: { walk: number; corner: number } | null;
  onRow(line: number): void;
  /// Set while a corner can be chosen.
  onCorner: ((walk: number, corner: number) => void) | null;
}

/// How many corners a walk has; an angled bay has two of its own.
export const cornersOf = (walk: Walk) => walk.rows.reduce((sum, row) => sum + row.sides, 0);

const corners = (walk: Walk) => [walk.start, ...walk.rows.flatMap((row) => row.pieces.map((piece) => piece.to))];

export function drawing(drawn: Drawn): SVGElement {
  const places = drawn.walks.flatMap(({ walk }) => corners(walk));
  const xs = places.map((place) => place[0]);
  const ys = places.map((place) => place[1]);
  const [left, right] = [Math.min(0, ...xs), Math.max(0, ...xs)];
  const [top, bottom] = [Math.min(0, ...ys), Math.max(0, ...ys)];
  const size = Math.max(right - left, bottom - top, 12);
  const type = size / 24;
  const margin = type * 3.2;
  const [width, height] = [Math.max(right - left, 8) + 2 * type * 5.5, Math.max(bottom - top, 8) + 2 * margin];
  const middle: Place = [(left + right) / 2, (top + bottom) / 2];
  const origin: Place = [middle[0] - width / 2, middle[1] - height / 2];
  const svg = s('svg', {
    viewBox: `${origin[0]} ${origin[1]} ${width} ${height + type}`,
    role: 'group',
    'aria-label': say('drawing'),
    style: `--type:${type}px;--pen:${size / 260}px`,
  });
  const here = drawn.walks.filter(({ walk }) => walk.level === drawn.level);
  for (const { walk } of drawn.walks) {
    if (walk.level !== drawn.level && walk.is_closed) svg.append(s('path', { class: 'below', d: course(walk) }));
  }
  for (const { walk } of here) svg.append(walked(walk, drawn, type));
  const closed = here.map(({ walk }) => walk).filter((walk) => walk.is_closed);
  const names = closed.length > 1 ? closed.flatMap((walk) => named(walk, closed, type)) : [];
  const numbers = drawn.onCorner ? cornered(here, drawn, type * 0.8) : { marks: [], boxes: [] };
  const boxes = [...names.map(({ box }) => box), ...numbers.boxes];
  svg.append(...names.map(({ name }) => name), ...labels(here.map(({ walk }) => walk), drawn.line, boxes, type));
  svg.append(
    s('text', { class: 'street', x: middle[0], y: origin[1] + height + type * 0.4 }, say('street')),
    drawn.isOne ? '' : s('text', { class: 'street', x: middle[0], y: origin[1] + type * 0.6 }, drawn.level),
  );
  svg.append(...numbers.marks);
  return svg;
}

const course = (walk: Walk) => `M${walk.start.join(' ')}${walk.rows.map(stroke).join('')}`;

/// The name of a space where it has the most room, apart from the spaces inside it.
function named(walk: Walk, all: Walk[], type: number): { name: SVGElement; box: Box }[] {
  const mine = corners(walk);
  const inner = all.filter((other) => other !== walk && other.within === walk.name).map(corners);
  const [xs, ys] = [mine.map((place) => place[0]), mine.map((place) => place[1])];
  const [x0, y0, wide, high] = [Math.min(...xs), Math.min(...ys), Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
  let best: { at: Place; room: number } = { at: [x0 + wide / 2, y0 + high / 2], room: -1 };
  const steps = 14;
  for (let i = 1; i < steps; i++) {
    for (let j = 1; j < steps; j++) {
      const at: Place = [x0 + (wide * i) / steps, y0 + (high * j) / steps];
      if (!holds(mine, at) || inner.some((other) => holds(other, at))) continue;
      const room = Math.min(...[mine, ...inner].map((other) => distance(other, at)));
      if (room > best.room) best = { at, room };
    }
  }
  // A name that is wider than its space, or stands between lengths, is left out.
  const letter = Math.min(type * 0.9, (wide * 0.92) / (walk.name.length * 0.6));
  if (letter < type * 0.6 || high < 2.4 * type) return [];
  const [[x, y], half] = [best.at, walk.name.length * letter * 0.32];
  const name = s('text', { class: 'name', x, y, 'aria-hidden': 'true', style: `font-size:${letter}px` }, walk.name);
  return [{ name, box: [x - half, y - letter * 0.6, x + half, y + letter * 0.6] }];
}

function holds(outline: Place[], [x, y]: Place): boolean {
  let isInside = false;
  outline.forEach(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length];
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) isInside = !isInside;
  });
  return isInside;
}

/// How far a place is from the nearest wall; sideways counts a third, since a name is wide.
function distance(outline: Place[], [x, y]: Place): number {
  const far = outline.map(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length];
    const [dx, dy] = [bx - ax, by - ay];
    const t = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
    return Math.hypot((x - ax - t * dx) / 3, y - ay - t * dy);
  });
  return Math.min(...far);
}

function walked(walk: Walk, drawn: Drawn, type: number): SVGElement {
  const group = s('g', { class: walk.is_closed ? 'walk closed' : 'walk' });
  if (walk.is_closed) {
    group.append(s('path', { class: 'ground', d: course(walk) }));
  }
  for (const row of walk.rows) {
    const d = `M${row.from.join(' ')}${stroke(row)}`;
    const names = row.line === drawn.line ? 'wall focus' : 'wall';
    group.append(
      s('path', { class: names, d }),
      s('path', { class: 'touch', d, onclick: () => drawn.onRow(row.line) }),
      drawn.again.includes(row.line) ? square(row, type) : '',
    );
  }
  const last = walk.rows.at(-1);
  if (last && !walk.is_closed) {
    group.append(s('path', { class: 'gap', d: `M${last.to.join(' ')}L${walk.start.join(' ')}` }));
  }
  group.append(s('circle', { class: 'begin', cx: walk.start[0], cy: walk.start[1], r: type * 0.28 }));
  return group;
}

/// The mark of a wall to measure again, as on a draft.
function square(row: Row, type: number): SVGElement {
  const [x, y] = [(row.from[0] + row.to[0]) / 2, (row.from[1] + row.to[1]) / 2];
  const side = type * 0.45;
  return s('rect', { class: 'again', x: x - side / 2, y: y - side / 2, width: side, height: side });
}

function stroke(row: Row): string {
  const piece = ({ to, curve }: Row['pieces'][number]) =>
    curve ? `A${curve[0]} ${curve[0]} 0 0 ${curve[1] ? 0 : 1} ${to.join(' ')}` : `L${to.join(' ')}`;
  return row.pieces.map(piece).join('');
}

/// Walls of narrow spaces and of spaces inside another are labeled only while somebody works at them.
function hasLabel(walk: Walk, row: Row, line: number | null, type: number): boolean {
  const isHere = walk.rows.some((other) => other.line === line);
  const isLarge = [0, 1].every((axis) => {
    const at = corners(walk).map((place) => place[axis]);
    return !walk.is_closed || Math.max(...at) - Math.min(...at) > 3 * type;
  });
  return row.line === line || isHere || (walk.within === null && isLarge);
}

/// The length of a wall, in one spelling however it was typed.
function lengthOf(row: Row): string {
  if (!row.parts || !row.is_read || !/['"]/.test(row.length)) return row.length || row.found || String(row.number);
  const [feet, inches, fraction] = row.parts;
  const inch = [inches === '0' && (feet !== '0' || fraction) ? '' : inches, fraction].filter(Boolean).join(' ');
  return [feet !== '0' && `${feet}'`, inch && `${inch}"`].filter(Boolean).join(' ');
}

/// A rectangle: left, top, right, bottom.
type Box = [number, number, number, number];

/// A place for a label: where it stands, and the rectangle that it covers.
interface Spot {
  at: Place;
  anchor: 'start' | 'middle' | 'end';
  box: Box;
}

/// The lengths of the walls, clear of each other, of the names, and as far as possible of the walls: first that of the row in focus,
/// then those of long walls. One that finds no room is left out.
function labels(walks: Walk[], line: number | null, names: Box[], type: number): SVGElement[] {
  const all = walks.flatMap((walk) => walk.rows.filter((row) => hasLabel(walk, row, line, type)).map((row) => ({ walk, row })));
  const far = (row: Row) => (row.line === line ? Infinity : Math.hypot(row.to[0] - row.from[0], row.to[1] - row.from[1]));
  all.sort((a, b) => far(b.row) - far(a.row));
  const walls = walks.flatMap((walk) => walk.rows.map((row) => [row.from, row.to] as const));
  const taken = [...names];
  return all.flatMap(({ walk, row }) => {
    const text = lengthOf(row);
    const crossed = (spot: Spot) => walls.filter(([from, to]) => meets(spot.box, [Math.min(from[0], to[0]), Math.min(from[1], to[1]), Math.max(from[0], to[0]), Math.max(from[1], to[1])])).length;
    const free = spots(walk, row, text, type).filter((spot) => !taken.some((box) => meets(spot.box, box)));
    // A short wall has a length beside it only where no other wall is crossed.
    const isShort = Math.hypot(row.to[0] - row.from[0], row.to[1] - row.from[1]) <= 3 * type && row.line !== line;
    const best = free.map((spot) => ({ spot, walls: crossed(spot) })).filter((one) => !isShort || one.walls === 0).reduce<{ spot: Spot; walls: number } | null>((a, b) => (a && a.walls <= b.walls ? a : b), null);
    if (!best) return [];
    taken.push(best.spot.box);
    const { at, anchor } = best.spot;
    return [s('text', { x: at[0], y: at[1], class: 'length', 'text-anchor': anchor, 'aria-hidden': 'true' }, text)];
  });
}

const meets = (a: Box, b: Box) => a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];

/// Where the label of a wall may stand: outside of it or inside, at its middle or toward an end. The label of a space
/// inside another stands inside it first.
function spots(walk: Walk, row: Row, text: string, type: number): Spot[] {
  const [dx, dy] = [row.to[0] - row.from[0], row.to[1] - row.from[1]];
  const long = Math.hypot(dx, dy) || 1;
  const outside = (turn(walk) > 0 ? 1 : -1) * (walk.within !== null ? -1 : 1);
  const wide = 0.56 * type * text.length;
  const upright = Math.abs(dy) > Math.abs(dx);
  return [1, -1].flatMap((side) =>
    [0.5, 0.3, 0.7].map((t): Spot => {
      const out: Place = [(dy / long) * side * outside, (-dx / long) * side * outside];
      const at: Place = [row.from[0] + t * dx + out[0] * type * 0.5, row.from[1] + t * dy + out[1] * type * 0.9];
      const anchor = !upright ? 'middle' : out[0] > 0 ? 'start' : 'end';
      const left = at[0] - (anchor === 'middle' ? wide / 2 : anchor === 'end' ? wide : 0);
      return { at, anchor, box: [left, at[1] - type * 0.62, left + wide, at[1] + type * 0.62] };
    }));
}

/// Positive for a walk that goes clockwise on the screen.
const turn = (walk: Walk) => walk.rows.reduce((sum, { from, to }) => sum + from[0] * to[1] - to[0] * from[1], 0);

/// Where the number of a corner stands: on the corner, or where another one stands already, as near to it as there is room.
function clearOf([x, y]: Place, toward: Place, taken: Place[], radius: number): Place {
  const isFree = ([atX, atY]: Place) => taken.every(([otherX, otherY]) => Math.hypot(otherX - atX, otherY - atY) >= radius * 2.1);
  const inward = Math.atan2(toward[1] - y, toward[0] - x);
  for (let far = 0; far <= 9; far += 1.1) {
    // From the inside of the walk outward, to both hands.
    for (let turn = 0; turn <= 8; turn++) {
      for (const hand of [1, -1]) {
        const angle = inward + (hand * turn * Math.PI) / 8;
        const place: Place = [x + Math.cos(angle) * far * radius, y + Math.sin(angle) * far * radius];
        if (isFree(place)) return place;
      }
    }
  }
  return [x, y];
}

/// The corners of all walks, numbered on from walk to walk. A number that would lie over another
/// stands beside it, with a line to its place.
function cornered(here: Drawn['walks'], drawn: Drawn, radius: number): { marks: SVGElement[]; boxes: Box[] } {
  const isAt = (a: Place, b: Place) => Math.hypot(a[0] - b[0], a[1] - b[1]) < 0.01;
  const taken: Place[] = [];
  const lines = s('g', { class: 'corners' });
  const numbers = s('g', { class: 'corners' });
  let before = 0;
  for (const { walk, index } of here) {
    const middle = [0, 1].map((axis) => walk.rows.reduce((sum, { from }) => sum + from[axis], 0) / walk.rows.length) as Place;
    for (const [i, row] of walk.rows.entries()) {
      const [x, y] = clearOf(row.from, middle, taken, radius);
      taken.push([x, y]);
      const isChosen = drawn.corner?.walk === index && drawn.corner.corner === i + 1;
      if (!isAt([x, y], row.from)) lines.append(s('path', { class: 'leader', d: `M${row.from.join(' ')}L${x} ${y}` }));
      numbers.append(
        s('circle', { class: isChosen ? 'corner chosen' : 'corner', cx: x, cy: y, r: radius, onclick: () => drawn.onCorner?.(index, i + 1) }),
        s('text', { class: isChosen ? 'at chosen' : 'at', x, y, 'aria-hidden': 'true', style: `font-size:${radius * 1.06}px` }, String(before + row.number)),
      );
    }
    before += cornersOf(walk);
  }
  return { marks: [lines, numbers], boxes: taken.map(([x, y]): Box => [x - radius, y - radius, x + radius, y + radius]) };
}
