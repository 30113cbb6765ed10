interface Node {
  type: string;
  tagName?: string;
  children?: Node[];
}

/**
 * Sets the headings of a text below those of the page: its highest becomes `level`, the rest follow.
 *
 * @param level  2…6.
 */
export function shiftHeadings(level: number) {
  return (tree: Node) => {
    const headings = headingsIn(tree);
    const highest = Math.min(...headings.map(depthOf));
    for (const heading of headings) heading.tagName = `h${Math.min(6, depthOf(heading) - highest + level)}`;
  };
}

function headingsIn(node: Node): Node[] {
  const own = node.type === 'element' && /^h[1-6]$/.test(node.tagName ?? '') ? [node] : [];
  return [...own, ...(node.children ?? []).flatMap(headingsIn)];
}

function depthOf({ tagName = '' }: Node): number {
  return Number(tagName.slice(1));
}
