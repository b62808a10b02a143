import type { Me } from './contract.js';

/** The way back, and under whose name checks are saved: a phone passes from hand to hand. */
export function Crumbs({ href, words, me }: { href: string; words: string; me: Me | undefined }) {
  return (
    <p class="crumbs">
      <a href={href}>{words}</a>
      {me ? <span>You: {me.name}</span> : null}
    </p>
  );
}
