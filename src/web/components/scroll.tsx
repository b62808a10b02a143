import type { ComponentChildren } from 'preact';

/** Room for a wide table: it scrolls sideways by itself, by keyboard too, instead of widening the page. */
export function Scroll({ label, children }: { label: string; children: ComponentChildren }) {
  return (
    <div class="scroll" tabIndex={0} role="region" aria-label={label}>
      {children}
    </div>
  );
}
