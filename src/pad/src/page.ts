// Creates elements, and nothing else.
type Child = Node | string | null | false;
type Props = Record<string, unknown>;

/// An element with attributes; `on…` adds a listener, and false or null values are left out.
export function h<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  props: Props = {},
  ...children: Child[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(props)) set(element, name, value);
  for (const child of children) if (child) element.append(child);
  return element;
}

/// The same for SVG.
export function s(tag: string, props: Props = {}, ...children: Child[]): SVGElement {
  const element = document.createElementNS('http://www.w3.org/2000/svg', tag);
  for (const [name, value] of Object.entries(props)) set(element, name, value);
  for (const child of children) if (child) element.append(child);
  return element;
}

function set(element: Element, name: string, value: unknown): void {
  if (name.startsWith('on')) element.addEventListener(name.slice(2), value as EventListener);
  else if (value === true) element.setAttribute(name, '');
  else if (value !== false && value !== null && value !== undefined) {
    element.setAttribute(name, String(value));
  }
}
