import type { ComponentChildren, VNode } from 'preact';
import { renderToString } from 'preact-render-to-string';
import type { Actor } from '../people/actor.js';
import type { Role } from '../people/role.js';

/** What the shell of every page needs to know. */
export interface PageFrame {
  readonly title: string;
  readonly actor: Actor | undefined;
  /** The address of the page, to mark where one is. */
  readonly path: string;
}

interface Place {
  readonly href: string;
  readonly label: string;
  readonly roles?: readonly Role[];
}

const PLACES: readonly Place[] = [
  { href: '/jobs', label: 'Jobs' },
  { href: '/register', label: 'Register' },
  { href: '/stores', label: 'Stores' },
  { href: '/quarantine', label: 'Quarantine', roles: ['storeman', 'competentPerson', 'manager'] },
  { href: '/diary', label: 'Due diary' },
  { href: '/rules', label: 'Rules' },
  { href: '/ledger', label: 'Ledger', roles: ['manager', 'competentPerson'] },
  { href: '/people', label: 'People', roles: ['manager'] },
];

/** A whole HTML document round the content. */
export function page(frame: PageFrame, content: VNode): string {
  return `<!doctype html>${renderToString(<Shell frame={frame}>{content}</Shell>)}`;
}

function Shell({ frame, children }: { frame: PageFrame; children: ComponentChildren }) {
  return (
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>{`${frame.title} · Tackleroom`}</title>
        <link rel="stylesheet" href="/assets/style.css" />
        <link rel="icon" href="/assets/peg.svg" type="image/svg+xml" />
        <script src="/assets/page.js" defer></script>
      </head>
      <body>
        <a class="skip" href="#content">
          Skip to the content
        </a>
        <Masthead frame={frame} />
        <main id="content">{children}</main>
        <Caution />
      </body>
    </html>
  );
}

function Masthead({ frame: { actor, path } }: { frame: PageFrame }) {
  return (
    <header class="masthead">
      <a class="name" href="/">
        Tackleroom
      </a>
      {actor ? (
        <>
          <nav aria-label="Main">
            {PLACES.filter(({ roles }) => !roles || roles.some((role) => actor.roles.includes(role))).map(
              (place) => (
                <a key={place.href} href={place.href} aria-current={isHere(place, path) ? 'page' : undefined}>
                  {place.label}
                </a>
              ),
            )}
          </nav>
          <form method="post" action="/sign-out" class="who">
            <a href="/me/mail" title="Your mail" aria-current={path === '/me/mail' ? 'page' : undefined}>
              {actor.name}
            </a>
            <button type="submit" class="quiet">
              Sign out
            </button>
          </form>
        </>
      ) : null}
    </header>
  );
}

function isHere({ href }: Place, path: string): boolean {
  return path === href || path.startsWith(`${href}/`) || path.startsWith(`${href}?`);
}

function Caution() {
  return (
    <footer class="caution">
      <p>
        Tackleroom is a planning aid. It does not replace the maker's instructions, local law, a lift plan by
        a competent person, or the eyes of the person about to use the gear. Lashing straps are not lifting
        accessories. Nobody stands under a load.
      </p>
    </footer>
  );
}
