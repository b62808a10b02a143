import { isAlias, isScalar, LineCounter, parseDocument, visit, type Node } from 'yaml';
import type { Problems } from './problems.js';

const WHOLE_NUMBER = /^(0|-?[1-9]\d*)$/;

/**
 * Reads YAML of the plain kind only: no aliases, anchors or tags, no doubled keys, numbers only whole and in plain
 * digits. Returns the value, or undefined when the text has a problem; problems are added to `problems`.
 */
export function parseYaml(file: string, text: string, problems: Problems): unknown {
  const lineCounter = new LineCounter();
  const document = parseDocument(text, { lineCounter, prettyErrors: false });
  const before = problems.found.length;
  const report = (offset: number, reason: string, advice: string): void => {
    problems.add({ file, path: `line ${lineCounter.linePos(offset).line}`, reason, advice });
  };
  for (const fault of [...document.errors, ...document.warnings]) {
    report(fault.pos[0], fault.message, 'write plain YAML');
  }
  visit(document, {
    Node: (_key, node) => {
      const fault = plainness(node);
      if (fault) report(node.range?.[0] ?? 0, fault.reason, fault.advice);
    },
  });
  return problems.found.length > before ? undefined : document.toJS();
}

function plainness(node: Node): { reason: string; advice: string } | undefined {
  if (isAlias(node)) return { reason: 'an alias', advice: 'write the value out' };
  if ('anchor' in node && node.anchor)
    return { reason: 'an anchor', advice: 'write the value out where it is needed' };
  if (!isScalar(node)) return undefined;
  if (node.value === null && node.source === '')
    return { reason: 'a blank value', advice: 'write the value' };
  if (typeof node.value === 'number' && !WHOLE_NUMBER.test(node.source ?? '')) {
    return {
      reason: `'${node.source}' is not a plain whole number`,
      advice: "write decimals in quotes, as in '0.5'",
    };
  }
  return undefined;
}
