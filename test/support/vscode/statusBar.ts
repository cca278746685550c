/** Stand-in for the status bar. */
import type { MarkdownString } from './data.ts';

export const StatusBarAlignment = { Left: 1, Right: 2 } as const;

export class StatusBarItem {
  text = '';
  name?: string;
  tooltip?: MarkdownString;
  command?: { readonly command: string };
  accessibilityInformation?: { readonly label: string };
  isShown = false;
  readonly id: string;
  readonly alignment: number;
  constructor(id: string, alignment: number) {
    this.id = id;
    this.alignment = alignment;
  }
  show(): void {
    this.isShown = true;
  }
  hide(): void {
    this.isShown = false;
  }
  dispose(): void {
    statusBarItems.delete(this);
  }
}

/** Those that live. */
export const statusBarItems = new Set<StatusBarItem>();

export function createStatusBarItem(id: string, alignment: number): StatusBarItem {
  const item = new StatusBarItem(id, alignment);
  statusBarItems.add(item);
  return item;
}
