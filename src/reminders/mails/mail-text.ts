import {
  MAIL_CAUTION,
  type MailContent,
  type MailEntry,
  type MailLink,
  type MailSection,
} from './mail-content.js';

/** RFC 5322, 2.1.1 recommends at most 78 characters a line; two are left for a reply's quotation mark. */
const WIDTH = 76;

/** The mail as plain text: lines of at most 76 characters, every address on a line of its own and never broken. */
export function mailText({ subject, sections, footer }: MailContent): string {
  const blocks = [
    wrapped(subject),
    ...sections.flatMap(sectionBlocks),
    ['-'.repeat(WIDTH), ...wrapped(footer.why), `${footer.choose.text}:`, footer.choose.href],
    wrapped(MAIL_CAUTION),
  ];
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

function sectionBlocks({ title, lead, entries, more }: MailSection): string[][] {
  const heading = wrapped(title);
  return [
    [
      ...heading,
      '='.repeat(Math.max(...heading.map(({ length }) => length))),
      ...(lead ? wrapped(lead) : []),
    ],
    ...entries.map(entryLines),
    ...(more ? [linkLines(more, '')] : []),
  ];
}

function entryLines({ title, sentences, links }: MailEntry): string[] {
  return [
    ...wrapped(`* ${title.text}`, '  '),
    ...sentences.flatMap((sentence) => wrapped(`  ${sentence}`, '  ')),
    `  ${title.href}`,
    ...links.flatMap((link) => linkLines(link, '  ')),
  ];
}

function linkLines({ text, href }: MailLink, indent: string): string[] {
  return [...wrapped(`${indent}${text}:`, indent), `${indent}${href}`];
}

/** Text cut between words into lines that fit; from the second on they begin with `indent`. A longer word stands alone. */
function wrapped(text: string, indent = ''): string[] {
  const start = /^ */.exec(text)?.[0] ?? '';
  const lines: string[] = [];
  let line = '';
  for (const word of text.trim().split(/ +/)) {
    const longer = line === '' ? `${lines.length === 0 ? start : indent}${word}` : `${line} ${word}`;
    if (longer.length <= WIDTH || line === '') {
      line = longer;
      continue;
    }
    lines.push(line);
    line = `${indent}${word}`;
  }
  return [...lines, line];
}
