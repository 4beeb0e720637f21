// As much of a document as drawing a part of the page needs, for tests in Node.

/** As much of a document's node as drawing a word and a button needs. */
export class Node {
  readonly childNodes: Node[] = [];
  readonly attributes: unknown[] = [];
  readonly names = new Map<string, string>();
  readonly listeners = new Map<string, (this: Node, event: object) => void>();
  readonly onclick = null;
  parentNode: Node | null = null;
  readonly nodeType: number;
  readonly localName: string;
  data: string;

  constructor(nodeType: number, localName: string, data = '') {
    this.nodeType = nodeType;
    this.localName = localName;
    this.data = data;
  }

  get firstChild(): Node | null {
    return this.childNodes[0] ?? null;
  }

  get nextSibling(): Node | null {
    const beside = this.parentNode?.childNodes ?? [];
    return beside[beside.indexOf(this) + 1] ?? null;
  }

  get textContent(): string {
    return this.data + this.childNodes.map((child) => child.textContent).join('');
  }

  setAttribute(name: string, value: string): void {
    this.names.set(name, value);
  }

  removeAttribute(name: string): void {
    this.names.delete(name);
  }

  addEventListener(kind: string, listener: (this: Node, event: object) => void): void {
    this.listeners.set(kind, listener);
  }

  find(testId: string): Node | null {
    if (this.names.get('data-testid') === testId) return this;
    for (const child of this.childNodes) {
      const found = child.find(testId);
      if (found) return found;
    }
    return null;
  }

  insertBefore(child: Node, before: Node | null): Node {
    child.remove();
    child.parentNode = this;
    this.childNodes.splice(before ? this.childNodes.indexOf(before) : this.childNodes.length, 0, child);
    return child;
  }

  removeChild(child: Node): void {
    this.childNodes.splice(this.childNodes.indexOf(child), 1);
    child.parentNode = null;
  }

  remove(): void {
    this.parentNode?.removeChild(this);
  }
}

/** Makes such nodes; stands in for `document`. */
export const smallDocument = {
  createElementNS: (_space: string, name: string) => new Node(1, name),
  createTextNode: (data: string) => new Node(3, '#text', data),
};
