// Draws the sides to scale: positions come from the library and become lines here.
import { s } from './page';
import type { Place, Row, Walk } from './types';
import { say } from './words';

export interface Drawn {
  walks: Walk[];
  /// The line of the focused row.
  line: number | null;
  /// The corner chosen for a new space: walk and corner, from 1.
  corner: { walk: number; corner: number } | null;
  onRow(line: number): void;
  /// Called with the chosen corner while one is being picked.
  onCorner: ((walk: number, corner: number) => void) | null;
}

export function drawing(drawn: Drawn): SVGElement {
  const places = drawn.walks.flatMap((walk) => [walk.start, ...walk.rows.map((row) => row.to)]);
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
  for (const walk of drawn.walks) svg.append(walked(walk, drawn, middle, type));
  svg.append(
    s('text', { class: 'street', x: middle[0], y: origin[1] + height + type * 0.4 }, say('street')),
  );
  if (drawn.onCorner) for (const [i, walk] of drawn.walks.entries()) svg.append(corners(walk, i, drawn, type));
  return svg;
}

function walked(walk: Walk, drawn: Drawn, middle: Place, type: number): SVGElement {
  const group = s('g', { class: walk.is_closed ? 'walk closed' : 'walk' });
  const from = `M${walk.start.join(' ')}`;
  if (walk.is_closed) {
    group.append(s('path', { class: 'ground', d: from + walk.rows.map(stroke).join('') }));
  }
  for (const [i, row] of walk.rows.entries()) {
    const d = `M${row.from.join(' ')}${stroke(row)}`;
    const names = row.line === drawn.line ? 'wall focus' : 'wall';
    group.append(
      s('path', { class: names, d }),
      s('path', { class: 'touch', d, onclick: () => drawn.onRow(row.line) }),
      hasLabel(walk, row, drawn.line, type) ? label(walk, row, i, middle, type) : '',
    );
  }
  const last = walk.rows.at(-1);
  if (last && !walk.is_closed) {
    group.append(s('path', { class: 'gap', d: `M${last.to.join(' ')}L${walk.start.join(' ')}` }));
  }
  group.append(s('circle', { class: 'begin', cx: walk.start[0], cy: walk.start[1], r: type * 0.28 }));
  return group;
}

function stroke(row: Row): string {
  const end = row.to.join(' ');
  if (!row.curve) return `L${end}`;
  const [radius, right] = row.curve;
  return `A${radius} ${radius} 0 0 ${right ? 0 : 1} ${end}`;
}

/// Short walls, and walls of spaces inside another, are labeled only while their row has the focus.
function hasLabel(walk: Walk, row: Row, line: number | null, type: number): boolean {
  const isHere = walk.rows.some((other) => other.line === line);
  const far = Math.hypot(row.to[0] - row.from[0], row.to[1] - row.from[1]);
  return row.line === line || ((isHere || walk.within === null) && far > 3 * type);
}

/// The number and length of a wall, on the side away from the middle.
function label(walk: Walk, row: Row, index: number, middle: Place, type: number): SVGElement {
  const [x, y] = [(row.from[0] + row.to[0]) / 2, (row.from[1] + row.to[1]) / 2];
  const upright = Math.abs(row.to[1] - row.from[1]) > Math.abs(row.to[0] - row.from[0]);
  const text = row.length || `${index + 1}`;
  const inner = walk.within !== null ? -1 : 1;
  const away = upright ? Math.sign(x - middle[0]) || -1 : Math.sign(y - middle[1]) || -1;
  const shift = away * inner * type;
  const at = upright ? { x: x + shift * 0.5, y } : { x, y: y + shift * 0.9 };
  const anchor = upright ? (shift > 0 ? 'start' : 'end') : 'middle';
  return s('text', { ...at, class: 'length', 'text-anchor': anchor, 'aria-hidden': 'true' }, text);
}

function corners(walk: Walk, index: number, drawn: Drawn, type: number): SVGElement {
  const group = s('g', { class: 'corners' });
  for (const [i, row] of walk.rows.entries()) {
    const isChosen = drawn.corner?.walk === index && drawn.corner.corner === i + 1;
    group.append(
      s('circle', {
        class: isChosen ? 'corner chosen' : 'corner',
        cx: row.from[0],
        cy: row.from[1],
        r: type * 0.6,
        onclick: () => drawn.onCorner?.(index, i + 1),
      }),
    );
  }
  return group;
}
