import { renderToString } from 'preact-render-to-string';
import {
  MAIL_CAUTION,
  type MailContent,
  type MailEntry,
  type MailLink,
  type MailSection,
} from './mail-content.js';

/** The mail as an HTML document: one column, nothing to load, dark where the reader's program is dark. */
export function mailHtml(content: MailContent): string {
  return `<!doctype html>${renderToString(<MailDocument {...content} />)}`;
}

const PAPER = '#fbf8f1';
const INK = '#22201c';
const FADED = '#5c564b';
const BLUE = '#1d4f7c';
const RED = '#9c2a1c';
const RULE = '#d9d2c2';

/**
 * Colours for programs that say they are dark. Styles of elements stay inline, because some programs drop this sheet:
 * those show the mail in its light colours.
 */
const DARK = `@media (prefers-color-scheme: dark) {
  .paper { background: #1b1a17 !important; color: #ece7db !important; }
  .faded { color: #b5ad9c !important; }
  .paper a { color: #9cc4ea !important; }
  .grave { color: #f2a08f !important; border-color: #f2a08f !important; }
  .rule { border-color: #45423a !important; }
}`;

const FONT = "Georgia, 'Times New Roman', serif";
const BODY = { margin: '0', padding: '0', background: PAPER, color: INK };
const COLUMN = {
  maxWidth: '600px',
  margin: '0 auto',
  padding: '20px 16px 32px',
  fontFamily: FONT,
  fontSize: '17px',
  lineHeight: '1.45',
  overflowWrap: 'anywhere' as const,
};
const LINK = { color: BLUE, display: 'inline-block', padding: '10px 0' };

function MailDocument({ subject, sections, footer }: MailContent) {
  return (
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <meta name="supported-color-schemes" content="light dark" />
        <title>{subject}</title>
        <style>{DARK}</style>
      </head>
      <body class="paper" style={BODY}>
        <main class="paper" style={COLUMN}>
          <h1 style={{ fontSize: '22px', lineHeight: '1.25', margin: '0 0 8px' }}>{unbroken(subject)}</h1>
          {sections.map((section) => (
            <Section key={section.title} {...section} />
          ))}
          <footer
            class="faded rule"
            style={{ borderTop: `1px solid ${RULE}`, color: FADED, fontSize: '15px', marginTop: '32px' }}
          >
            <p style={{ margin: '16px 0 0' }}>{footer.why}</p>
            <Links links={[footer.choose]} />
            <p style={{ margin: '0' }}>{MAIL_CAUTION}</p>
          </footer>
        </main>
      </body>
    </html>
  );
}

function Section({ title, grave, lead, entries, more }: MailSection) {
  return (
    <section style={{ marginTop: '28px' }}>
      <h2
        class={grave ? 'grave' : 'rule'}
        style={{
          borderLeft: `6px solid ${grave ? RED : RULE}`,
          color: grave ? RED : 'inherit',
          fontSize: '19px',
          lineHeight: '1.3',
          margin: '0 0 8px',
          padding: '2px 0 2px 10px',
        }}
      >
        {title}
      </h2>
      {lead ? <p style={{ margin: '0 0 8px' }}>{unbroken(lead)}</p> : null}
      <ul style={{ listStyle: 'none', margin: '0', padding: '0' }}>
        {entries.map((entry) => (
          <Entry key={entry.title.href} {...entry} />
        ))}
      </ul>
      {more ? <Links links={[more]} /> : null}
    </section>
  );
}

function Entry({ title, sentences, links }: MailEntry) {
  return (
    <li class="rule" style={{ borderTop: `1px solid ${RULE}`, padding: '4px 0 10px' }}>
      <a href={title.href} style={{ ...LINK, fontWeight: 'bold' }}>
        {title.text}
      </a>
      {sentences.map((sentence) => (
        <p key={sentence} style={{ margin: '0 0 4px' }}>
          {unbroken(sentence)}
        </p>
      ))}
      <Links links={links} />
    </li>
  );
}

function Links({ links }: { links: readonly MailLink[] }) {
  return links.map(({ text, href }) => (
    <p key={href} style={{ margin: '0' }}>
      <a href={href} style={LINK}>
        {text}
      </a>
    </p>
  ));
}

/** Keeps a day and its month on one line. */
function unbroken(text: string): string {
  return text.replace(/(\d) (?=[A-Z][a-z])/g, '$1\u00a0');
}
