import { renderToString } from 'preact-render-to-string';
import { count } from '../web/sentences/words.js';
import type { DrawnLabel } from './draw-label.js';
import type { LabelSheets } from './labels.service.js';
import type { PlacedLabel, SheetLayout } from './sheet-layout.js';

/** A whole document of sheets in their true size. It has no masthead: only labels go on the paper. */
export function labelSheetsPage(props: LabelSheets & { readonly back: string }): string {
  return `<!doctype html>${renderToString(<SheetsDocument {...props} />)}`;
}

function SheetsDocument({ layout, sheets, back }: LabelSheets & { back: string }) {
  const labels = sheets.reduce((sum, sheet) => sum + sheet.length, 0);
  return (
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>Labels · Tackleroom</title>
        <link rel="stylesheet" href="/assets/labels.css" />
        <link rel="icon" href="/assets/peg.svg" type="image/svg+xml" />
      </head>
      <body class={`paper-${layout.pageWidthMm}x${layout.pageHeightMm}`}>
        <main>
          <header>
            <p>
              <a href={back}>Choose again</a>
            </p>
            <h1>
              {count(labels, 'label', 'labels')} on {count(sheets.length, 'sheet', 'sheets')}
            </h1>
            <p>
              {layout.name}. Print at 100 %, without margins and without fitting to the page. Try it on plain
              paper first and hold it against the sheet of labels.
            </p>
            <p>
              A label says which item this is. It does not replace the maker's plate or marking, and it says
              nothing of whether the item may be used today.
            </p>
          </header>
          {sheets.map((sheet, number) => (
            <Sheet key={number} number={number + 1} layout={layout} labels={sheet} />
          ))}
        </main>
      </body>
    </html>
  );
}

interface SheetProps {
  readonly number: number;
  readonly layout: SheetLayout;
  readonly labels: readonly PlacedLabel<DrawnLabel>[];
}

function Sheet({ number, layout, labels }: SheetProps) {
  const { pageWidthMm, pageHeightMm } = layout;
  return (
    <section class="label-sheet" aria-label={`Sheet ${number}`}>
      <svg
        width={`${pageWidthMm}mm`}
        height={`${pageHeightMm}mm`}
        viewBox={`0 0 ${pageWidthMm} ${pageHeightMm}`}
      >
        {labels.map(({ item, xMm, yMm }) => (
          <g key={item.tag} class="label" data-tag={item.tag} transform={`translate(${mm(xMm)} ${mm(yMm)})`}>
            <rect class="label-edge" width={layout.labelWidthMm} height={layout.labelHeightMm} rx={1.5} />
            <Label label={item} />
          </g>
        ))}
      </svg>
    </section>
  );
}

function Label({ label: { tag, url, symbol, text } }: { label: DrawnLabel }) {
  const place = `translate(${mm(symbol.xMm)} ${mm(symbol.yMm)}) scale(${symbol.moduleMm.toFixed(5)})`;
  return (
    <>
      <g class="symbol" role="img" aria-label={`QR code of ${tag}: ${url}`} transform={place}>
        <rect width={symbol.edgeModules} height={symbol.edgeModules} fill="#fff" />
        <path d={symbol.path} fill="#000" shape-rendering="crispEdges" />
      </g>
      {text.lines.map((line, number) => (
        <text
          key={number}
          class={`label-${line.look}`}
          x={mm(text.xMm)}
          y={mm(text.yMm + line.baselineMm)}
          font-size={line.sizeMm.toFixed(3)}
        >
          {line.text}
        </text>
      ))}
    </>
  );
}

function mm(value: number): string {
  return value.toFixed(3);
}
