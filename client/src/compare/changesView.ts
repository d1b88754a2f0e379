import {
  commands,
  EventEmitter,
  l10n,
  ThemeIcon,
  TreeItem,
  TreeItemCollapsibleState,
  window,
  type Disposable,
  type TreeDataProvider,
} from 'vscode';
import type { Comparison } from '../../../server/src/protocol/compare';
import { changeNodes, headWords, type ChangeNode } from './nodes';

const viewId = 'thermogloss.changes';
const words = (message: string, ...args: (string | number)[]): string => l10n.t(message, ...args);

/** The tree of the last comparison. It is not there before the first. */
export class ChangesView implements TreeDataProvider<ChangeNode>, Disposable {
  private readonly changed = new EventEmitter<void>();
  private readonly view;
  private nodes: readonly ChangeNode[] = [];
  readonly onDidChangeTreeData = this.changed.event;

  constructor() {
    this.view = window.createTreeView(viewId, { treeDataProvider: this, showCollapseAll: false });
  }

  /** For tests in the editor. */
  get shown(): { readonly head: string; readonly nodes: readonly ChangeNode[] } {
    return { head: this.view.message ?? '', nodes: this.nodes };
  }

  async show(comparison: Comparison): Promise<void> {
    this.nodes = changeNodes(comparison, words);
    this.view.message = headWords(comparison, words);
    this.changed.fire();
    await commands.executeCommand('setContext', 'thermogloss.compared', true);
    await commands.executeCommand(`${viewId}.focus`);
  }

  getChildren(of?: ChangeNode): readonly ChangeNode[] & ChangeNode[] {
    return [...(of?.children ?? this.nodes)];
  }

  getTreeItem(of: ChangeNode): TreeItem {
    const { None, Collapsed, Expanded } = TreeItemCollapsibleState;
    const item = new TreeItem(of.label, of.children.length === 0 ? None : of.open ? Expanded : Collapsed);
    item.id = of.id;
    item.description = of.description;
    item.tooltip = of.tooltip;
    item.accessibilityInformation = { label: of.description === '' ? of.label : `${of.label}, ${of.description}` };
    if (of.icon !== '') item.iconPath = new ThemeIcon(of.icon);
    const opens = { row: 'thermogloss.openChange', curves: 'thermogloss.compareInCurves' } as const;
    if (of.kind === 'row' || of.kind === 'curves') {
      item.command = { command: opens[of.kind], title: of.label, arguments: [of] };
      item.contextValue = of.kind;
    }
    return item;
  }

  dispose(): void {
    this.view.dispose();
    this.changed.dispose();
  }
}
