import type { ComponentChildren } from 'preact';
import type { GearLine } from '../../rules/lines/need.js';
import { Scroll } from '../../web/components/scroll.js';
import { Workings } from '../../web/components/workings.js';
import { needsSentence } from '../../web/sentences/needs.js';
import { DUTY_NAMES, figure } from '../../web/sentences/words.js';
import { CALCULATION_TITLES, calculationSentence } from '../calculation-words.js';
import type { CalculationSheet, SheetFigure, SheetSection, SheetSpacing } from './calculation-sheet.js';

interface SheetPartsProps {
  readonly sheet: CalculationSheet;
  readonly sources: (key: string) => string;
  /** Tables and plot of the programme, where it is worked out afresh. */
  readonly programme?: ComponentChildren;
}

/** The parts of a calculation sheet in the order of the work, numbered so that a step can be named over the telephone. */
export function SheetParts({ sheet, sources, programme }: SheetPartsProps) {
  const { panels, sections, spacings, lines } = sheet;
  return (
    <>
      <LineSummary lines={lines} />
      <section class="sheet">
        <h2>1 Masses of the panels</h2>
        <Workings workings={panels} sources={sources} part={1} />
      </section>
      {sections.map((section, index) => (
        <Part key={section.calculation} section={section} part={index + 2} sources={sources}>
          {section.calculation === 'supports' ? <Spacings spacings={spacings} /> : null}
          {section.calculation === 'programme' ? programme : null}
        </Part>
      ))}
    </>
  );
}

function Part({
  section: { calculation, figures, workings, problems },
  part,
  sources,
  children,
}: {
  section: SheetSection;
  part: number;
  sources: (key: string) => string;
  children: ComponentChildren;
}) {
  const labelOf = (key: string) => figures.find((known) => known.key === key)?.label;
  return (
    <section class="sheet">
      <h2>
        {part} {CALCULATION_TITLES[calculation]}
      </h2>
      {problems.map((problem, index) => (
        <p class="note note-refused" key={index}>
          {calculationSentence(problem, labelOf)}
        </p>
      ))}
      {figures.length > 0 ? <StartFigures figures={figures} part={part} sources={sources} /> : null}
      {children}
      <Workings workings={workings} sources={sources} part={part} />
    </section>
  );
}

function StartFigures({
  figures,
  part,
  sources,
}: {
  figures: readonly SheetFigure[];
  part: number;
  sources: (key: string) => string;
}) {
  return (
    <Scroll label={`Figures that part ${part} starts from`}>
      <table class="stacked">
        <caption>Starts from</caption>
        <thead>
          <tr>
            <th scope="col">Figure</th>
            <th scope="col" class="num">
              Value
            </th>
            <th scope="col">From</th>
          </tr>
        </thead>
        <tbody>
          {figures.map(({ key, label, value, unit, source, caution, stated }) => (
            <tr key={key}>
              <th scope="row">{label}</th>
              <td class="num" data-label="Value">
                {value === null ? 'not stated' : figure(value, unit)}
              </td>
              <td class="whole" data-label="From">
                {stated
                  ? `${stated.reason} (this job${methodValue(stated.methodValue, unit)})`
                  : sources(source)}
                {caution ? <span class="faded"> {caution}</span> : null}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function methodValue(value: string | null, unit: string): string {
  return value === null ? '' : `; the method has ${figure(value, unit)}`;
}

function Spacings({ spacings }: { spacings: readonly SheetSpacing[] }) {
  if (spacings.length === 0) return null;
  return (
    <Scroll label="Where the trolleys go">
      <table>
        <caption>Where the trolleys go, the same from each end</caption>
        <thead>
          <tr>
            <th scope="col">Panel</th>
            <th scope="col" class="num">
              Between the trolleys
            </th>
            <th scope="col" class="num">
              From each end
            </th>
          </tr>
        </thead>
        <tbody>
          {spacings.map(({ panel, spacingM, overhangM }, index) => (
            <tr key={index}>
              <th scope="row">{panel}</th>
              <td class="num">{figure(spacingM, 'm')}</td>
              <td class="num">{figure(overhangM, 'm')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function LineSummary({ lines }: { lines: readonly GearLine[] }) {
  return (
    <section class="sheet">
      <h2>What each piece of gear must do</h2>
      <Scroll label="Gear lines">
        <table class="stacked">
          <thead>
            <tr>
              <th scope="col">Line</th>
              <th scope="col" class="num">
                Items
              </th>
              <th scope="col">For</th>
              <th scope="col">Each</th>
            </tr>
          </thead>
          <tbody>
            {lines
              .filter(({ quantity }) => quantity > 0)
              .map((line) => (
                <tr key={line.key}>
                  <th scope="row">{line.label}</th>
                  <td class="num" data-label="Items">
                    {line.quantity}
                  </td>
                  <td data-label="For">{DUTY_NAMES[line.duty]}</td>
                  <td class="whole" data-label="Each">
                    {needsSentence(line)}
                  </td>
                </tr>
              ))}
          </tbody>
        </table>
      </Scroll>
    </section>
  );
}
