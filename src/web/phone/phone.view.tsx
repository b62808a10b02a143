import { renderToString } from 'preact-render-to-string';

/** The page without anything on it that is anyone's: a phone keeps it and opens it without a signal. */
export function phonePage(importMap: string): string {
  return `<!doctype html>${renderToString(<PhoneShell importMap={importMap} />)}`;
}

function PhoneShell({ importMap }: { importMap: string }) {
  return (
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <title>Check gear before use · Tackleroom</title>
        <link rel="manifest" href="/phone/manifest.webmanifest" />
        <link rel="icon" href="/assets/peg.svg" type="image/svg+xml" />
        <link rel="stylesheet" href="/assets/phone.css" />
        <script type="importmap" dangerouslySetInnerHTML={{ __html: importMap }} />
        <script type="module" src="/phone/app/web/phone/client/main.js"></script>
      </head>
      <body>
        <header class="masthead">
          <a class="name" href="/phone#/">
            Tackleroom
          </a>
          <a href="/">All pages</a>
        </header>
        <main id="content">
          <p>Opening …</p>
          <noscript>
            <p>
              This page needs script. Without it, open the item in the <a href="/register">register</a> and
              check it there.
            </p>
          </noscript>
        </main>
        <footer>
          <p id="offline"></p>
          <p>
            A check before use does not replace the maker's instructions, an examination by a competent
            person, or local law. In doubt, do not use it. Lashing straps are not lifting accessories. Nobody
            stands under a load.
          </p>
        </footer>
      </body>
    </html>
  );
}
