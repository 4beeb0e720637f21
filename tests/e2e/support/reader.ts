// What a reader of the screen has to go by: what is said by itself, as it is said, and the tree of names, roles and states.
// Roles: WAI-ARIA 1.2; an alert and a status are read whole when anything in them changes. Names: WCAG 2.2, 4.1.2; headings 1.3.1.

import type { Page } from 'playwright-core';
import { drawn } from './clock.ts';

/** Follows what is said by itself, from now on. */
export async function listenAsReader(page: Page): Promise<void> {
  await page.evaluate(() => {
    const scope = globalThis as { saidByItself?: string[] };
    if (scope.saidByItself) return;
    const said: string[] = [];
    scope.saidByItself = said;
    const live = '[role=alert], [role=status], [aria-live=polite], [aria-live=assertive], output';
    const last = new WeakMap<Element, string>();
    const textOf = (node: Node): string => {
      if (node instanceof Text) return node.data;
      if (!(node instanceof HTMLElement || node instanceof SVGElement)) return '';
      if (node.getAttribute('aria-hidden') === 'true' || node.closest('[inert]')) return '';
      const { display, visibility } = getComputedStyle(node);
      if (display === 'none' || visibility === 'hidden') return '';
      if (node.tagName === 'INPUT') return '';
      const inner = [...node.childNodes].map(textOf).join('');
      return display === 'inline' ? inner : ` ${inner} `;
    };
    for (const region of document.querySelectorAll(live)) last.set(region, textOf(region));
    new MutationObserver((changes) => {
      const regions = new Set<Element>();
      for (const { target, addedNodes } of changes) {
        const element = target instanceof Element ? target : target.parentElement;
        const around = element?.closest(live);
        if (around) regions.add(around);
        for (const added of addedNodes) {
          if (!(added instanceof Element)) continue;
          if (added.matches(live)) regions.add(added);
          for (const within of added.querySelectorAll(live)) regions.add(within);
        }
      }
      for (const region of regions) {
        if (!region.isConnected) continue;
        const text = textOf(region).replace(/\s+/g, ' ').trim();
        // What lies under a question is shut off: nothing of it is told, nor once the question is gone.
        const question = [...document.querySelectorAll('dialog[open]')].at(-1);
        if (question !== undefined && !question.contains(region)) continue;
        if (text === (last.get(region) ?? '')) continue;
        last.set(region, text);
        if (text !== '') said.push(`${region.getAttribute('role') ?? 'status'}: ${text}`);
      }
    }).observe(document.body, { childList: true, subtree: true, characterData: true });
  });
}

/** What was said since the last time. */
export async function heard(page: Page): Promise<readonly string[]> {
  await drawn(page);
  return page.evaluate(() => (globalThis as { saidByItself?: string[] }).saidByItself?.splice(0) ?? []);
}

interface AxNode {
  readonly nodeId: string;
  readonly ignored: boolean;
  readonly parentId?: string;
  readonly role?: { readonly value?: unknown };
  readonly name?: { readonly value?: unknown };
  readonly properties?: readonly { readonly name: string; readonly value: { readonly value?: unknown } }[];
}

/** A thing of the tree as it is read. */
export interface Read {
  readonly role: string;
  readonly name: string;
  readonly states: Readonly<Record<string, unknown>>;
  /** Names of what it stands in, innermost first. */
  readonly within: readonly string[];
}

const controls = new Set([
  'button',
  'link',
  'textbox',
  'searchbox',
  'combobox',
  'checkbox',
  'radio',
  'switch',
  'tab',
  'spinbutton',
  'slider',
]);
const containers = new Set([
  'dialog',
  'group',
  'region',
  'article',
  'row',
  'tabpanel',
  'navigation',
  'listitem',
  'alert',
]);

/** Reads the whole tree, in its order. */
export async function readTree(page: Page): Promise<readonly Read[]> {
  const session = await page.context().newCDPSession(page);
  const { nodes } = (await session.send('Accessibility.getFullAXTree')) as {
    readonly nodes: readonly AxNode[];
  };
  await session.detach();
  const byId = new Map(nodes.map((node) => [node.nodeId, node]));
  const within = (node: AxNode): readonly string[] => {
    const parent = node.parentId === undefined ? undefined : byId.get(node.parentId);
    if (!parent) return [];
    const role = String(parent.role?.value ?? '');
    const name = String(parent.name?.value ?? '');
    return [...(containers.has(role) && name !== '' ? [`${role} ${name}`] : []), ...within(parent)];
  };
  return nodes
    .filter(({ ignored }) => !ignored)
    .map((node) => ({
      role: String(node.role?.value ?? ''),
      name: String(node.name?.value ?? '')
        .replace(/\s+/g, ' ')
        .trim(),
      states: Object.fromEntries((node.properties ?? []).map(({ name, value }) => [name, value.value])),
      within: within(node),
    }));
}

/** What nobody could tell from the tree alone, in plain lines. */
export function faultsOf(tree: readonly Read[]): readonly string[] {
  const faults: string[] = [];
  const seen = new Set<string>();
  let level = 0;
  for (const { role, name, states, within } of tree) {
    const isControl = controls.has(role);
    if (isControl && name === '') faults.push(`a ${role} has no name, within ${within[0] ?? 'nothing'}`);
    if ((role === 'dialog' || role === 'alertdialog' || role === 'tabpanel') && name === '')
      faults.push(`a ${role} has no name`);
    if (role === 'tab' && states['selected'] === undefined)
      faults.push(`tab “${name}” tells not whether it is shown`);
    if (isControl) {
      const whole = [role, name, ...within].join(' · ');
      if (seen.has(whole)) faults.push(`two that nobody can tell apart: ${whole}`);
      seen.add(whole);
    }
    if (role === 'heading') {
      const next = Number(states['level'] ?? 0);
      // A question is a page of its own under the name of the screen.
      const above = level === 0 && within.some((each) => each.startsWith('dialog ')) ? 1 : level;
      if (next > above + 1) faults.push(`heading “${name}” of level ${next} follows one of level ${above}`);
      level = next;
    }
  }
  const roles = new Set(tree.map(({ role }) => role));
  if (roles.has('table') && !roles.has('columnheader')) faults.push('a table has no headers');
  return faults;
}
