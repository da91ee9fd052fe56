/** Reads from a view's syntax tree what it shows or tells of its own accord: text between tags, and plain strings where a text is shown or spoken. */
import { parseAst } from 'vite';

type Node = { readonly type: string } & Record<string, unknown>;

const SPOKEN = new Set(['aria-label', 'aria-description', 'aria-valuetext', 'title', 'alt', 'placeholder', 'label']);
const isWord = (text: string): boolean => /\p{L}{2}/u.test(text);

export function ownTexts(source: string): string[] {
  const found: string[] = [];
  const walk = (node: unknown): void => {
    if (Array.isArray(node)) {
      for (const each of node) walk(each);
      return;
    }
    if (typeof node !== 'object' || node === null) return;
    const { type } = node as Node;
    if (type === 'JSXText') found.push(...said(node as Node));
    if (type === 'JSXElement' || type === 'JSXFragment') {
      for (const child of (node as Node).children as Node[])
        if (child.type === 'JSXExpressionContainer') found.push(...said(child.expression as Node));
    }
    if (type === 'JSXAttribute') {
      const { name, value } = node as unknown as { name: { name: string }; value: Node | null };
      if (SPOKEN.has(name.name) && value !== null)
        found.push(...said(value.type === 'JSXExpressionContainer' ? (value.expression as Node) : value));
    }
    for (const value of Object.values(node)) walk(value);
  };
  walk(parseAst(source, { lang: 'tsx' }));
  return found;
}

/** Strings that may come out of an expression as they stand. */
function said(node: Node): string[] {
  switch (node.type) {
    case 'JSXText':
    case 'Literal':
      return typeof node.value === 'string' && isWord(node.value) ? [node.value.trim()] : [];
    case 'TemplateLiteral':
      return (node.quasis as { value: { cooked: string } }[])
        .map(({ value }) => value.cooked)
        .filter(isWord)
        .map((text) => text.trim());
    case 'ConditionalExpression':
      return [...said(node.consequent as Node), ...said(node.alternate as Node)];
    case 'LogicalExpression':
    case 'BinaryExpression':
      return node.type === 'BinaryExpression' && node.operator !== '+'
        ? []
        : [...said(node.left as Node), ...said(node.right as Node)];
    default:
      return [];
  }
}
